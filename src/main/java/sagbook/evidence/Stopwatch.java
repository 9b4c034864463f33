package sagbook.evidence;

import java.util.Arrays;
import sagbook.model.SampleBlock;
import sagbook.numeric.Robust;

/** Time and charge from row to row, shared by all collectors. */
final class Stopwatch {
  private double cadenceS = 60;
  private double lastS = Double.NaN;
  private double lastA = Double.NaN;
  private double elapsedS = Double.NaN;
  private double chargeAh;
  private double countedVariance;
  private double countedS;
  private int segment;

  /** Takes the usual spacing from the first block, which decides bin widths and time constants. */
  void start(SampleBlock block) {
    double[] spacing = new double[Math.max(0, block.rows() - 1)];
    for (int r = 1; r < block.rows(); r++) {
      spacing[r - 1] = block.timeS()[r] - block.timeS()[r - 1];
    }
    if (spacing.length > 0) {
      Arrays.sort(spacing);
      cadenceS = Math.max(0.05, Robust.quantileOfSorted(spacing, spacing.length, 0.5));
    }
  }

  /**
   * Goes on to a row. Charge is the trapezoid of the current; over a gap longer than {@link
   * #longestGapS} it can't be counted and a new segment begins.
   */
  void advance(SampleBlock block, int r) {
    double timeS = block.timeS()[r];
    elapsedS = timeS - lastS;
    if (elapsedS > longestGapS()) {
      segment++;
    }
    if (block.channels().hasCurrent()) {
      double currentA = block.currentA()[r];
      if (Double.isNaN(currentA) && elapsedS <= longestGapS()) {
        currentA = lastA;
      }
      if (elapsedS <= longestGapS() && !Double.isNaN(lastA) && !Double.isNaN(currentA)) {
        chargeAh += (lastA + currentA) / 2 * elapsedS / 3600;
        double unsureAh = (currentA - lastA) * elapsedS / 3600;
        countedVariance += unsureAh * unsureAh / 12;
        countedS += elapsedS;
      }
      lastA = currentA;
    }
    lastS = timeS;
  }

  /** Longest time between rows over which a straight line is trusted, s. */
  double longestGapS() {
    return Math.max(120, 6 * cadenceS);
  }

  double cadenceS() {
    return cadenceS;
  }

  /** Time since the row before; NaN on the first. */
  double elapsedS() {
    return elapsedS;
  }

  /** Whether this row follows on the one before without a gap. */
  boolean follows() {
    return elapsedS <= longestGapS();
  }

  double chargeAh() {
    return chargeAh;
  }

  /**
   * What the counter wanders in a day because the moment of a step between two rows isn't known,
   * one standard deviation, Ah: a step is as likely anywhere between them, and one error is
   * independent of the next.
   */
  double wanderAhInADay() {
    return countedS > 0 ? Math.sqrt(countedVariance * 86_400 / countedS) : 0;
  }

  int segment() {
    return segment;
  }
}
