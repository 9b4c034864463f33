package sagbook.evidence;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.PriorityQueue;
import java.util.TreeMap;
import sagbook.model.Channels;
import sagbook.model.SampleBlock;

/**
 * Keeps the largest clean steps of the log (quiet before, quiet after, no gap) and the largest of
 * all. They are for showing; the estimators use every step.
 */
final class EdgeCollector {
  private static final int BEFORE = 4;
  private static final int AFTER = 12;
  private static final int LENGTH = BEFORE + AFTER;
  private static final int KEPT_CLEAN = 60;
  private static final int KEPT_LARGEST = 24;

  private static final Comparator<Edge> BY_SIZE = Comparator.comparingDouble(EdgeCollector::size);

  private final Channels channels;
  private final double[] timeS = new double[LENGTH];
  private final double[] drive = new double[LENGTH];
  private final double[][] voltage;
  private long taken;
  private final PriorityQueue<Edge> cleanest = new PriorityQueue<>(BY_SIZE);
  private final PriorityQueue<Edge> largest = new PriorityQueue<>(BY_SIZE);

  EdgeCollector(Channels channels) {
    this.channels = channels;
    voltage = new double[channels.seriesCells()][LENGTH];
  }

  private static double size(Edge edge) {
    double[] from = edge.voltageV()[0];
    return Double.isNaN(edge.stepA())
        ? Math.abs(from[BEFORE] - from[BEFORE - 1])
        : Math.abs(edge.stepA());
  }

  void take(SampleBlock block, int r, Stopwatch clock) {
    if (!clock.follows()) {
      taken = 0;
    }
    int at = (int) (taken % LENGTH);
    timeS[at] = block.timeS()[r];
    double sum = 0;
    for (int c = 0; c < voltage.length; c++) {
      voltage[c][at] = block.voltageV()[c][r];
      sum += voltage[c][at];
    }
    drive[at] = channels.hasCurrent() ? block.currentA()[r] : sum / voltage.length;
    taken++;
    if (taken >= LENGTH) {
      consider();
    }
  }

  private int place(int offset) {
    return (int) ((taken + offset) % LENGTH);
  }

  private void consider() {
    double before = drive[place(BEFORE - 1)];
    double after = drive[place(BEFORE)];
    double step = after - before;
    double least = channels.hasCurrent() ? 0.2 : 0.004;
    if (!(Math.abs(step) > least)) {
      return;
    }
    double wander = 0;
    for (int k = 1; k < LENGTH; k++) {
      double reference = k < BEFORE ? before : after;
      wander = Math.max(wander, Math.abs(drive[place(k)] - reference));
    }
    boolean clean = wander <= (channels.hasCurrent() ? 0.15 : 0.4) * Math.abs(step);
    keep(largest, KEPT_LARGEST, step, clean);
    if (clean) {
      keep(cleanest, KEPT_CLEAN, step, true);
    }
  }

  private void keep(PriorityQueue<Edge> kept, int most, double step, boolean clean) {
    if (kept.size() < most || sizeOf(step) > size(kept.element())) {
      kept.add(copy(step, clean));
      if (kept.size() > most) {
        kept.poll();
      }
    }
  }

  private double sizeOf(double step) {
    if (channels.hasCurrent()) {
      return Math.abs(step);
    }
    return Math.abs(voltage[0][place(BEFORE)] - voltage[0][place(BEFORE - 1)]);
  }

  private Edge copy(double step, boolean clean) {
    double t0 = timeS[place(BEFORE)];
    double[] offset = new double[LENGTH];
    double[] current = new double[channels.hasCurrent() ? LENGTH : 0];
    double[][] volts = new double[voltage.length][LENGTH];
    for (int k = 0; k < LENGTH; k++) {
      int at = place(k);
      offset[k] = timeS[at] - t0;
      if (current.length > 0) {
        current[k] = drive[at];
      }
      for (int c = 0; c < voltage.length; c++) {
        volts[c][k] = voltage[c][at];
      }
    }
    return new Edge(t0, offset, current, volts, channels.hasCurrent() ? step : Double.NaN, clean);
  }

  List<Edge> finish() {
    Map<Double, Edge> byTime = new TreeMap<>();
    largest.forEach(edge -> byTime.put(edge.timeS(), edge));
    cleanest.forEach(edge -> byTime.put(edge.timeS(), edge));
    return new ArrayList<>(byTime.values());
  }
}
