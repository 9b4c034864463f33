package sagbook.verdict;

import java.util.List;
import java.util.Locale;
import sagbook.estimate.CellEstimates;
import sagbook.model.Estimate;
import sagbook.model.Finding;

/**
 * What follows from a finding: the decisions, as data. Each row says what to do, how soon, what
 * would change the mind, the cheapest next observation, and why the rule is as it is.
 *
 * <p>{@code {cell}} stands for the cell's number.
 */
public enum DecisionRule {
  FINE(
      Action.NOTHING,
      Severity.WELL,
      "Nothing to do.",
      "A gap to its neighbours that opens from month to month.",
      "Next month's check.",
      "no value stands clear of the neighbours (common practice, no source)"),
  VOLTAGE_LIES(
      Action.CHECK_SENSOR,
      Severity.ATTENTION,
      "Check the voltage reading of cell {cell} against a good multimeter at its terminals before"
          + " believing anything else about it.",
      "A multimeter that agrees with the board: then the cell itself stands apart.",
      "One reading with a multimeter at rest, while the board's value is on the screen.",
      "a wrong voltage falsifies every other number of the cell, and measuring costs a minute"
          + " (common practice, no source)"),
  TEMPERATURE_LIES(
      Action.CHECK_SENSOR,
      Severity.ATTENTION,
      "Check the temperature sensor of cell {cell}: is it fixed to this cell?",
      "A hand-held thermometer that agrees with the board.",
      "A hand-held thermometer held to the cell after an hour of load.",
      "a cell that warms unseen is the dangerous one, and looking costs nothing (common practice,"
          + " no source)"),
  JOINT(
      Action.MEND_JOINT,
      Severity.ATTENTION,
      "With the battery isolated, check the joints at cell {cell}: clean and tighten them to the"
          + " cell maker's torque. Until then keep loads low: a bad joint heats where the current"
          + " passes, and may burn.",
      "The same excess after the joint was remade: then it is the cell.",
      "The warmth of both joints, or their millivolts, under the highest usual load.",
      "a joint is looked at in minutes and may burn; a worn cell that was taken for one loses"
          + " nothing by it (makers citing IEEE 450 and 484 remake joints 20 % above the average)"),
  FILL_UP(
      Action.REBALANCE,
      Severity.ATTENTION,
      "Bring cell {cell} up to its neighbours: charge it alone to full, or let the boards level the"
          + " others over several full charges. {worn}",
      "An offset that comes back within weeks: then something drains the cell.",
      "The order in which the cells reach full at the next full charge.",
      "imbalance costs patience, not a cell; levelling it shows whether wear hides behind it"
          + " (common practice, no source)"),
  BLEED_DOWN(
      Action.REBALANCE,
      Severity.ATTENTION,
      "Bring cell {cell} down to its neighbours: let its board bleed it over several full charges."
          + " {worn}",
      "An offset that comes back within weeks: then the others are drained.",
      "The order in which the cells reach full at the next full charge.",
      "imbalance costs patience, not a cell; levelling it shows whether wear hides behind it"
          + " (common practice, no source)"),
  DRAIN(
      Action.RUN_TEST,
      Severity.ATTENTION,
      "Find out what drains cell {cell}: check its board and wiring first, then the cell; level the"
          + " charge afterwards.",
      "A drain that stops when the board is unplugged: then it is the board, not the cell.",
      "Its voltage after a week of rest with the board unplugged, against a neighbour's.",
      "boards and wires drain more often than cells do (common practice, no source)"),
  DRAIN_FAST(
      Action.STOP_AND_ISOLATE,
      Severity.ACT_NOW,
      "Stop using the battery and isolate cell {cell}: it drains itself faster than a board can,"
          + " which may be a short inside.",
      "A drain that stops when the board is unplugged.",
      "Its temperature against its neighbours', from outside, without opening anything.",
      "a short inside a cell heats it and can run away (common practice, no source)"),
  WORN_A_LITTLE(
      Action.WATCH,
      Severity.ATTENTION,
      "Watch cell {cell}: it has lost some capacity, not yet enough to open the battery for.",
      "A loss that grows by more than its range within a season.",
      "The same estimate after the next deep discharge.",
      "below the threshold for replacing, the risk of opening outweighs the gain (common practice,"
          + " no source)"),
  WORN(
      Action.PLAN_REPLACEMENT,
      Severity.ATTENTION,
      "Plan to replace cell {cell}; until then it decides how much the battery gives.",
      "A second month, with a full charge and a deep discharge, that puts it back among the others.",
      "One more deep discharge: it should be the first to bend down again.",
      "the string gives no more than its weakest cell (arithmetic)"),
  RESISTIVE(
      Action.WATCH,
      Severity.ATTENTION,
      "Watch cell {cell}: keep high loads short and plan to replace it if the resistance goes on"
          + " rising.",
      "A resistance that falls after the joints were remade: then it was a joint.",
      "Its warmth against its neighbours' after an hour of high load.",
      "resistance costs voltage and warmth, hardly charge (common practice, no source)"),
  RESISTIVE_MUCH(
      Action.PLAN_REPLACEMENT,
      Severity.ATTENTION,
      "Plan to replace cell {cell}; until then keep loads low, for it warms more than the others.",
      "A resistance that falls after the joints were remade: then it was a joint.",
      "The millivolts across each joint under load, to rule the joint out before buying a cell.",
      "twice the resistance is a common end of life for power (common practice, no source)"),
  SUSPECTED(
      Action.RUN_TEST,
      Severity.WELL,
      "Something may be wrong with cell {cell}, but the logs can't tell for sure: make the test that"
          + " is described for next month.",
      "A range that closes to one side of the limit.",
      "The test described for next month.",
      "a wrong certainty opens a battery for nothing (common practice, no source)"),
  UNSEEN(
      Action.RUN_TEST,
      Severity.WELL,
      "Nothing to do yet; the logs can't tell, see what to measure next month.",
      "Any log that shows the cell full and nearly empty.",
      "A full charge and a deep discharge within one log.",
      "what was not seen is not judged (common practice, no source)"),
  NO_STEPS(
      Action.RUN_TEST,
      Severity.WELL,
      "Nothing to do yet; without clear load steps a loose joint would not show, see what to"
          + " measure next month.",
      "Any log in which large loads go on and off.",
      "A kettle or an oven switched on and off a few times, the battery half charged.",
      "a loose joint shows in nothing but resistance (common practice, no source)");

