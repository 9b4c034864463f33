package sagbook.model;

import java.util.List;

/**
 * The keeper's own open-circuit curve of a cell.
 *
 * @param chargeFraction 0 to 1, strictly rising from 0 to 1, at least {@link #FEWEST}
 * @param volt rest voltage at each, never falling, V
 */
public record OpenCircuitTable(List<Double> chargeFraction, List<Double> volt) {
  /** Fewer points can't show the steps of a curve. */
  public static final int FEWEST = 10;

  public OpenCircuitTable {
    chargeFraction = List.copyOf(chargeFraction);
    volt = List.copyOf(volt);
    int n = chargeFraction.size();
    if (n < FEWEST || n != volt.size()) {
      throw new IllegalArgumentException("an open-circuit table needs 10 pairs or more");
    }
    if (chargeFraction.get(0) != 0 || chargeFraction.get(n - 1) != 1) {
      throw new IllegalArgumentException("an open-circuit table runs from 0 to 1");
    }
    for (int i = 1; i < n; i++) {
      if (!(chargeFraction.get(i) > chargeFraction.get(i - 1))
          || !(volt.get(i) >= volt.get(i - 1))) {
        throw new IllegalArgumentException("an open-circuit table rises");
      }
    }
  }
}
