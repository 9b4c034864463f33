package sagbook.estimate.capacity;

import java.util.Arrays;

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

  /** How far its ends lie from where they lay in another state, Ah. */
  double movedAh(CellState before) {
    double bottom = shiftAh - before.shiftAh;
    return Math.max(Math.abs(bottom), Math.abs(bottom - (lossAh - before.lossAh)));
  }

  /** The middle between another state and this one. */
  CellState halfwayFrom(CellState other) {
    double[] drift = new double[driftAh.length];
    Arrays.setAll(drift, k -> (driftAh[k] + other.driftAh[k]) / 2);
    return new CellState(
        (shiftAh + other.shiftAh) / 2,
        (lossAh + other.lossAh) / 2,
        (stretch + other.stretch) / 2,
        (offsetV + other.offsetV) / 2,
        (ohm + other.ohm) / 2,
        (slowOhm + other.slowOhm) / 2,
        drift);
  }
}
