package sagbook.whatif;

import sagbook.estimate.curve.HalfCells;
import sagbook.model.Chemistry;
import sagbook.numeric.EvenTable;

/**
 * The share of its capacity that a cell keeps to itself because its loaded voltage reaches the
 * lower limit before it is empty: the charge on its open-circuit curve between the limit and the
 * limit plus the voltage drop. The curve is the published one of the chemistry ({@link HalfCells}).
 */
final class LoadedEnd {
  private static final double MOST_DROP_V = 0.5;
  private static final int STEPS = 250;

  private final EvenTable share;

  LoadedEnd(Chemistry chemistry, double emptyVoltage) {
    HalfCells curve = HalfCells.of(chemistry).get(0);
    double atLimit = chargeAt(curve, emptyVoltage);
    double[] values = new double[STEPS + 1];
    for (int i = 0; i <= STEPS; i++) {
      values[i] = chargeAt(curve, emptyVoltage + i * MOST_DROP_V / STEPS) - atLimit;
    }
    share = new EvenTable(0, MOST_DROP_V / STEPS, values);
  }

  /** Share of capacity, 0 to 1, kept back at a voltage drop in V. */
  double keptBack(double dropV) {
    return share.at(Math.max(0, Math.min(MOST_DROP_V, dropV)));
  }

  private static double chargeAt(HalfCells curve, double volt) {
    double low = 0;
    double high = 1;
    for (int i = 0; i < 50; i++) {
      double middle = (low + high) / 2;
      if (curve.openCircuit(middle) < volt) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return low;
  }
}
