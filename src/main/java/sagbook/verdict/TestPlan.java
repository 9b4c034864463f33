package sagbook.verdict;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import sagbook.estimate.BankEstimates;
import sagbook.estimate.CellEstimates;
import sagbook.evidence.Evidence;
import sagbook.evidence.Turn;
import sagbook.model.Chemistry;
import sagbook.model.Estimate;
import sagbook.model.Finding;
import sagbook.model.PackDescription;
import sagbook.numeric.Robust;

/**
 * What to measure next month and what it would buy for the cell in question.
 *
 * <p>Prediction: independent repetitions of the same measurement narrow an interval by the square
 * root of their number, so of {@code n} repetitions in this month's log one more leaves {@code
 * sqrt(n / (n + 1))} of the half-width. Where this cell's value is unknown, the string's median
 * half-width stands for what one good repetition gives; where none is known, nothing is predicted.
 * It holds as far as repetitions are alike and errors independent; a systematic error stays.
 *
 * @param cell the cell in question, 1 for the first
 * @param steps the steps, safest and most useful first
 */
public record TestPlan(int cell, List<Step> steps) {
  private static final double DEEP_LFP_V = 3.1;
  private static final double DEEP_NMC_V = 3.4;
  private static final double EDGE_SHARE = 0.2;
  private static final int EDGES = 10;
  private static final double FAST_S = 10;

  /**
   * One step.
   *
   * @param quantity what it makes known: "capacity" or "resistance"
   * @param doing what to do, a plain sentence
   * @param halfWidthPercent the interval's half-width now, % of the median cell's value
   * @param predictedPercent the half-width predicted after the step
   */
  public record Step(
      String quantity, String doing, Estimate halfWidthPercent, Estimate predictedPercent) {}

  public TestPlan {
    steps = List.copyOf(steps);
  }

  /** The plan for a bank. */
  public static TestPlan of(
      BankVerdict verdict, BankEstimates estimates, Evidence evidence, PackDescription pack) {
    CellVerdict asked =
        verdict.cells().stream()
            .min(Comparator.comparing(TestPlan::urgency).thenComparingInt(CellVerdict::rank))
            .orElseThrow();
    double deepV = pack.chemistry() == Chemistry.LFP ? DEEP_LFP_V : DEEP_NMC_V;
    long deep = evidence.turns().stream().filter(t -> isDeep(t, deepV)).count();
    List<Step> steps = new ArrayList<>();
    steps.add(
        step(
            "capacity",
            String.format(
                Locale.ROOT,
                "Charge to full and let it stand for an hour; then discharge at an ordinary load"
                    + " until the lowest cell reads %.2f V (10 to 15 %% left), no deeper; rest for"
                    + " an hour, then recharge.",
                deepV),
            estimates.cells(),
            asked.estimates(),
            CellEstimates::capacityRelative,
            deep,
            1));
    double ampere = EDGE_SHARE * pack.nominalCapacityAh();
    double highest = evidence.stress().highestDischargeA();
    double edge = highest > 0 ? Math.min(ampere, highest) : ampere;
    String load =
        String.format(
            Locale.ROOT,
            "Half charged, switch a steady load of about %.0f A on for two minutes and off for two,"
                + " %d times, with charger and sun off.",
            edge,
            EDGES);
    steps.add(
        step(
            "resistance",
            evidence.cadenceS() > FAST_S
                ? load
                    + String.format(
                        Locale.ROOT,
                        " Log every %.0f s or faster meanwhile, %.0f times as often as now.",
                        FAST_S,
                        Math.ceil(evidence.cadenceS() / FAST_S))
                : load,
            estimates.cells(),
            asked.estimates(),
            CellEstimates::resistanceRelative,
            evidence.steps().size(),
            EDGES));
    return new TestPlan(asked.cell(), steps);
  }

  /** Cells that can't be judged first, then those with a finding, then the others. */
  private static int urgency(CellVerdict cell) {
    return cell.finding() == Finding.INSUFFICIENT_EVIDENCE
        ? 0
        : cell.finding() == Finding.HEALTHY ? 2 : 1;
  }

  private static boolean isDeep(Turn turn, double volt) {
    return !turn.charge() && turn.extremeVoltageV() < volt;
  }

  private static Step step(
      String quantity,
      String doing,
      List<CellEstimates> cells,
      CellEstimates asked,
      Function<CellEstimates, Estimate> of,
      long repetitions,
      int more) {
    Estimate now = halfWidth(of.apply(asked));
    return new Step(quantity, doing, now, predicted(cells, of, now, repetitions, more));
  }

  private static Estimate halfWidth(Estimate estimate) {
    return estimate instanceof Estimate.Known known ? exact(100 * known.halfWidth()) : estimate;
  }

  private static Estimate predicted(
      List<CellEstimates> cells,
      Function<CellEstimates, Estimate> of,
      Estimate now,
      long repetitions,
      int more) {
    if (now instanceof Estimate.Known known && repetitions > 0) {
      return exact(known.value() * Math.sqrt((double) repetitions / (repetitions + more)));
    }
    double[] widths =
        cells.stream().map(of).flatMapToDouble(e -> halfWidth(e).find().stream()).toArray();
    return widths.length == 0 || now instanceof Estimate.Known
        ? Estimate.unknown("this log holds no such measurement to predict from")
        : exact(Robust.median(widths));
  }

  private static Estimate exact(double value) {
    return new Estimate.Known(value, value, value);
  }
}
