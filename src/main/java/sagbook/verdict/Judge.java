package sagbook.verdict;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import sagbook.estimate.BankEstimates;
import sagbook.estimate.CellEstimates;
import sagbook.evidence.Stress;
import sagbook.model.Estimate;
import sagbook.model.Finding;
import sagbook.model.PackDescription;
import sagbook.numeric.Robust;
import sagbook.whatif.Prospect;
import sagbook.wording.Words;

/** Turns a bank's estimates into a decision. */
public final class Judge {
  private static final Words WORDS = Words.english();
  private static final double GAS_CONSTANT = 8.314462618;
  private static final double ZERO_CELSIUS = 273.15;

  /** Two cells are no crowd, however short the string. */
  private static final int FEWEST_APART = 2;

  /** Half of the spread of whole cells' activation energies where none was fitted, kJ/mol. */
  private static final double UNKNOWN_KILOJOULE = 10;

  private final PackDescription pack;
  private final Rules rules;
  private final CellJudge cellJudge;

  public Judge(PackDescription pack) {
    this.pack = pack;
    this.rules = Rules.of(pack.rules());
    this.cellJudge = new CellJudge(rules);
  }

  /**
   * A cell's cause with what follows from it, before limits that were passed. A drain beside
   * bleeding that is not logged is the least that it may be: what the boards took from the other
   * cells hides as much of it.
   */
  private record Judged(CellEstimates cell, Finding finding, DecisionRule rule, Advice advice) {}

  /**
   * The decision on one bank.
   *
   * @param prospect what each cell costs and what a change would buy
   * @param loggingAdvice what the reader of the logs would have changed in the logging
   */
  public BankVerdict judge(
      BankEstimates estimates, Prospect prospect, Stress stress, List<String> loggingAdvice) {
    PassedLimits passed = new PassedLimits(stress, pack.limits(), rules);
    boolean crowd = isCrowd(estimates, stress);
    List<Judged> judged = new ArrayList<>();
    for (CellEstimates cell : estimates.cells()) {
      judged.add(judged(cell, estimates, stress, passed, crowd));
    }
    List<Judged> order = new ArrayList<>(judged);
    order.sort(weakestFirst(estimates, prospect, stress));
    List<CellVerdict> cells = new ArrayList<>();
    List<String> exceeded = passed.of(judged.stream().map(Judged::finding).toList());
    for (Judged one : judged) {
      int cell = one.cell().cell();
      List<String> own = passed.of(cell, one.finding());
      cells.add(
          new CellVerdict(
              order.indexOf(one) + 1,
              tiedWith(cell, prospect, littleAh(estimates, prospect)),
              one.cell(),
              one.finding(),
              own.isEmpty() ? one.advice() : stop(own, one),
              estimates.replacementGainAh().get(cell - 1),
              prospect.costs().get(cell - 1)));
    }
    List<Advice> wanted = wanted(judged, estimates);
    List<String> todo = new ArrayList<>(exceeded);
    wanted.forEach(advice -> todo.add(advice.sentence()));
    return new BankVerdict(
        severity(exceeded, judged, wanted),
        first(exceeded, cells, wanted),
        new Headline(estimates, prospect, cells, exceeded, isAllWorn(estimates), rules).sentence(),
        todo,
        NextMonth.of(estimates, unsaid(loggingAdvice, cells)),
        cells);
  }

  /** Advice on logging without what a cell's own action asks for. */
  private static List<String> unsaid(List<String> loggingAdvice, List<CellVerdict> cells) {
    List<String> unsaid = new ArrayList<>(loggingAdvice);
    cells.stream()
        .filter(cell -> cell.finding() == Finding.TEMPERATURE_SENSOR)
        .forEach(c -> unsaid.remove(WORDS.say("logging.thermometer", Integer.toString(c.cell()))));
    return unsaid;
  }

  /**
   * Whether so many cells seem to stand apart by charge that there are no neighbours left to stand
   * apart from. Without current the charge axis is made up from voltages, and rather that is wrong.
   */
  private boolean isCrowd(BankEstimates estimates, Stress stress) {
    long apart =
        estimates.cells().stream()
            .map(cell -> cellJudge.find(cell, temperatureDoubt(cell.cell(), estimates, stress)))
            .filter(Judge::isByCharge)
            .count();
    return Double.isNaN(stress.chargedAh())
        && apart > Math.max(FEWEST_APART, rules.apart() * estimates.cells().size());
  }

