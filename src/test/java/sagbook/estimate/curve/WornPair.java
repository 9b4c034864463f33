package sagbook.estimate.curve;

import java.util.function.DoubleUnaryOperator;

/** What a cell of two published electrodes holds after it lost lithium. */
public final class WornPair {
  private WornPair() {}

  /**
   * Charge between rest at two voltages, as a share of a usual new cell's. It falls by less than
   * what was lost at first, since a new cell is emptied by both electrodes at once, one that lost
   * lithium by its graphite alone.
   *
   * @param lost lithium lost, as a share of a usual new cell's charge
   */
  public static double charge(ElectrodePair pair, double lost, double fullV, double emptyV) {
    DoubleUnaryOperator worn =
        q ->
            pair.positive(pair.fullPositive() + (1 - q - lost) / pair.positiveSize())
                - pair.negative(pair.emptyNegative() + q / pair.negativeSize());
    // Beyond the place where the positive electrode holds no lithium the functions mean nothing.
    double furthest = 1 - lost + pair.fullPositive() * pair.positiveSize();
    return place(worn, fullV, 0.5, furthest) - place(worn, emptyV, -0.1, 0.4);
  }

  /** Where a rising curve passes a voltage between two places, by bisection. */
  private static double place(DoubleUnaryOperator curve, double volt, double from, double to) {
    double low = from;
    double high = to;
    for (int i = 0; i < 60; i++) {
      double middle = (low + high) / 2;
      if (curve.applyAsDouble(middle) < volt) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return (low + high) / 2;
  }
}
