package sagbook.verdict;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import sagbook.estimate.BankEstimates;
import sagbook.model.Estimate;
import sagbook.model.Finding;
import sagbook.whatif.Change;
import sagbook.whatif.Outcome;
import sagbook.whatif.Prospect;

/** The one sentence that comes first. */
final class Headline {
  private static final double WORTH_SAYING_AH = 0.5;

  private final BankEstimates estimates;
  private final Prospect prospect;
  private final List<CellVerdict> cells;
  private final List<String> exceeded;
  private final boolean allWorn;
  private final Rules rules;

  Headline(
      BankEstimates estimates,
      Prospect prospect,
      List<CellVerdict> cells,
      List<String> exceeded,
      boolean allWorn,
      Rules rules) {
    this.estimates = estimates;
    this.prospect = prospect;
    this.cells = cells;
    this.exceeded = exceeded;
    this.allWorn = allWorn;
    this.rules = rules;
  }

  String sentence() {
    List<String> clauses = new ArrayList<>();
    if (!exceeded.isEmpty()) {
      clauses.add("a limit was exceeded");
    }
    clause(Finding.LOW_CAPACITY, "has lost capacity", "have lost capacity", clauses);
    clause(Finding.CONNECTION, "seems to have a bad joint", "seem to have bad joints", clauses);
    clause(Finding.HIGH_RESISTANCE, "has too much resistance", "have too much resistance", clauses);
    clause(Finding.SELF_DISCHARGE, "is losing charge by itself", "are losing charge", clauses);
    String worn = soundCapacities() ? ", not worn" : "";
    clause(
        Finding.OUT_OF_BALANCE, "is out of balance" + worn, "are out of balance" + worn, clauses);
    clause(Finding.VOLTAGE_SENSOR, "has a wrong voltage reading", "have wrong readings", clauses);
    clause(
        Finding.TEMPERATURE_SENSOR,
        "has a doubtful temperature reading",
        "have doubtful temperature readings",
        clauses);
    if (allWorn) {
      clauses.add("the battery as a whole has aged");
    }
    if (clauses.isEmpty()) {
      return untroubled();
    }
    return Words.capital(String.join("; ", clauses)) + rest() + ".";
  }

  /** Whether the capacity of every cell that is out of balance is known, and was not found low. */
  private boolean soundCapacities() {
    return cells.stream()
        .filter(c -> c.finding() == Finding.OUT_OF_BALANCE)
        .allMatch(
            c ->
                c.estimates().capacityRelative() instanceof Estimate.Known size
                    && 1 - size.value() < rules.capacity().worth());
  }

  private String untroubled() {
    long unknown = count(Finding.INSUFFICIENT_EVIDENCE);
    if (unknown == cells.size()
        && cells.stream().allMatch(c -> DecisionRule.lacksOnlySteps(c.estimates()))) {
      return "Nothing wrong was seen, but without clear load steps the joints can't be judged.";
    }
    if (unknown == cells.size()) {
      return "Nothing wrong was seen, but the logs don't tell enough of any cell.";
    }
    if (unknown > 0) {
      return "Nothing wrong was seen; for "
          + Words.cells(places(Finding.INSUFFICIENT_EVIDENCE))
          + " the logs don't tell enough.";
    }
    return "All " + cells.size() + " cells are fine.";
  }

  private String rest() {
    long fine = count(Finding.HEALTHY);
    if (fine == 0) {
      return "";
    }
    return count(Finding.INSUFFICIENT_EVIDENCE) == 0 && !allWorn ? "; the others are fine" : "";
  }

  private long count(Finding finding) {
    return cells.stream().filter(c -> c.finding() == finding).count();
  }

  private List<Integer> places(Finding finding) {
    return cells.stream().filter(c -> c.finding() == finding).map(CellVerdict::cell).toList();
  }

  private void clause(Finding finding, String one, String many, List<String> into) {
    List<Integer> places = places(finding);
    if (places.isEmpty()) {
      return;
    }
    String text = Words.cells(places) + " " + (places.size() == 1 ? one : many);
    if (finding == Finding.LOW_CAPACITY) {
      text += gain(places);
    }
    into.add(text);
  }

  /** What replacing one or two of them buys. */
  private String gain(List<Integer> places) {
    if (places.size() > 2) {
      return "";
    }
    Estimate gain =
        prospect
            .find(Change.replace(places))
            .map(Outcome::gainAh)
            .orElse(Estimate.unknown("it was not reckoned"));
    if (!(gain instanceof Estimate.Known known && known.low() > WORTH_SAYING_AH)) {
      return "";
    }
    boolean one = places.size() == 1;
    String limits = one ? " and limits the battery" : " and limit the battery";
    return estimates.medianCapacityAh() instanceof Estimate.Known
        ? String.format(
            Locale.ROOT,
            "%s: replacing %s would add about %.0f Ah",
            limits,
            one ? "it" : "both",
            known.value())
        : limits;
  }
}
