package sagbook.estimate.capacity;

/**
 * How one cell differs from the string's reference cell.
 *
 * @param shiftAh how much later on the charge axis its bottom lies, at mid log, Ah
 * @param lossAh how much less charge lies between its bottom and its top, Ah
 * @param stretch size of its electrodes over the reference's, less one
 * @param offsetV constant error of its voltage reading, V
 * @param ohm resistance above the reference's, seen by the momentary current, ohm
 * @param slowOhm the same, seen by the slow current, ohm
 * @param driftAh change of the shift at each knot of the time grid, Ah
 */
record CellState(
    double shiftAh,
    double lossAh,
    double stretch,
    double offsetV,
    double ohm,
    double slowOhm,
    double[] driftAh) {

  static CellState reference(int knots) {
    return new CellState(0, 0, 0, 0, 0, 0, new double[knots]);
  }

  static CellState at(double shiftAh, double lossAh, double offsetV, int knots) {
    return new CellState(shiftAh, lossAh, 0, offsetV, 0, 0, new double[knots]);
  }
}
