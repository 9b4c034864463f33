package sagbook.verdict;

import java.util.ArrayList;
import java.util.List;
import sagbook.estimate.BankEstimates;
import sagbook.model.Estimate;
import sagbook.model.Finding;
import sagbook.whatif.Change;
import sagbook.whatif.Outcome;
import sagbook.whatif.Prospect;
import sagbook.wording.Words;

/** The one sentence that comes first. */
final class Headline {
  private static final Words WORDS = Words.english();
  private static final double WORTH_SAYING_AH = 0.5;
  private static final int MOST_NAMED = 4;

  /** From this half-width on a gain is said in whole ampere-hours. */
  private static final double WHOLE_FROM_AH = 2;

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
      clauses.add(WORDS.say("headline.limit"));
    }
    clause(Finding.LOW_CAPACITY, "headline.capacity", clauses);
    joints(false, "headline.joint", clauses);
    joints(true, "headline.joint.open", clauses);
    clause(Finding.HIGH_RESISTANCE, "headline.resistance", clauses);
    clause(Finding.SELF_DISCHARGE, "headline.drain", clauses);
    clause(
        Finding.OUT_OF_BALANCE,
        soundCapacities() ? "headline.balance.sound" : "headline.balance",
        clauses);
    clause(Finding.VOLTAGE_SENSOR, "headline.voltage", clauses);
    clause(Finding.TEMPERATURE_SENSOR, "headline.temperature", clauses);
    if (allWorn) {
      clauses.add(WORDS.say("headline.aged"));
    }
    if (clauses.isEmpty()) {
      return untroubled();
    }
    open(clauses);
    return VerdictWords.capital(String.join("; ", clauses)) + rest() + ".";
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
      return WORDS.say("headline.no-steps");
    }
    List<Integer> suspected = suspected(true);
    if (!suspected.isEmpty()) {
      List<Integer> unseen = suspected(false);
      return WORDS.say("headline.suspected", named(suspected))
          + (unseen.isEmpty() ? "" : WORDS.say("headline.suspected.unseen", named(unseen)))
          + ".";
    }
    if (unknown == cells.size()) {
      return WORDS.say("headline.nothing.seen");
    }
    if (unknown > 0) {
      return WORDS.say("headline.nothing.some", named(places(Finding.INSUFFICIENT_EVIDENCE)));
    }
    return WORDS.say("headline.fine", Integer.toString(cells.size()));
  }

  /** Cells that could not be judged, beside those that were found wanting. */
  private void open(List<String> into) {
    List<Integer> suspected = suspected(true);
    List<Integer> unseen = suspected(false);
    if (!suspected.isEmpty()) {
      into.add(WORDS.say("headline.open.suspected", named(suspected)));
    }
    if (!unseen.isEmpty()) {
      into.add(
          suspected.isEmpty() && count(Finding.HEALTHY) == 0
              ? WORDS.say("headline.open.rest")
              : WORDS.say("headline.open.unseen", named(unseen)));
    }
  }

  /** Cells that could not be judged: those of which something is suspected, or the others. */
  private List<Integer> suspected(boolean of) {
    CellJudge judge = new CellJudge(rules);
    return cells.stream()
        .filter(c -> c.finding() == Finding.INSUFFICIENT_EVIDENCE)
        .filter(
            c ->
                of
                    == (judge.suspected(c.estimates())
                        || CellJudge.standsApart(c.estimates(), estimates.cells())))
        .map(CellVerdict::cell)
        .toList();
  }

  private static String named(List<Integer> places) {
    return places.size() > MOST_NAMED
        ? WORDS.say("headline.cells", Integer.toString(places.size()))
        : VerdictWords.cells(places);
  }

  private String rest() {
    long fine = count(Finding.HEALTHY);
    if (fine == 0) {
      return "";
    }
    return count(Finding.INSUFFICIENT_EVIDENCE) == 0 && !allWorn
        ? WORDS.say("headline.others")
        : "";
  }

  private long count(Finding finding) {
    return cells.stream().filter(c -> c.finding() == finding).count();
  }

  private List<Integer> places(Finding finding) {
    return cells.stream().filter(c -> c.finding() == finding).map(CellVerdict::cell).toList();
  }

  private void clause(Finding finding, String key, List<String> into) {
    List<Integer> places = places(finding);
    if (places.isEmpty()) {
      return;
    }
    String text = said(key, places);
    if (finding == Finding.LOW_CAPACITY) {
      text += gain(places);
    }
    into.add(text);
  }

  /** Joints that the log tells from their cells, or those that may as well be the cell. */
  private void joints(boolean orCell, String key, List<String> into) {
    List<Integer> places =
        cells.stream()
            .filter(c -> c.finding() == Finding.CONNECTION && c.isJointOrCell() == orCell)
            .map(CellVerdict::cell)
            .toList();
    if (!places.isEmpty()) {
      into.add(said(key, places));
    }
  }

  private static String said(String key, List<Integer> places) {
    return WORDS.say(key + (places.size() == 1 ? ".one" : ".many"), VerdictWords.cells(places));
  }

  private static String rounded(double number, Estimate.Known gain) {
    return Words.fixed(number, gain.halfWidth() < WHOLE_FROM_AH ? 1 : 0);
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
            .orElse(Estimate.unknown(WORDS.say("unknown.not-reckoned")));
    if (!(gain instanceof Estimate.Known known && known.low() > WORTH_SAYING_AH)) {
      return "";
    }
    String count = places.size() == 1 ? ".one" : ".many";
    return estimates.medianCapacityAh() instanceof Estimate.Known
        ? WORDS.say(
            "headline.gain" + count,
            rounded(known.value(), known),
            rounded(known.low(), known),
            rounded(known.high(), known))
        : WORDS.say("headline.limits" + count);
  }
}
