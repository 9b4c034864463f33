package sagbook.whatif;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import sagbook.model.Estimate;

/**
 * What a string gives now and what could be had.
 *
 * @param use how the household uses it
 * @param spare what a replaced cell is replaced by
 * @param usableKWh energy from full to empty at the typical evening load, kWh
 * @param eveningMinutes how long that lasts, min
 * @param sagV the whole string's voltage drop at the highest discharge current seen, V
 * @param chargeEndsWith cells of which one, with 95 % certainty, is full first; the likeliest first
 * @param dischargeEndsWith likewise empty first
 * @param costs one a cell, cell 1 first
 * @param rebalanced all cells brought to full together
 * @param single each cell replaced by the spare, cell 1 first
 * @param pairs any two replaced, by first and second cell
 * @param mended joints that could be mended, by cell
 */
public record Prospect(
    Use use,
    Spare spare,
    Estimate usableKWh,
    Estimate eveningMinutes,
    Estimate sagV,
    List<Integer> chargeEndsWith,
    List<Integer> dischargeEndsWith,
    List<CellCost> costs,
    Outcome rebalanced,
    List<Outcome> single,
    List<Outcome> pairs,
    List<Outcome> mended) {

  /**
   * What one cell takes from the string.
   *
   * @param aloneAh what the string would lose to this cell were all others like the median and
   *     level with each other, Ah; never below 0
   * @param sagMillivolt its voltage drop at the highest discharge current seen, mV
   */
  public record CellCost(Estimate aloneAh, Estimate sagMillivolt) {}

  public Prospect {
    chargeEndsWith = List.copyOf(chargeEndsWith);
    dischargeEndsWith = List.copyOf(dischargeEndsWith);
    costs = List.copyOf(costs);
    single = List.copyOf(single);
    pairs = List.copyOf(pairs);
    mended = List.copyOf(mended);
  }

  /** Every change reckoned. */
  public List<Outcome> all() {
    List<Outcome> all = new ArrayList<>();
    all.add(rebalanced);
    all.addAll(mended);
    all.addAll(single);
    all.addAll(pairs);
    return all;
  }

  /** What a change buys, where it was reckoned. */
  public Optional<Outcome> find(Change change) {
    return all().stream().filter(outcome -> outcome.change().equals(change)).findFirst();
  }
}
