package sagbook.estimate.response;

import java.util.List;
import java.util.Optional;
import sagbook.evidence.Evidence;
import sagbook.evidence.ResponseBasis;
import sagbook.evidence.StepWindow;
import sagbook.numeric.Ridge;

/**
 * Mean response of the string's cells to a step, pooled over the log: {@code dV = lead + immediate
 * + slow parts + slope * charge}, by least squares on the sums of all windows.
 *
 * <p>With a current the coefficients are in ohm (the last in V/Ah). Without one the drive is the
 * string's mean voltage and the response is 1 by construction.
 *
 * @param basis functions of time
 * @param coefficients one a regressor of the basis
 * @param noiseV standard deviation of the residual of one cell, V
 * @param rows rows used
 */
public record StringResponse(ResponseBasis basis, double[] coefficients, double noiseV, long rows) {

  /** Fits the pooled response; empty when the log holds no steps to speak of. */
  public static Optional<StringResponse> of(Evidence evidence) {
    List<StepWindow> windows = evidence.steps();
    ResponseBasis basis = evidence.basis();
    int p = basis.size();
    int cells = evidence.channels().seriesCells();
    Ridge fit = new Ridge(p);
    long rows = 0;
    double squares = 0;
    for (StepWindow window : windows) {
      int at = 0;
      for (int i = 0; i < p; i++) {
        for (int j = 0; j <= i; j++) {
          fit.addNormal(i, j, window.gram()[at++]);
        }
        for (int c = 0; c < cells; c++) {
          fit.addRight(i, window.cross()[c][i] / cells);
        }
      }
      for (int c = 0; c < cells; c++) {
        squares += window.sumSquares()[c];
      }
      rows += window.rows();
    }
    if (rows < 8) {
      return Optional.empty();
    }
    // A weak pull to zero keeps parts that the log can't tell apart from running off together.
    double pull = fitScale(windows, p);
    for (int i = 0; i < p - 1; i++) {
      fit.addNormal(i, i, 1e-6 * pull);
    }
    fit.addNormal(p - 1, p - 1, 1e-12 * pull);
    Ridge.Solution solution = fit.solve();
    if (!solution.determined()) {
      return Optional.empty();
    }
    double explained = 0;
    for (StepWindow window : windows) {
      for (int c = 0; c < cells; c++) {
        for (int i = 0; i < p; i++) {
          explained += solution.value()[i] * window.cross()[c][i];
        }
      }
    }
    double noise = Math.sqrt(Math.max(1e-10, (squares - explained) / ((double) rows * cells)));
    return Optional.of(new StringResponse(basis, solution.value(), noise, rows));
  }

  private static double fitScale(List<StepWindow> windows, int p) {
    double most = 0;
    for (StepWindow window : windows) {
      most += window.gram()[p > 1 ? 2 : 0];
    }
    return most;
  }

  /**
   * Response this long after a step, in ohm (or 1 for a mean-voltage drive).
   *
   * @param ageS time since the step, s
   */
  public double at(double ageS) {
    double[] w = basis.weightsAt(ageS);
    double sum = 0;
    for (int i = 0; i < w.length; i++) {
      sum += w[i] * coefficients[i];
    }
    return sum;
  }
}
