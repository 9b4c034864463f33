package sagbook.estimate.curve;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import sagbook.model.Chemistry;
import sagbook.model.PackDescription;

/**
 * A cell's open-circuit curve as the difference of its electrodes against lithium, V, over the
 * share of lithium in each (0 to 1). It anchors the curve learned from the pack where the pack was
 * never seen.
 */
public interface ElectrodePair {
  /**
   * The pairs that may hold for a pack, the most usual first: its own table, or those published.
   */
  static List<ElectrodePair> of(PackDescription pack) {
    return pack.openCircuit()
        .map(table -> List.<ElectrodePair>of(TablePair.of(table, pack.chemistry())))
        .orElse(List.copyOf(HalfCells.of(pack.chemistry())));
  }

  /** Positive electrode at lithium share {@code y}, V. */
  double positive(double y);

  /** Negative electrode at lithium share {@code x}, V. */
  double negative(double x);

  /** Size of the positive electrode over the capacity of a usual new cell. */
  double positiveSize();

  /** Size of the negative electrode over the capacity of a usual new cell. */
  double negativeSize();

  /** Lithium share of the positive electrode of a full cell. */
  double fullPositive();

  /** Lithium share of the negative electrode of an empty cell. */
  double emptyNegative();

  /** Whose cells it belongs to. */
  Chemistry chemistry();

  /** Open-circuit voltage of a usual new cell at charge 0 to 1, V. */
  default double openCircuit(double charge) {
    return positive(fullPositive() + (1 - charge) / positiveSize())
        - negative(emptyNegative() + charge / negativeSize());
  }

  /**
   * Charge between rest at two voltages after some cyclable lithium was lost, as a share of a usual
   * new cell's. It falls by less than what was lost at first, since a new cell is emptied by both
   * electrodes at once, one that lost lithium by its graphite alone.
   *
   * @param lost lithium lost, as a share of a usual new cell's charge
   * @param fullV rest voltage of a full cell
   * @param emptyV rest voltage of an empty cell
   */
  default double charge(double lost, double fullV, double emptyV) {
    DoubleUnaryOperator worn =
        q ->
            positive(fullPositive() + (1 - q - lost) / positiveSize())
                - negative(emptyNegative() + q / negativeSize());
    // Beyond the place where the positive electrode holds no lithium the functions mean nothing.
    double furthest = 1 - lost + fullPositive() * positiveSize();
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
