package sagbook.estimate.drain;

import java.util.Arrays;
import java.util.List;
import sagbook.estimate.curve.ElectrodePair;

/**
 * Charge of a cell by its rest voltage, on one open-circuit curve.
 *
 * @param volt of a cell that holds {@code 0, 1/n, … 1}, V, never falling
 */
record RestCharge(double[] volt) {
  private static final int STEPS = 1000;

  static List<RestCharge> of(List<ElectrodePair> pairs) {
    return pairs.stream().map(RestCharge::of).toList();
  }

  private static RestCharge of(ElectrodePair pair) {
    double[] volt = new double[STEPS + 1];
    double highest = Double.NEGATIVE_INFINITY;
    for (int k = 0; k <= STEPS; k++) {
      highest = Math.max(highest, pair.openCircuit((double) k / STEPS));
      volt[k] = highest;
    }
    return new RestCharge(volt);
  }

  /** Charge at a rest voltage, 0 to 1; an end of it beyond the curve. */
  double at(double restV) {
    int found = Arrays.binarySearch(volt, restV);
    int above = found >= 0 ? found : -found - 1;
    if (above == 0 || above == volt.length) {
      return above == 0 ? 0 : 1;
    }
    double part = (restV - volt[above - 1]) / (volt[above] - volt[above - 1]);
    return (above - 1 + (part >= 0 ? part : 0)) / (volt.length - 1);
  }
}
