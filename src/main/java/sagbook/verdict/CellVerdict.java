package sagbook.verdict;

import java.util.List;
import sagbook.estimate.CellEstimates;
import sagbook.model.Estimate;
import sagbook.model.Finding;

/**
 * What is the matter with a cell.
 *
 * @param rank 1 for the weakest place in the string
 * @param estimates what this rests on
 * @param finding the cause
 * @param action one plain sentence: what to do
 * @param evidence plain sentences: why
 * @param lossAh usable charge the string would gain were this cell like the others, Ah
 */
public record CellVerdict(
    int rank,
    CellEstimates estimates,
    Finding finding,
    String action,
    List<String> evidence,
    Estimate lossAh) {
  public CellVerdict {
    evidence = List.copyOf(evidence);
  }

  public int cell() {
    return estimates.cell();
  }
}
