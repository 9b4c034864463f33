package sagbook.evidence;

/**
 * Sums over a stretch of the log (two hours) from which the response of every cell to a current
 * step follows by least squares: the change of each cell's voltage across steps against the changes
 * of the {@link ResponseBasis}.
 *
 * @param startS start of the window, s since 1970
 * @param endS end of the window, s
 * @param rows pairs of rows used
 * @param meanTemperatureC mean temperature, one a cell; NaN when not logged
 * @param meanCurrentA mean current, A; NaN when not logged
 * @param meanChargeAh mean of the charge counter, Ah; NaN when not logged
 * @param meanVoltageV mean cell voltage over the string, V
 * @param gram X'X, packed lower triangle by rows, of the regressors
 * @param cross X'y, [cell][regressor]; y in V
 * @param sumSquares y'y, one a cell
 * @param cellRows pairs with a valid y, one a cell
 */
public record StepWindow(
    double startS,
    double endS,
    int rows,
    double[] meanTemperatureC,
    double meanCurrentA,
    double meanChargeAh,
    double meanVoltageV,
    double[] gram,
    double[][] cross,
    double[] sumSquares,
    int[] cellRows) {

  /** Sum of the squares of the steps themselves, A² (V² without a current), one a pair of rows. */
  public double immediateSquares() {
    return gram[0];
  }
}
