package sagbook.verdict;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import sagbook.estimate.BankEstimates;
import sagbook.estimate.CellEstimates;
import sagbook.evidence.Stress;
import sagbook.model.Estimate;
import sagbook.model.Finding;
import sagbook.model.Limits;
import sagbook.whatif.Prospect;

/** Turns a bank's estimates into a decision. */
public final class Judge {
  /** What a limit may be passed by before it counts: a board's error and a moment. */
  private static final double VOLTAGE_GRACE = 0.03;

  private static final double HOURS_GRACE = 0.03;

  private final Limits limits;
  private final Rules rules;
  private final CellJudge cellJudge;

  public Judge(Rules rules, Limits limits) {
    this.rules = rules;
    this.limits = limits;
    this.cellJudge = new CellJudge(rules);
  }

  /**
   * The decision on one bank.
   *
   * @param prospect what each cell costs and what a change would buy
   * @param loggingAdvice what the reader of the logs would have changed in the logging
   */
  public BankVerdict judge(
      BankEstimates estimates, Prospect prospect, Stress stress, List<String> loggingAdvice) {
    List<CellEstimates> order = new ArrayList<>(estimates.cells());
    order.sort(weakestFirst(estimates, prospect, stress));
    CellVerdict[] byCell = new CellVerdict[order.size()];
    for (int rank = 0; rank < order.size(); rank++) {
      CellEstimates cell = order.get(rank);
      Finding finding = cellJudge.find(cell);
      byCell[cell.cell() - 1] =
          new CellVerdict(
              rank + 1,
              tiedWith(cell.cell(), prospect, littleAh(estimates, prospect)),
              cell,
              finding,
              Words.action(finding, cell),
              Words.evidence(cell, estimates.resistancePulseS()),
              estimates.replacementGainAh().get(cell.cell() - 1),
              prospect.costs().get(cell.cell() - 1));
    }
    List<CellVerdict> cells = List.of(byCell);
    List<String> exceeded = exceeded(stress, cells);
    List<String> todo = new ArrayList<>(exceeded);
    actions(cells, todo);
    boolean attention = todo.size() > exceeded.size();
    Severity severity =
        !exceeded.isEmpty() ? Severity.ACT_NOW : attention ? Severity.ATTENTION : Severity.WELL;
    return new BankVerdict(
        severity,
        new Headline(estimates, prospect, cells, exceeded).sentence(),
        todo,
        NextMonth.of(estimates, loggingAdvice),
        cells);
  }

  /**
   * By what each costs the string; of those that cost too little to be told apart, found wanting
   * before not, then by capacity, by how near to empty each came, and by resistance.
   */
  private Comparator<CellEstimates> weakestFirst(
      BankEstimates estimates, Prospect prospect, Stress stress) {
    double little = littleAh(estimates, prospect);
    return Comparator.comparingDouble(
            (CellEstimates c) ->
                -Math.max(little, prospect.costs().get(c.cell() - 1).aloneAh().find().orElse(0)))
        .thenComparing(c -> unsuspected(cellJudge.find(c)))
        .thenComparingDouble(c -> c.capacityRelative().find().orElse(1))
        .thenComparingDouble(
            c ->
                c.capacityRelative() instanceof Estimate.Unknown
                    ? stress.lowestVoltageV()[c.cell() - 1]
                    : 0)
        .thenComparingDouble(c -> -c.resistanceRelative().find().orElse(1))
        .thenComparingInt(CellEstimates::cell);
  }

  /** Cells whose cost can't be told from this one's: overlapping intervals, or both too little. */
  private static List<Integer> tiedWith(int cell, Prospect prospect, double littleAh) {
    List<Integer> tied = new ArrayList<>();
    if (prospect.costs().get(cell - 1).aloneAh() instanceof Estimate.Known own) {
      for (int other = 1; other <= prospect.costs().size(); other++) {
        if (other != cell
            && prospect.costs().get(other - 1).aloneAh() instanceof Estimate.Known its
            && ((own.low() <= its.high() && its.low() <= own.high())
                || Math.max(own.value(), its.value()) < littleAh)) {
          tied.add(other);
        }
      }
    }
    return tied;
  }

  /** A cost below this is a difference that the rules call unsure, Ah. */
  private double littleAh(BankEstimates estimates, Prospect prospect) {
    double usualAh = estimates.medianCapacityAh().find().orElse(prospect.spare().capacityAh());
    return rules.capacity().sure() * usualAh;
  }

