package sagbook.logfile;

import java.util.Arrays;

/**
 * Finds boards that are read one after another. When a step of the common voltage falls within a
 * sweep, boards read after it show it one row before boards read earlier. Over many steps the share
 * of a step that a cell shows in the first row is its place in the sweep.
 */
final class SkewMeter {
  private static final double LEAST_STEP_VOLT = 0.015;
  private static final int LEAST_STEPS = 30;

  /** Standard deviation of a share between 0 and 1 is at most this. */
  private static final double MOST_DEVIATION = 0.5;

  private final int cells;
  private final double cadenceS;
  private final double[] shares;
  private double[] first;
  private double[] second;
  private double firstS = Double.NaN;
  private double secondS = Double.NaN;
  private int steps;

  SkewMeter(int cells, double cadenceS) {
    this.cells = cells;
    this.cadenceS = cadenceS;
    this.shares = new double[cells];
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
    for (int i = 0; i < cells; i++) {
      double share = (second[i] - first[i]) / (third[slots.voltage(i + 1)] - first[i]);
      shares[i] += Math.max(0, Math.min(1, share));
    }
    steps++;
  }

  /**
   * How long after the first cell each is read, s; NaN when there are too few steps to tell, all 0
   * when no order is to be seen.
   */
  double[] delaysS() {
    double[] delays = new double[cells];
    if (steps < LEAST_STEPS) {
      Arrays.fill(delays, Double.NaN);
      return delays;
    }
    double least = Double.POSITIVE_INFINITY;
    double most = Double.NEGATIVE_INFINITY;
    for (double share : shares) {
      least = Math.min(least, share);
      most = Math.max(most, share);
    }
    double certain = 4 * MOST_DEVIATION * Math.sqrt(2.0 / steps);
    if ((most - least) / steps < Math.min(0.9, certain)) {
      return delays;
    }
    for (int i = 0; i < cells; i++) {
      delays[i] = (shares[i] - least) / steps * cadenceS;
    }
    return delays;
  }
}
