package sagbook.verdict;

import java.util.List;
import sagbook.estimate.CellEstimates;
import sagbook.model.Estimate;
import sagbook.model.Finding;
import sagbook.whatif.Prospect;

/**
 * What is the matter with a cell.
 *
 * @param rank 1 for the weakest place in the string: the one that costs it most
 * @param tiedWith cells whose cost can't be told from this one's, because the intervals overlap
 * @param estimates what this rests on
 * @param finding the cause
 * @param action one plain sentence: what to do
 * @param evidence plain sentences: why
 * @param lossAh usable charge the string would gain were this cell like the others, Ah
 * @param cost what the cell takes from the string by itself
 */
public record CellVerdict(
    int rank,
    List<Integer> tiedWith,
    CellEstimates estimates,
    Finding finding,
    String action,
    List<String> evidence,
    Estimate lossAh,
    Prospect.CellCost cost) {
  public CellVerdict {
    tiedWith = List.copyOf(tiedWith);
    evidence = List.copyOf(evidence);
  }

  public int cell() {
    return estimates.cell();
  }
}
