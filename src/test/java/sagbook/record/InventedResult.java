package sagbook.record;

import java.time.Instant;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.IntFunction;
import sagbook.account.Account;
import sagbook.account.BalancingAccount;
import sagbook.account.StressAccount;
import sagbook.estimate.BankEstimates;
import sagbook.estimate.CellEstimates;
import sagbook.estimate.TemperatureFault;
import sagbook.evidence.Evidence;
import sagbook.model.Chemistry;
import sagbook.model.Estimate;
import sagbook.model.Finding;
import sagbook.model.PackDescription;
import sagbook.verdict.Action;
import sagbook.verdict.Advice;
import sagbook.verdict.BankVerdict;
import sagbook.verdict.CellVerdict;
import sagbook.verdict.Severity;
import sagbook.verdict.TestPlan;
import sagbook.whatif.Prospect;
import sagbook.whatif.Spare;
import sagbook.whatif.Use;
import sagbook.whatif.WhatIf;

/** Results of checks that never were, for the tests of everything behind them. */
public final class InventedResult {
  private static final String NO_CURRENT =
      "Pack current is not logged, so charge can't be counted; log the current to get this.";

  /** Kept, as working out what changes buy takes seconds and half of the tests ask for it. */
  private static final CheckResult MONTH =
      of("Boathouse battery", "main", "logs/2026-05.csv.gz", true, 0);

  private InventedResult() {}

  /** A month with current: a worn cell, one out of balance, one bad joint. */
  public static CheckResult month() {
    return MONTH;
  }

  /** The same month without a current column: hardly anything in ampere-hours. */
  public static CheckResult withoutCurrent() {
    return of("Boathouse battery", "main", "logs/2026-05.csv.gz", false, 0);
  }

  /** The month under names of the caller's choice. */
  public static CheckResult named(String pack, String bank, String file) {
    return of(pack, bank, file, true, 0);
  }

  /** Two banks, the second without current. */
  public static CheckResult twoBanks() {
    CheckResult first = of("Mill battery", "north", "north/05.csv", true, 0);
    CheckResult second = of("Mill battery", "south", "south/05.csv", false, 0);
    List<InputFile> inputs = new ArrayList<>(first.inputs());
    inputs.addAll(second.inputs());
    List<BankResult> banks = new ArrayList<>(first.banks());
    banks.addAll(second.banks());
    return new CheckResult("0.1.0", first.pack(), inputs, banks);
  }

  /**
   * A month of the same battery further back, when cell 12 still held more.
   *
   * @param back months before the one of {@link #month()}
   */
  public static CheckResult earlier(int back) {
    return of("Boathouse battery", "main", "logs/earlier.csv.gz", true, back);
  }

  /** The month with all cells judged healthy and nothing to do. */
  public static CheckResult healthy() {
    return found(cell -> Finding.HEALTHY, Severity.WELL, "All 16 cells are fine.");
  }

  /** The month with one cell of too much resistance and nothing else. */
  public static CheckResult resistive(int place) {
    return found(
        cell -> cell == place ? Finding.HIGH_RESISTANCE : Finding.HEALTHY,
        Severity.ATTENTION,
        "Cell " + place + " has too much resistance; the others are fine.");
  }

  /** The month with one cell that leaks while nobody logged what the boards bled. */
  public static CheckResult leakingUnseen(int place) {
    return found(
        cell -> cell == place ? Finding.SELF_DISCHARGE : Finding.HEALTHY,
        Severity.ATTENTION,
        "Cell " + place + " is losing charge by itself; the others are fine.");
  }

  private static CheckResult found(
      IntFunction<Finding> findings, Severity severity, String sentence) {
    CheckResult month = month();
    BankResult bank = month.banks().get(0);
    List<CellVerdict> cells =
        bank.verdict().cells().stream()
            .map(
                cell ->
                    new CellVerdict(
                        cell.rank(),
                        cell.tiedWith(),
                        findings.apply(cell.cell()) == Finding.SELF_DISCHARGE
                            ? cell.estimates().drainingAtLeast()
                            : cell.estimates(),
                        findings.apply(cell.cell()),
                        advice(cell.cell(), cell.advice().sentence()),
                        cell.lossAh(),
                        cell.cost()))
            .toList();
    BankVerdict well =
        new BankVerdict(
            severity,
            bank.verdict().advice(),
            sentence,
            List.of(),
            bank.verdict().nextMonth(),
            cells);
    BankResult result =
        new BankResult(
            bank.bank(),
            bank.chemistry(),
            bank.seriesCells(),
            bank.from(),
            bank.to(),
            bank.evidence(),
            bank.estimates(),
            bank.account(),
            bank.prospect(),
            well,
            bank.plan(),
            bank.reading(),
            bank.channels());
    return new CheckResult("0.1.0", month.pack(), month.inputs(), List.of(result));
  }

