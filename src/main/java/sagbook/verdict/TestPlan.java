package sagbook.verdict;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import sagbook.estimate.BankEstimates;
import sagbook.estimate.CellEstimates;
import sagbook.evidence.Evidence;
import sagbook.evidence.Turn;
import sagbook.model.Chemistry;
import sagbook.model.Estimate;
import sagbook.model.PackDescription;
import sagbook.wording.Words;

/**
 * What to measure next month and what it would buy for the cell in question ({@link Doubt}). A step
 * is only named where it would narrow that cell's interval by a tenth or more ({@link Precision});
 * where none does, that is said, with the look that tells more than any log. A battery that passed
 * a limit is not tested.
 *
 * @param cell the cell in question, 1 for the first; the weakest where none is
 * @param why which cell and why, or why nothing has to be measured, a plain sentence
 * @param steps the steps, safest and most useful first
 */
public record TestPlan(int cell, String why, List<Step> steps) {
  private static final Words WORDS = Words.english();
  private static final double DEEP_LFP_V = 3.1;
  private static final double DEEP_NMC_V = 3.4;
  private static final double EDGE_SHARE = 0.2;
  private static final int EDGES = 10;
  private static final double WORTH_IT = 0.9;

  /**
   * One step.
   *
   * @param quantity what it makes known: "capacity", "resistance" or "charge"
   * @param doing what to do, a plain sentence
   * @param halfWidthPercent the interval's half-width now, % of the median cell's value; of charge,
   *     % of nominal capacity
   * @param predictedPercent the half-width predicted after the step
   */
  public record Step(
      String quantity, String doing, Estimate halfWidthPercent, Estimate predictedPercent) {
    private boolean isWorthIt() {
      return !(halfWidthPercent instanceof Estimate.Known now
          && predictedPercent instanceof Estimate.Known then
          && then.value() > WORTH_IT * now.value());
    }
  }

  public TestPlan {
    steps = List.copyOf(steps);
  }

  /** The plan for a bank. */
  public static TestPlan of(
      BankVerdict verdict, BankEstimates estimates, Evidence evidence, PackDescription pack) {
    if (verdict.severity() == Severity.ACT_NOW) {
      return new TestPlan(weakest(verdict), WORDS.say("plan.stop"), List.of());
    }
    Optional<Doubt> found = Doubt.of(verdict, Rules.of(pack.rules()));
    if (found.isEmpty()) {
      return new TestPlan(weakest(verdict), WORDS.say("plan.none"), List.of());
    }
    Doubt doubt = found.get();
    Planner planner = new Planner(doubt, estimates.cells(), evidence, pack);
    List<Step> steps =
        switch (doubt.kind()) {
          case CAPACITY -> planner.depth();
          case RESISTANCE -> planner.edges();
          case CHARGE -> planner.fullCharge();
        };
    List<Step> worth = steps.stream().filter(Step::isWorthIt).toList();
    return new TestPlan(
        doubt.cell().cell(),
        doubt.sentence() + (worth.isEmpty() ? " " + instead(doubt.kind(), evidence) : ""),
        worth);
  }

  private static int weakest(BankVerdict verdict) {
    return verdict.cells().stream()
        .filter(c -> c.rank() == 1)
        .map(CellVerdict::cell)
        .findFirst()
        .orElse(1);
  }

  /** What to do where no test buys anything; a current that is not logged would tell most. */
  private static String instead(Doubt.Kind kind, Evidence evidence) {
    if (!evidence.channels().hasCurrent() && kind != Doubt.Kind.RESISTANCE) {
      return WORDS.say("plan.instead.current");
    }
    return switch (kind) {
      case CAPACITY -> WORDS.say("plan.instead.capacity");
      case RESISTANCE -> WORDS.say("plan.instead.resistance");
      case CHARGE -> WORDS.say("plan.instead.charge");
    };
  }

  /** Writes the steps for one doubt. */
  private record Planner(
      Doubt doubt, List<CellEstimates> cells, Evidence evidence, PackDescription pack) {

    private List<Step> depth() {
      double deepV = pack.chemistry() == Chemistry.LFP ? DEEP_LFP_V : DEEP_NMC_V;
      boolean wasDeep =
          evidence.turns().stream().anyMatch(turn -> !turn.charge() && isBelow(turn, deepV));
      if (wasDeep && doubt.isKnown()) {
        return List.of();
      }
      return List.of(
          step(
              WORDS.say("plan.depth", Words.fixed(deepV, 2)),
              Precision.likeTheOthers(doubt, cells)));
    }

    private static boolean isBelow(Turn turn, double volt) {
      return turn.extremeVoltageV() < volt;
    }

    private List<Step> edges() {
      double wanted = EDGE_SHARE * pack.nominalCapacityAh();
      double highest = evidence.stress().highestDischargeA();
      double ampere = highest > 0 ? Math.min(wanted, highest) : wanted;
      List<Step> steps = new ArrayList<>();
      steps.add(
          step(
              WORDS.say("plan.edges", Words.fixed(ampere, 0), Integer.toString(EDGES)),
              Precision.moreEdges(doubt, cells, evidence, 2 * EDGES, ampere)));
      double cadence = evidence.cadenceS();
      if (cadence > Precision.FAST_S) {
        steps.add(
            step(
                WORDS.say(
                    "plan.faster",
                    Words.fixed(Precision.FAST_S, 0),
                    Words.fixed(Math.ceil(cadence / Precision.FAST_S), 0)),
                Precision.fasterLogging(doubt, cadence)));
      }
      return steps;
    }

    private List<Step> fullCharge() {
      return List.of(step(WORDS.say("plan.charge"), Precision.likeTheOthers(doubt, cells)));
    }

    private Step step(String doing, Estimate predicted) {
      return new Step(
          doubt.kind().key(),
          doing,
          doubt.kind().halfWidthPercent(doubt.cell().estimates()),
          predicted);
    }
  }
}
