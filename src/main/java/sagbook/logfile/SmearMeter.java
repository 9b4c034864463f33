package sagbook.logfile;

/**
 * Finds logs that hold averages over the logging interval: between two steady currents there is
 * then mostly one row with something in between, which a momentary reading hardly ever shows.
 */
final class SmearMeter {
  private static final double LEAST_STEP_AMPERE = 3;
  private static final double STEADY = 0.1;
  private static final int LEAST_STEPS = 12;
  private static final double MOST_SHARE_MOMENTARY = 0.4;

  private final double[] window = new double[5];
  private int steps;
  private int between;

  void add(double current) {
    System.arraycopy(window, 1, window, 0, 4);
    window[4] = current;
    double sharp = window[2] - window[1];
    boolean steady = isSteady(window[0], window[1], sharp) && isSteady(window[2], window[3], sharp);
    if (Math.abs(sharp) > LEAST_STEP_AMPERE && steady) {
      steps++;
      return;
    }
    double step = window[3] - window[1];
    boolean level = isSteady(window[0], window[1], step) && isSteady(window[3], window[4], step);
    double share = (window[2] - window[1]) / step;
    if (Math.abs(step) > LEAST_STEP_AMPERE && level && share > 0.1 && share < 0.9) {
      steps++;
      between++;
    }
  }

  private static boolean isSteady(double one, double other, double step) {
    return Math.abs(one - other) < STEADY * Math.abs(step);
  }

  boolean isSmeared() {
    return steps >= LEAST_STEPS && between > MOST_SHARE_MOMENTARY * steps;
  }
}