  /** A log of two cells from which nothing at all could be learned. */
  public static CheckResult nothing() {
    Estimate none = Estimate.unknown("The log is empty.");
    List<CellEstimates> cells = new ArrayList<>();
    List<CellVerdict> verdicts = new ArrayList<>();
    for (int cell = 1; cell <= 2; cell++) {
      CellEstimates estimates =
          new CellEstimates(
              cell,
              none,
              none,
              none,
              none,
              none,
              none,
              none,
              none,
              none,
              new TemperatureFault.NotLogged(),
              Optional.empty());
      cells.add(estimates);
      verdicts.add(
          new CellVerdict(
              cell,
              List.of(),
              estimates,
              Finding.INSUFFICIENT_EVIDENCE,
              advice(cell, "Log more."),
              none,
              new Prospect.CellCost(none, none)));
    }
    BankResult bank =
        new BankResult(
            "main",
            Chemistry.NMC,
            2,
            Instant.EPOCH,
            Instant.EPOCH,
            InventedMonth.empty(),
            new BankEstimates(10, none, none, none, none, List.of(), cells, List.of()),
            account(
                InventedMonth.empty(),
                Chemistry.NMC,
                new BankEstimates(10, none, none, none, none, List.of(), cells, List.of())),
            prospect(Chemistry.NMC, InventedMonth.empty(), cells, none),
            new BankVerdict(
                Severity.ATTENTION,
                advice(1, "Log more."),
                "The log says nothing.",
                List.of(),
                List.of(),
                verdicts),
            plan(1),
            List.of(),
            List.of());
    PackDescription pack =
        PackDescription.of("Bare", Chemistry.NMC, 2, 65, ZoneId.of("Europe/Lisbon"));
    return new CheckResult("0.1.0", pack, List.of(), List.of(bank));
  }

  private static CheckResult of(String pack, String bank, String file, boolean current, int back) {
    Evidence evidence = InventedMonth.evidence(current);
    BankEstimates estimates = estimates(current, back);
    Prospect prospect =
        prospect(Chemistry.LFP, evidence, estimates.cells(), estimates.medianCapacityAh());
    BankResult result =
        new BankResult(
            bank,
            Chemistry.LFP,
            InventedMonth.CELLS,
            Instant.parse("2026-05-01T00:00:00Z").minus(30L * back, ChronoUnit.DAYS),
            Instant.parse("2026-05-31T23:55:00Z").minus(30L * back, ChronoUnit.DAYS),
            evidence,
            estimates,
            account(evidence, Chemistry.LFP, estimates),
            prospect,
            verdict(estimates, prospect),
            plan(12),
            List.of(
                "Columns were recognised by their headers: 16 voltages, 16 temperatures.",
                "Times without offset were read in the pack’s zone, Europe/Lisbon.",
                "Two gaps of more than ten minutes, 47 minutes together."),
            InventedMonth.quality());
    PackDescription description =
        PackDescription.of(
            pack, Chemistry.LFP, InventedMonth.CELLS, 280, ZoneId.of("Europe/Lisbon"));
    InputFile input =
        new InputFile(
            file,
            "9f86d081884c7d659a2feaa0c55ad015a3bf4f1b2b0b822cd15d6c15b0f00a08",
            535_680,
            result.from(),
            result.to());
    return new CheckResult("0.1.0", description, List.of(input), List.of(result));
  }

  private static TestPlan plan(int cell) {
    return new TestPlan(
        cell,
        "Cell " + cell + " is the one in question.",
        List.of(
            new TestPlan.Step(
                "capacity",
                "Discharge once more.",
                new Estimate.Known(2, 2, 2),
                new Estimate.Known(1.4, 1.4, 1.4))));
  }

  private static Account account(Evidence evidence, Chemistry chemistry, BankEstimates estimates) {
    PackDescription pack =
        PackDescription.of(
            "Any", chemistry, estimates.cells().size(), 280, ZoneId.of("Europe/Lisbon"));
    return new Account(
        StressAccount.of(evidence, pack, estimates.medianCapacityAh()),
        BalancingAccount.of(evidence, estimates, pack));
  }

  private static Advice advice(int cell, String sentence, String... why) {
    return advice(Action.MEND_JOINT, cell, sentence, why);
  }

  private static Advice advice(Action action, int cell, String sentence, String... why) {
    return new Advice(
        action,
        List.of(cell),
        sentence,
        List.of(why),
        "A month that says otherwise.",
        "Look again.");
  }

  private static Prospect prospect(
      Chemistry chemistry, Evidence evidence, List<CellEstimates> cells, Estimate medianAh) {
    return new WhatIf(
            cells,
            medianAh,
            280,
            chemistry,
            chemistry.emptyVoltage(),
            Use.of(evidence, ZoneId.of("Europe/Lisbon"), 280),
            new Spare(280, OptionalDouble.empty(), false))
        .prospect();
  }

