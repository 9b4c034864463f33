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
 * @param advice what to do about it
 * @param lossAh usable charge the string would gain were this cell like the others, Ah
 * @param cost what the cell takes from the string by itself
 */
public record CellVerdict(
    int rank,
    List<Integer> tiedWith,
    CellEstimates estimates,
    Finding finding,
    Advice advice,
    Estimate lossAh,
    Prospect.CellCost cost) {
  public CellVerdict {
    tiedWith = List.copyOf(tiedWith);
  }

  /** What to do, one plain sentence. */
  public String action() {
    return advice.sentence();
  }

  /** Why, plain sentences. */
  public List<String> evidence() {
    return advice.why();
  }

  public int cell() {
    return estimates.cell();
  }

  /** Whether the log can't tell a bad joint from a cell that resists too much. */
  public boolean isJointOrCell() {
    return finding == Finding.CONNECTION && Seat.of(estimates) == Seat.EITHER;
  }

  /** Key of the finding's wording: a joint that may as well be the cell has one of its own. */
  public String findingKey() {
    return finding.words() + (isJointOrCell() ? ".open" : "");
  }
}