  private static final String NOT_WORN = "The cell itself need not be replaced.";
  private static final String PERHAPS_WORN = "Whether it is also worn can only be told after that.";

  private final Action action;
  private final Severity severity;
  private final String sentence;
  private final String mindChanger;
  private final String nextObservation;
  private final String reason;

  DecisionRule(
      Action action,
      Severity severity,
      String sentence,
      String mindChanger,
      String nextObservation,
      String reason) {
    this.action = action;
    this.severity = severity;
    this.sentence = sentence;
    this.mindChanger = mindChanger;
    this.nextObservation = nextObservation;
    this.reason = reason;
  }

  public Action action() {
    return action;
  }

  public Severity severity() {
    return severity;
  }

  /** Why the rule is as it is, with its source. */
  public String reason() {
    return reason;
  }

  /** The row that holds for a cell. */
  static DecisionRule of(Finding finding, CellEstimates cell, Rules rules, boolean suspected) {
    return switch (finding) {
      case HEALTHY -> FINE;
      case VOLTAGE_SENSOR -> VOLTAGE_LIES;
      case TEMPERATURE_SENSOR -> TEMPERATURE_LIES;
      case CONNECTION -> JOINT;
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
        sentence
            .replace("{cell}", String.format(Locale.ROOT, "%d", cell.cell()))
            .replace("{worn}", sound ? NOT_WORN : PERHAPS_WORN),
        why,
        mindChanger,
        nextObservation);
  }
}
