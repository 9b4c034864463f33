package sagbook.logfile;

import java.util.Arrays;

/**
 * Finds boards that are read one after another. When a step of the common voltage falls within a
 * sweep, boards read after it show it one row before boards read earlier. The share of a step that
 * a cell shows in the first row, averaged over many steps, so rises along the sweep by its duration
 * over the time between rows. Each step gives one slope over the cells' numbers; their mean counts
 * when it lies more than four of its standard errors from nothing.
 */
final class SkewMeter {
  private static final double LEAST_STEP_VOLT = 0.015;
  private static final int LEAST_STEPS = 30;
  private static final double CERTAIN = 4;

  private final int cells;
  private final double cadenceS;
  private double[] first;
  private double[] second;
  private double firstS = Double.NaN;
  private double secondS = Double.NaN;
  private int steps;
  private double slopes;
  private double squares;

  SkewMeter(int cells, double cadenceS) {
    this.cells = cells;
    this.cadenceS = cadenceS;
    this.first = new double[cells];
    this.second = new double[cells];
  }

  void add(double timeS, double[] values, Slots slots) {
    if (timeS - firstS < 3 * cadenceS) {
      measure(values, slots);
    }
    double[] free = first;
    first = second;
    second = free;
    for (int i = 0; i < cells; i++) {
      second[i] = values[slots.voltage(i + 1)];
    }
    firstS = secondS;
    secondS = timeS;
  }

  private void measure(double[] third, Slots slots) {
    double total = 0;
    double least = Double.POSITIVE_INFINITY;
    for (int i = 0; i < cells; i++) {
      double step = third[slots.voltage(i + 1)] - first[i];
      total += step;
      least = Math.min(least, Math.abs(step));
    }
    double mean = total / cells;
    if (!(Math.abs(mean) > LEAST_STEP_VOLT && least > Math.abs(mean) / 2)) {
      return;
    }
    double moment = 0;
    double spread = 0;
    for (int i = 0; i < cells; i++) {
      double share = (second[i] - first[i]) / (third[slots.voltage(i + 1)] - first[i]);
      double place = i - (cells - 1) / 2.0;
      moment += place * Math.max(0, Math.min(1, share));
      spread += place * place;
    }
    double slope = moment / spread;
    slopes += slope;
    squares += slope * slope;
    steps++;
  }

  /**
   * How long after the first board each is read, s; NaN when no order is to be seen. The first may
   * be that of the last cell.
   */
  double[] delaysS() {
    double[] delays = new double[cells];
    double slope = slopes / steps;
    double error = Math.sqrt(Math.max(0, squares / steps - slope * slope) / steps);
    if (steps < LEAST_STEPS || !(Math.abs(slope) > CERTAIN * error)) {
      Arrays.fill(delays, Double.NaN);
      return delays;
    }
    double range = Math.abs(slope) * (cells - 1);
    // A step between sweeps is seen from two rows, one within a sweep only from the row in it.
    double sweepS = 2 * range / (1 + range) * cadenceS;
    for (int i = 0; i < cells; i++) {
      delays[i] = sweepS * (slope > 0 ? i : cells - 1 - i) / (cells - 1);
    }
    return delays;
  }
}