  private static boolean unsuspected(Finding finding) {
    return finding == Finding.HEALTHY || finding == Finding.INSUFFICIENT_EVIDENCE;
  }

  /** What passed a limit, as sentences; a cell whose sensor lies is not counted. */
  private List<String> exceeded(Stress stress, List<CellVerdict> cells) {
    List<String> all = new ArrayList<>();
    for (CellVerdict cell : cells) {
      int c = cell.cell() - 1;
      boolean heard = cell.finding() != Finding.VOLTAGE_SENSOR;
      if (heard
          && stress.hoursAboveMax()[c] > HOURS_GRACE
          && stress.highestVoltageV()[c] > limits.cellMaxVoltage() + VOLTAGE_GRACE) {
        all.add(
            String.format(
                Locale.ROOT,
                "Cell %d was charged to %.2f V, above the limit of %.2f V, for %.1f h: stop charging"
                    + " until the cause is found.",
                cell.cell(),
                stress.highestVoltageV()[c],
                limits.cellMaxVoltage(),
                stress.hoursAboveMax()[c]));
      }
      if (heard
          && stress.hoursBelowMin()[c] > HOURS_GRACE
          && stress.lowestVoltageV()[c] < limits.cellMinVoltage() - VOLTAGE_GRACE) {
        all.add(
            String.format(
                Locale.ROOT,
                "Cell %d was drained to %.2f V, below the limit of %.2f V, for %.1f h: do not"
                    + " discharge further, recharge slowly and find the cause.",
                cell.cell(),
                stress.lowestVoltageV()[c],
                limits.cellMinVoltage(),
                stress.hoursBelowMin()[c]));
      }
      temperature(stress, cell, all);
    }
    return all;
  }

  private void temperature(Stress stress, CellVerdict cell, List<String> all) {
    int c = cell.cell() - 1;
    if (cell.finding() == Finding.TEMPERATURE_SENSOR) {
      return;
    }
    if (stress.hoursHot()[c] > HOURS_GRACE) {
      all.add(
          String.format(
              Locale.ROOT,
              "Cell %d was at up to %.0f °C, above the limit of %.0f °C: stop and let it cool, then"
                  + " look for a bad joint.",
              cell.cell(),
              stress.highestTemperatureC()[c],
              limits.dischargeMaxTemperatureC()));
    }
    if (stress.hoursChargingCold()[c] > 0.25) {
      all.add(
          String.format(
              Locale.ROOT,
              "Cell %d was charged for %.1f h below %.0f °C, which damages it for good: block"
                  + " charging in the cold.",
              cell.cell(),
              stress.hoursChargingCold()[c],
              limits.chargeMinTemperatureC()));
    }
  }

  /** What to do first comes first: sensors, joints, drains, balance, then replacing. */
  private static void actions(List<CellVerdict> cells, List<String> into) {
    Finding[] order = {
      Finding.VOLTAGE_SENSOR,
      Finding.CONNECTION,
      Finding.SELF_DISCHARGE,
      Finding.OUT_OF_BALANCE,
      Finding.LOW_CAPACITY,
      Finding.HIGH_RESISTANCE,
      Finding.TEMPERATURE_SENSOR
    };
    for (Finding finding : order) {
      for (CellVerdict cell : cells) {
        if (cell.finding() == finding) {
          into.add(cell.action());
        }
      }
    }
  }

  /** What would make next month's answers better. */
  private static final class NextMonth {
    static List<String> of(BankEstimates estimates, List<String> loggingAdvice) {
      List<String> all = new ArrayList<>();
      for (CellEstimates cell : estimates.cells()) {
        if (cell.capacityRelative() instanceof Estimate.Unknown u) {
          add(all, Words.capital(u.reason()) + ".");
        }
        if (cell.resistanceRelative() instanceof Estimate.Unknown u) {
          add(all, Words.capital(u.reason()) + ".");
        }
      }
      if (estimates.medianCapacityAh() instanceof Estimate.Unknown u) {
        add(all, Words.capital(u.reason()) + ".");
      }
      loggingAdvice.forEach(sentence -> add(all, sentence));
      return all;
    }

    private static void add(List<String> all, String sentence) {
      if (!all.contains(sentence)) {
        all.add(sentence);
      }
    }
  }
}
