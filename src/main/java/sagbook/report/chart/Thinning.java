package sagbook.report.chart;

import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Deque;

/**
 * Leaves out points that a reader can't see missing. Ramer (1972), "An iterative procedure for the
 * polygonal approximation of plane curves"; Douglas and Peucker (1973). No left-out point lies
 * further from the drawn line than the tolerance, so no peak is lost.
 */
final class Thinning {
  private Thinning() {}

  /**
   * Which points to keep.
   *
   * @param x horizontal place on paper
   * @param y vertical place on paper, finite
   * @param tolerance in the unit of both
   */
  static int[] kept(double[] x, double[] y, double tolerance) {
    if (x.length == 0) {
      return new int[0];
    }
    BitSet kept = new BitSet(x.length);
    kept.set(0);
    kept.set(x.length - 1);
    Deque<int[]> open = new ArrayDeque<>();
    open.push(new int[] {0, x.length - 1});
    while (!open.isEmpty()) {
      int[] stretch = open.pop();
      int furthest = -1;
      double most = tolerance;
      for (int i = stretch[0] + 1; i < stretch[1]; i++) {
        double distance = distance(x, y, i, stretch[0], stretch[1]);
        if (distance > most) {
          most = distance;
          furthest = i;
        }
      }
      if (furthest >= 0) {
        kept.set(furthest);
        open.push(new int[] {stretch[0], furthest});
        open.push(new int[] {furthest, stretch[1]});
      }
    }
    return kept.stream().toArray();
  }

  static double[] take(double[] values, int[] which) {
    return Arrays.stream(which).mapToDouble(i -> values[i]).toArray();
  }

  private static double distance(double[] x, double[] y, int of, int from, int to) {
    double alongX = x[to] - x[from];
    double alongY = y[to] - y[from];
    double length = Math.hypot(alongX, alongY);
    double dx = x[of] - x[from];
    double dy = y[of] - y[from];
    if (length == 0) {
      return Math.hypot(dx, dy);
    }
    double along = (dx * alongX + dy * alongY) / length;
    if (along < 0) {
      return Math.hypot(dx, dy);
    }
    if (along > length) {
      return Math.hypot(x[of] - x[to], y[of] - y[to]);
    }
    return Math.abs(dx * alongY - dy * alongX) / length;
  }
}
