package sagbook.verdict;

import java.util.List;
import java.util.Locale;
import sagbook.estimate.CellEstimates;
import sagbook.model.Estimate;
import sagbook.model.Finding;
import sagbook.wording.Words;

/**
 * What follows from a finding: the decisions, as data. Each row says what to do, how soon, what
 * would change the mind, the cheapest next observation, and why the rule is as it is.
 */
public enum DecisionRule {
  FINE(Action.NOTHING, Severity.WELL),
  VOLTAGE_LIES(Action.CHECK_SENSOR, Severity.ATTENTION),
  TEMPERATURE_LIES(Action.CHECK_SENSOR, Severity.ATTENTION),
  JOINT(Action.MEND_JOINT, Severity.ATTENTION),
  JOINT_OR_CELL(Action.MEND_JOINT, Severity.ATTENTION),
  FILL_UP(Action.REBALANCE, Severity.ATTENTION),
  BLEED_DOWN(Action.REBALANCE, Severity.ATTENTION),
  DRAIN(Action.RUN_TEST, Severity.ATTENTION),
  DRAIN_FAST(Action.STOP_AND_ISOLATE, Severity.ACT_NOW),
  DRAINED_FLAT(Action.PLAN_REPLACEMENT, Severity.ATTENTION),
  WORN_A_LITTLE(Action.WATCH, Severity.ATTENTION),
  WORN(Action.PLAN_REPLACEMENT, Severity.ATTENTION),
  RESISTIVE(Action.WATCH, Severity.ATTENTION),
  RESISTIVE_MUCH(Action.PLAN_REPLACEMENT, Severity.ATTENTION),
  SUSPECTED(Action.RUN_TEST, Severity.WELL),
  UNSEEN(Action.RUN_TEST, Severity.WELL),
  NO_STEPS(Action.RUN_TEST, Severity.WELL);

  private static final Words WORDS = Words.english();

  private final Action action;
  private final Severity severity;

  DecisionRule(Action action, Severity severity) {
    this.action = action;
    this.severity = severity;
  }

  public Action action() {
    return action;
  }

  public Severity severity() {
    return severity;
  }

  /** Why the rule is as it is, with its source. */
  public String reason() {
    return said("reason");
  }

  /** The row that holds for a cell. */
  static DecisionRule of(Finding finding, CellEstimates cell, Rules rules, boolean suspected) {
    return switch (finding) {
      case HEALTHY -> FINE;
      case VOLTAGE_SENSOR -> VOLTAGE_LIES;
      case TEMPERATURE_SENSOR -> TEMPERATURE_LIES;
      case CONNECTION -> Seat.of(cell) == Seat.JOINT ? JOINT : JOINT_OR_CELL;
      case OUT_OF_BALANCE ->
          cell.chargeOffsetPercent().find().orElse(-1) < 0 ? FILL_UP : BLEED_DOWN;
      case SELF_DISCHARGE ->
          isAbove(cell.selfDischargeMilliamp(), rules.drainStopMilliamp()) ? DRAIN_FAST : DRAIN;
      case LOW_CAPACITY ->
          1 - cell.capacityRelative().find().orElse(1) < rules.replaceCapacity()
              ? WORN_A_LITTLE
              : WORN;
      case HIGH_RESISTANCE ->
          isAbove(cell.resistanceRelative(), 1 + rules.replaceResistance())
              ? RESISTIVE_MUCH
              : RESISTIVE;
      case INSUFFICIENT_EVIDENCE ->
          suspected ? SUSPECTED : lacksOnlySteps(cell) ? NO_STEPS : UNSEEN;
    };
  }

  /** Whether all is known of a cell but how it answers to load steps. */
  static boolean lacksOnlySteps(CellEstimates cell) {
    return cell.resistanceRelative() instanceof Estimate.Unknown
        && cell.capacityRelative() instanceof Estimate.Known
        && cell.chargeOffsetPercent() instanceof Estimate.Known;
  }

  private static boolean isAbove(Estimate estimate, double limit) {
    return estimate instanceof Estimate.Known known && known.isAbove(limit);
  }

  /** The row in words for one cell, with its evidence. */
  Advice advice(CellEstimates cell, List<String> why, Rules rules) {
    boolean sound =
        cell.capacityRelative() instanceof Estimate.Known size
            && 1 - size.value() < rules.capacity().worth();
    return new Advice(
        action,
        List.of(cell.cell()),
        said(
            "doing",
            Integer.toString(cell.cell()),
            WORDS.say(sound ? "rule.not-worn" : "rule.perhaps-worn")),
        why,
        said("mind"),
        said("next"));
  }

  private String said(String what, String... filled) {
    String rule = name().toLowerCase(Locale.ROOT).replace('_', '-');
    return WORDS.say("rule." + rule + "." + what, filled);
  }
}
