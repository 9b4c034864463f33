package sagbook.estimate.curve;

import java.util.List;
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
}
