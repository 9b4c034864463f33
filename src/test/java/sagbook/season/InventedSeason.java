package sagbook.season;

import java.time.Instant;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import sagbook.model.Chemistry;
import sagbook.model.Estimate;
import sagbook.model.Finding;
import sagbook.record.BankFigure;
import sagbook.record.CellReading;
import sagbook.record.InputFile;
import sagbook.record.KeptCheck;
import sagbook.record.KeptMonth;
import sagbook.record.Quantity;
import sagbook.verdict.Severity;

/**
 * Months of eight cells whose rates are known, for the tests: all lose {@link #common} % a year,
 * cell 3 loses {@link #weak} %, temperature swings with the year, each month errs by chance.
 */
public final class InventedSeason {
  private static final int CELLS = 8;
  private static final double MONTH_DAYS = 30;
  private static final Instant START = Instant.parse("2025-05-01T00:00:00Z");

  public double common = 2.5;
  public double weak = 16.5;
  public int months = 8;
  public boolean current = true;

  /** Standard uncertainty of a month's share and, as a share, of the median capacity. */
  public double shareSigma = 0.002;

  public double capacitySigma = 0.004;
  public double resistanceSigma = 0.02;

  /** How much further ranges reach down than up. */
  public double reachesDown = 1;

  /** Growth of every cell's resistance, % a year. */
  public double stiffening = 4;

  /** From this month on, the resistance of cell 5 is higher by a half; beyond the end: never. */
  public int jointFailsIn = Integer.MAX_VALUE;

  /** Whether the months call that a joint, and whether they can tell it from the cell. */
  public boolean jointFound = false;

  public boolean jointTold = true;

  /** From this month on, cell 3 is a sound one. */
  public int replacedIn = Integer.MAX_VALUE;

  private final Random random;

  public InventedSeason(long seed) {
    this.random = new Random(seed);
  }

  public List<KeptMonth> make() {
    List<KeptMonth> all = new ArrayList<>();
    for (int month = 0; month < months; month++) {
      all.add(month(month));
    }
    return all;
  }

  /** First day of a month, for the diary. */
  public static java.time.LocalDate day(int month) {
    return java.time.LocalDate.ofInstant(from(month), ZoneId.of("Etc/UTC"));
  }

  private static Instant from(int month) {
    return START.plus(Math.round(month * MONTH_DAYS * 24), ChronoUnit.HOURS);
  }

  private Estimate of(double value, double sigma) {
    double seen = value + sigma * random.nextGaussian();
    Estimate.Known even = Estimate.of(seen, sigma);
    return new Estimate.Known(seen, seen - reachesDown * even.halfWidth(), even.high());
  }

  private KeptMonth month(int month) {
    double years = (month + 0.5) * MONTH_DAYS / 365.25;
    double celsius = 15 + 11 * Math.cos(2 * Math.PI * (years - 0.2));
    double median = 280 * (1 - common / 100 * years);
    List<KeptCheck.Cell> estimates = new ArrayList<>();
    List<KeptMonth.Cell> cells = new ArrayList<>();
    for (int cell = 1; cell <= CELLS; cell++) {
      estimates.add(cell(cell, month, years, median));
      cells.add(
          new KeptMonth.Cell(
              "Nothing to do.",
              List.of(),
              Map.of(
                  CellReading.MEAN_TEMPERATURE_C, celsius, CellReading.HIGHEST_VOLTAGE_V, 3.55)));
    }
    Map<BankFigure.Estimated, Estimate> figures = new EnumMap<>(BankFigure.Estimated.class);
    figures.put(
        BankFigure.Estimated.MEDIAN_CAPACITY_AH,
        current ? of(median, capacitySigma * 280) : Estimate.unknown("No current."));
    figures.put(
        BankFigure.Estimated.ACTIVATION_ENERGY_KJ_PER_MOL,
        current ? Estimate.of(17, 1) : Estimate.unknown("No current."));
    return new KeptMonth(
        new KeptMonth.Battery(
            "Invented", ZoneId.of("Etc/UTC"), Chemistry.LFP, 280, "0.1.0", "a".repeat(64)),
        new KeptCheck.Bank(
            "main",
            from(month),
            from(month + 1).minusSeconds(60),
            "Month " + month + ".",
            Severity.WELL,
            estimates),
        new KeptMonth.Conditions(43_200, 60, 10),
        figures,
        Map.of(BankFigure.Counted.HOURS, 720.0, BankFigure.Counted.DISCHARGED_AH, 2800.0),
        cells,
        List.of(),
        List.of(
            new InputFile(
                "logs/" + month + ".csv", "b".repeat(64), 43_200, from(month), from(month + 1))));
  }

  private KeptCheck.Cell cell(int cell, int month, double years, double median) {
    boolean worn = cell == 3 && month < replacedIn;
    double capacity = worn ? 280 * (1 - weak / 100 * years) : median * (1 + 0.002 * (cell % 3));
    double resistance =
        0.35 * (1 + stiffening / 100 * years) * (cell == 5 && month >= jointFailsIn ? 1.5 : 1);
    Map<Quantity, Estimate> estimates = new EnumMap<>(Quantity.class);
    estimates.put(Quantity.CAPACITY_RELATIVE, of(capacity / median, shareSigma));
    estimates.put(Quantity.RESISTANCE_RELATIVE, of(resistance / 0.35, resistanceSigma));
    if (current) {
      estimates.put(Quantity.CAPACITY_AH, of(capacity, capacitySigma * 280));
      estimates.put(Quantity.RESISTANCE_MOHM, of(resistance, resistanceSigma * 0.35));
    }
    boolean low = worn && capacity / median < 0.96;
    boolean joint = jointFound && cell == 5 && month >= jointFailsIn;
    if (joint && jointTold) {
      estimates.put(Quantity.SLOW_RESPONSE_RELATIVE, Estimate.of(1, 0.03));
    }
    return new KeptCheck.Cell(
        cell,
        cell,
        low ? Finding.LOW_CAPACITY : joint ? Finding.CONNECTION : Finding.HEALTHY,
        estimates);
  }
}