  private static boolean isByCharge(Finding finding) {
    return finding == Finding.LOW_CAPACITY
        || finding == Finding.OUT_OF_BALANCE
        || finding == Finding.SELF_DISCHARGE
        || finding == Finding.VOLTAGE_SENSOR;
  }

  private Judged judged(
      CellEstimates cell,
      BankEstimates estimates,
      Stress stress,
      PassedLimits passed,
      boolean crowd) {
    double doubt = temperatureDoubt(cell.cell(), estimates, stress);
    Finding seen = cellJudge.find(cell, doubt);
    boolean disbelieved = crowd && isByCharge(seen);
    Finding finding = disbelieved ? Finding.INSUFFICIENT_EVIDENCE : seen;
    boolean suspected = cellJudge.suspected(cell) || CellJudge.standsApart(cell, estimates.cells());
    DecisionRule rule =
        passed.isDrainedForGood(cell.cell(), finding)
            ? DecisionRule.DRAINED_FLAT
            : DecisionRule.of(finding, cell, rules, suspected);
    boolean bleedLogged = Double.isFinite(stress.bledAh()[cell.cell() - 1]);
    List<String> why =
        new ArrayList<>(
            VerdictWords.evidence(
                cell, estimates.resistancePulseS(), pack.timezone(), bleedLogged));
    if (doubt > rules.resistance().sure() / 2) {
      why.add(WORDS.say("why.warmth", Words.fixed(100 * doubt, 0)));
    }
    if (disbelieved) {
      why.add(WORDS.say("why.crowd"));
    }
    if (rule == DecisionRule.JOINT_OR_CELL) {
      why.add(
          cell.slowResponseRelative() instanceof Estimate.Unknown unknown
              ? WORDS.say("why.slow.unknown", unknown.reason())
              : WORDS.say("why.slow.between"));
    }
    CellEstimates told =
        finding == Finding.SELF_DISCHARGE && !bleedLogged ? cell.drainingAtLeast() : cell;
    return new Judged(told, finding, rule, rule.advice(cell, why, rules));
  }

  /**
   * By what share a cell's resistance against its neighbours' may be wrong because it is colder or
   * warmer than they are and the temperature law is known only so well (Arrhenius).
   */
  private static double temperatureDoubt(int cell, BankEstimates estimates, Stress stress) {
    double own = stress.meanTemperatureC()[cell - 1] + ZERO_CELSIUS;
    double usual = Robust.median(stress.meanTemperatureC()) + ZERO_CELSIUS;
    double kilojoule =
        estimates.activationEnergyKilojoulePerMole() instanceof Estimate.Known energy
            ? energy.halfWidth()
            : UNKNOWN_KILOJOULE;
    double doubt = Math.expm1(1000 * kilojoule / GAS_CONSTANT * Math.abs(1 / own - 1 / usual));
    return Double.isFinite(doubt) ? doubt : 0;
  }

  /** A cell that passed a limit: that first, then what its cause asks for. */
  private static Advice stop(List<String> passed, Judged one) {
    boolean more = one.rule().severity() != Severity.WELL;
    String limits = String.join(" ", passed);
    String sentence =
        more ? WORDS.say("advice.limit.then", limits, one.advice().sentence()) : limits;
    List<String> why = new ArrayList<>(passed);
    why.addAll(one.advice().why());
    return new Advice(
        Action.STOP_AND_ISOLATE,
        one.advice().cells(),
        sentence,
        why,
        WORDS.say("advice.limit.mind"),
        WORDS.say("advice.limit.next"));
  }

  /** Every advice that asks for something, the first to be done first. */
  private List<Advice> wanted(List<Judged> judged, BankEstimates estimates) {
    List<Advice> wanted = new ArrayList<>();
    for (Judged one : judged) {
      if (one.rule().severity() != Severity.WELL) {
        wanted.add(one.advice());
      }
    }
    if (isAllWorn(estimates)) {
      wanted.add(allWorn(estimates));
    }
    wanted.sort(Comparator.comparing(Advice::action));
    return wanted;
  }

