package sagbook.estimate.response;

import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import sagbook.evidence.ResponseBasis;
import sagbook.numeric.NonNegative;
import sagbook.numeric.Ridge;

/**
 * Mean response of the string's cells to a step, pooled over windows by least squares.
 *
 * <p>With a current the coefficients are in ohm. Without one the drive is the string's mean voltage
 * and the response is 1 by construction.
 *
 * @param basis functions of time
 * @param coefficients one a regressor but the charge: immediate, slow parts
 * @param noiseV standard deviation of the residual of one cell, V
 * @param rows rows used
 * @param lag how long after the current the cells were read whose response it is
 */
public record StringResponse(
    ResponseBasis basis, double[] coefficients, double noiseV, long rows, ReadLag lag) {
  private static final int FEWEST_ROWS = 8;

  /** Of cells that are read with the current, within a second or so. */
  public StringResponse(ResponseBasis basis, double[] coefficients, double noiseV, long rows) {
    this(basis, coefficients, noiseV, rows, ReadLag.usual());
  }

  /**
   * Fits the pooled response; empty when the windows hold no steps to speak of.
   *
   * @param scale size of the response in each window relative to the one asked for; 0 leaves a
   *     window out
   */
  public static Optional<StringResponse> of(
      ResponseBasis basis, List<ReducedWindow> windows, double[] scale) {
    int p = basis.charge();
    Ridge fit = new Ridge(p);
    long rows = 0;
    for (int w = 0; w < scale.length; w++) {
      double s = scale[w];
      if (s > 0) {
        ReducedWindow window = windows.get(w);
        for (int i = 0; i < p; i++) {
          for (int j = 0; j <= i; j++) {
            fit.addNormal(i, j, s * s * window.gram()[i][j]);
          }
          fit.addRight(i, s * window.meanCross()[i]);
        }
        rows += window.window().rows();
      }
    }
    double pull = fit.normalAt(basis.immediate());
    if (rows < FEWEST_ROWS || !(pull > 0)) {
      return Optional.empty();
    }
    // A weak pull to zero keeps parts that the log can't tell apart from running off together.
    for (int i = 0; i < p; i++) {
      fit.addNormal(i, i, 1e-6 * pull);
    }
    BitSet free = new BitSet();
    free.set(basis.hysteresis());
    long used = rows;
    return NonNegative.solve(fit, free)
        .map(b -> new StringResponse(basis, b, noise(windows, scale, b, used), used));
  }

  private static double noise(List<ReducedWindow> windows, double[] scale, double[] b, long rows) {
    double squares = 0;
    int cells = 1;
    for (int w = 0; w < scale.length; w++) {
      if (scale[w] > 0) {
        ReducedWindow window = windows.get(w);
        cells = window.cross().length;
        double explained = scale[w] * scale[w] * window.product(b, b);
        for (int c = 0; c < cells; c++) {
          squares +=
              window.window().sumSquares()[c]
                  - 2 * scale[w] * ReducedWindow.product(b, window.cross()[c], b.length)
                  + explained;
        }
      }
    }
    return Math.sqrt(Math.max(1e-9, squares / ((double) rows * cells)));
  }

  /** The same of cells that are read so. */
  public StringResponse read(ReadLag known) {
    return new StringResponse(basis, coefficients, noiseV, rows, known);
  }

  /**
   * Response this long after a step, in ohm (or 1 for a mean-voltage drive). What boards show that
   * are read late is that much older.
   *
   * @param ageS time since the step, s
   */
  public double at(double ageS) {
    double[] w = basis.weightsAt(ageS - lag.meanS());
    double sum = -lag.curveOhmPerS() * lag.meanS();
    for (int i = 0; i < coefficients.length; i++) {
      sum += w[i] * coefficients[i];
    }
    return sum;
  }

  /**
   * What a board that is read later than the others shows beyond them, as a combination of the
   * basis: slow parts have built up, and charge has moved on.
   *
   * @param lateS how much later, s
   * @param scale size of the response over the pooled one
   */
  public double[] grownBy(double lateS, double scale) {
    double[] grown = new double[coefficients.length];
    grown[0] = lag.curveOhmPerS() * lateS;
    for (int k = 1; k <= basis.tauS().length; k++) {
      double over = -scale * coefficients[k] * Math.expm1(-lateS / basis.tauS()[k - 1]);
      grown[0] += over;
      grown[k] = -over;
    }
    return grown;
  }

  /** How sure the response is as far as the lag goes, one standard deviation, relative. */
  public double lagSd(double ageS) {
    double later = read(lag.later(lag.meanSdS())).at(ageS);
    return Math.abs(later / at(ageS) - 1);
  }
}
