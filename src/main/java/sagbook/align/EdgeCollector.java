package sagbook.align;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.PriorityQueue;

/** Keeps the largest steps of a log in bounded memory. */
public final class EdgeCollector {
  private static final int MOST_EDGES = 2048;

  private record Edge(double timeS, double step) {}

  private final PriorityQueue<Edge> largest =
      new PriorityQueue<>(
          Comparator.comparingDouble((Edge e) -> Math.abs(e.step))
              .thenComparing(Comparator.comparingDouble(Edge::timeS).reversed()));

  /** Takes a step; one without size, or NaN, is none. */
  public void add(double timeS, double step) {
    double size = Math.abs(step);
    if (!(size > 0)) {
      return;
    }
    if (largest.size() < MOST_EDGES) {
      largest.add(new Edge(timeS, step));
      return;
    }
    Edge least = largest.peek();
    if (least != null && size > Math.abs(least.step)) {
      largest.poll();
      largest.add(new Edge(timeS, step));
    }
  }

  /** The steps of several collectors in time order. */
  public static EdgeTrain train(List<EdgeCollector> collectors) {
    List<Edge> all = new ArrayList<>();
    for (EdgeCollector collector : collectors) {
      all.addAll(collector.largest);
    }
    all.sort(Comparator.comparingDouble(Edge::timeS));
    return new EdgeTrain(
        all.stream().mapToDouble(Edge::timeS).toArray(),
        all.stream().mapToDouble(Edge::step).toArray());
  }
}
