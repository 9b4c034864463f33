package sagbook.logfile;

/**
 * Which way a log counts current, from how the cells' voltage answers it: charging raises it. Steps
 * of current and voltage from row to row are multiplied and summed (their correlation); resistance
 * is positive, so the sign of the sum is the sign of the current.
 */
final class SignVote {
  private static final int LEAST_STEPS = 8;
  private static final double LEAST_CORRELATION = 0.05;

  private double products;
  private double currentSquares;
  private double voltageSquares;
  private long steps;
  private double lastCurrent = Double.NaN;
  private double lastVoltage = Double.NaN;

  /** Takes a row's current as logged and the mean of its cell voltages; NaN when missing. */
  void add(double current, double voltage) {
    double currentStep = current - lastCurrent;
    double voltageStep = voltage - lastVoltage;
    double product = currentStep * voltageStep;
    if (!Double.isNaN(product)) {
      products += product;
      currentSquares += currentStep * currentStep;
      voltageSquares += voltageStep * voltageStep;
      steps += currentStep == 0 ? 0 : 1;
    }
    lastCurrent = current;
    lastVoltage = voltage;
  }

  void addAll(SignVote other) {
    products += other.products;
    currentSquares += other.currentSquares;
    voltageSquares += other.voltageSquares;
    steps += other.steps;
  }

  /** Correlation of the steps, -1 to 1; 0 when there are too few. */
  double correlation() {
    double scale = Math.sqrt(currentSquares * voltageSquares);
    return steps < LEAST_STEPS || !(scale > 0) ? 0 : products / scale;
  }

  boolean isSettled() {
    return Math.abs(correlation()) >= LEAST_CORRELATION;
  }
}