  private boolean isAllWorn(BankEstimates estimates) {
    return pack.isCapacityTold()
        && estimates.medianCapacityAh() instanceof Estimate.Known median
        && median.isBelow(rules.allWorn() * pack.nominalCapacityAh());
  }

  private Advice allWorn(BankEstimates estimates) {
    Estimate.Known median = (Estimate.Known) estimates.medianCapacityAh();
    return new Advice(
        Action.PLAN_REPLACEMENT,
        List.of(),
        WORDS.say("advice.aged.doing"),
        List.of(
            WORDS.say(
                "advice.aged.why",
                Words.fixed(median.value(), 0),
                Words.fixed(pack.nominalCapacityAh(), 0),
                Words.fixed(median.low(), 0),
                Words.fixed(median.high(), 0))),
        WORDS.say("advice.aged.mind"),
        WORDS.say("advice.aged.next"));
  }

  private static Severity severity(
      List<String> exceeded, List<Judged> judged, List<Advice> wanted) {
    boolean now = judged.stream().anyMatch(j -> j.rule().severity() == Severity.ACT_NOW);
    if (now || !exceeded.isEmpty()) {
      return Severity.ACT_NOW;
    }
    return wanted.isEmpty() ? Severity.WELL : Severity.ATTENTION;
  }

  /** The one thing to do first; what asks for nothing waits for what asks for something. */
  private static Advice first(List<String> exceeded, List<CellVerdict> cells, List<Advice> wanted) {
    if (!exceeded.isEmpty()) {
      return cells.stream()
          .map(CellVerdict::advice)
          .min(Comparator.comparing(Advice::action))
          .orElseThrow();
    }
    if (!wanted.isEmpty()) {
      return wanted.get(0);
    }
    return cells.stream()
        .filter(c -> c.finding() == Finding.INSUFFICIENT_EVIDENCE)
        .min(Comparator.comparingInt(CellVerdict::rank))
        .map(open -> test(open.advice(), places(cells, Finding.INSUFFICIENT_EVIDENCE)))
        .orElseGet(Judge::nothing);
  }

  private static Advice test(Advice open, List<Integer> cells) {
    return new Advice(
        Action.RUN_TEST,
        cells,
        WORDS.say("advice.test.doing"),
        List.of(WORDS.say("advice.test.why")),
        open.mindChanger(),
        open.nextObservation());
  }

  private static Advice nothing() {
    return new Advice(
        Action.NOTHING,
        List.of(),
        WORDS.say("advice.none.doing"),
        List.of(WORDS.say("advice.none.why")),
        WORDS.say("advice.none.mind"),
        WORDS.say("advice.none.next"));
  }

  private static List<Integer> places(List<CellVerdict> cells, Finding finding) {
    return cells.stream().filter(c -> c.finding() == finding).map(CellVerdict::cell).toList();
  }

  /**
   * By what each costs the string; of those that cost too little to be told apart, found wanting
   * before not, then by capacity, by how near to empty each came, and by resistance.
   */
  private Comparator<Judged> weakestFirst(
      BankEstimates estimates, Prospect prospect, Stress stress) {
    double little = littleAh(estimates, prospect);
    return Comparator.comparingDouble(
            (Judged j) ->
                -Math.max(
                    little, prospect.costs().get(j.cell().cell() - 1).aloneAh().find().orElse(0)))
        .thenComparing(j -> isUnsuspected(j.finding()))
        .thenComparingDouble(j -> j.cell().capacityRelative().find().orElse(1))
        .thenComparingDouble(
            j ->
                j.cell().capacityRelative() instanceof Estimate.Unknown
                    ? stress.lowestVoltageV()[j.cell().cell() - 1]
                    : 0)
        .thenComparingDouble(j -> -j.cell().resistanceRelative().find().orElse(1))
        .thenComparingInt(j -> j.cell().cell());
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

  private static boolean isUnsuspected(Finding finding) {
    return finding == Finding.HEALTHY || finding == Finding.INSUFFICIENT_EVIDENCE;
  }
}