  private static BankEstimates estimates(boolean current, int back) {
    List<CellEstimates> cells = new ArrayList<>();
    for (int cell = 1; cell <= InventedMonth.CELLS; cell++) {
      cells.add(cell(cell, current, back));
    }
    return new BankEstimates(
        10,
        Estimate.of(24.1, 2.2),
        current ? Estimate.of(276.4, 1.9) : Estimate.unknown(NO_CURRENT),
        current ? Estimate.of(236.2, 2.1) : Estimate.unknown(NO_CURRENT),
        current ? Estimate.of(243.1, 2.4) : Estimate.unknown(NO_CURRENT),
        java.util.Collections.nCopies(
            InventedMonth.CELLS, current ? Estimate.of(0.4, 0.2) : Estimate.unknown(NO_CURRENT)),
        cells,
        List.of("The logs count discharge as negative; read that way."));
  }

  private static CellEstimates cell(int cell, boolean current, int back) {
    double capacity = InventedMonth.capacityAh(cell) + (cell == 12 ? 4.5 * back : 0);
    double resistance = InventedMonth.resistanceMilliohm(cell);
    boolean seenFull = cell != 3;
    return new CellEstimates(
        cell,
        current && seenFull
            ? Estimate.of(capacity, 2.1 + cell % 3)
            : Estimate.unknown(current ? "Cell 3 was never seen near empty." : NO_CURRENT),
        seenFull
            ? Estimate.of(capacity / 276.4, 0.011)
            : Estimate.unknown("Cell 3 was never seen near empty."),
        current ? Estimate.of(resistance, 0.012) : Estimate.unknown(NO_CURRENT),
        Estimate.of(resistance / 0.322, 0.03),
        current
            ? Estimate.of(cell == 7 ? 0.29 : 0.001 * (cell % 3), 0.01)
            : Estimate.unknown(NO_CURRENT),
        Estimate.of(cell == 12 ? 1.24 : 1 + 0.01 * (cell % 3), 0.04),
        Estimate.of(cell == 5 ? 4.2 : cell == 12 ? 1.4 : 0.25 * (cell % 4) - 0.4, 0.3),
        Estimate.of(0.4 * (cell % 3), 1.1),
        Estimate.of(0.2 * (cell % 4) - 0.3, 0.6),
        new TemperatureFault.None(),
        Optional.empty());
  }

  private static BankVerdict verdict(BankEstimates estimates, Prospect prospect) {
    List<CellVerdict> cells = new ArrayList<>();
    for (CellEstimates cell : estimates.cells()) {
      cells.add(verdict(cell, prospect.costs().get(cell.cell() - 1)));
    }
    return new BankVerdict(
        Severity.ATTENTION,
        advice(7, "Open the busbar between cells 7 and 8.", "It answers at once."),
        "Cell 12 limits the battery; replacing it would add about 30 Ah; cells 5 and 7 need a"
            + " hand, the others are fine.",
        List.of(
            "Open the busbar between cells 7 and 8 with the battery isolated, clean and tighten"
                + " the joint.",
            "Charge slowly to full once, so that the boards can bring cell 5 back in line.",
            "Plan a replacement for cell 12 before the winter."),
        List.of("Let the battery run down below 3.0 V a cell once, so that cell 3 can be judged."),
        cells);
  }

  private static CellVerdict verdict(CellEstimates estimates, Prospect.CellCost cost) {
    int cell = estimates.cell();
    return switch (cell) {
      case 12 ->
          cell(
              1,
              estimates,
              Finding.LOW_CAPACITY,
              "Replace cell 12 before the winter.",
              "It holds 243 Ah (239 to 247), the middle cell 276 Ah.",
              Estimate.of(30.2, 3.1),
              cost);
      case 7 ->
          cell(
              2,
              estimates,
              Finding.CONNECTION,
              "Clean and tighten the joints of cell 7.",
              "0.29 mΩ of its resistance answers at once and does not care for temperature.",
              Estimate.of(2.1, 0.9),
              cost);
      case 5 ->
          cell(
              3,
              estimates,
              Finding.OUT_OF_BALANCE,
              "Charge slowly to full so that the boards can bring cell 5 in line.",
              "It reaches full 11 Ah before the middle cell and has the capacity of the others.",
              Estimate.of(6.9, 1.4),
              cost);
      case 3 ->
          cell(
              4,
              estimates,
              Finding.INSUFFICIENT_EVIDENCE,
              "Run the battery down once more so that cell 3 can be judged.",
              "It was never seen near empty.",
              Estimate.unknown("Without its capacity the loss can't be told."),
              cost);
      default ->
          cell(
              cell < 3 ? cell + 4 : cell < 5 ? 7 : cell < 7 ? 8 : cell < 12 ? cell + 1 : cell,
              estimates,
              Finding.HEALTHY,
              "Nothing to do.",
              "Capacity and resistance agree with the string’s.",
              Estimate.of(0.1, 0.6),
              cost);
    };
  }

  private static CellVerdict cell(
      int rank,
      CellEstimates estimates,
      Finding finding,
      String action,
      String evidence,
      Estimate loss,
      Prospect.CellCost cost) {
    return new CellVerdict(
        rank,
        List.of(),
        estimates,
        finding,
        advice(
            finding == Finding.LOW_CAPACITY ? Action.PLAN_REPLACEMENT : Action.MEND_JOINT,
            estimates.cell(),
            action,
            evidence),
        loss,
        cost);
  }
}
