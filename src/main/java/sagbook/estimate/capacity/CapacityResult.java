package sagbook.estimate.capacity;

import java.util.List;
import sagbook.model.Estimate;

/**
 * Charge side of a bank.
 *
 * @param medianCapacityAh capacity of the string's median cell, Ah
 * @param fullAh where the median cell is full on the charge axis, Ah
 * @param spanAh capacity to reckon charge with: the median's where known, else nominal, Ah
 * @param cells one a cell
 */
public record CapacityResult(
    Estimate medianCapacityAh, double fullAh, double spanAh, List<CellCharge> cells) {
  public CapacityResult {
    cells = List.copyOf(cells);
  }

  /** The same without all that is a share of a capacity, which nobody knows. */
  CapacityResult withoutShares(String reason) {
    Estimate unknown = Estimate.unknown(reason);
    List<CellCharge> others =
        cells.stream()
            .map(
                cell ->
                    new CellCharge(
                        unknown,
                        unknown,
                        unknown,
                        cell.selfDischargeMilliamp(),
                        cell.voltageOffsetMillivolt()))
            .toList();
    return new CapacityResult(unknown, fullAh, spanAh, others);
  }

  /** Whether the size of any cell is told. */
  public boolean tellsSizes() {
    return cells.stream().anyMatch(cell -> cell.relative() instanceof Estimate.Known);
  }
}
