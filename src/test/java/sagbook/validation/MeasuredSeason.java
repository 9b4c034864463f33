package sagbook.validation;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import sagbook.model.Chemistry;
import sagbook.model.Estimate;
import sagbook.model.Finding;
import sagbook.numeric.Robust;
import sagbook.record.BankFigure;
import sagbook.record.InputFile;
import sagbook.record.KeptCheck;
import sagbook.record.KeptMonth;
import sagbook.record.Quantity;
import sagbook.season.Season;
import sagbook.season.SeasonResult;
import sagbook.verdict.Severity;

/**
 * Check-ups of measured cells as if they were the months of one string's record.
 *
 * @param days of the check-ups
 * @param ampereHours one row a cell, one value a check-up
 * @param milliohm the same of resistance, where measured
 * @param nominalAh nominal capacity, Ah
 * @param shareSd standard uncertainty of a capacity, as a share of it
 */
record MeasuredSeason(
    double[] days,
    double[][] ampereHours,
    Optional<double[][]> milliohm,
    double nominalAh,
    double shareSd) {
  private static final Instant START = Instant.parse("2025-05-01T00:00:00Z");
  private static final double RESISTANCE_SD = 0.01;
  private static final double PULSE_S = 10;

  /** What the season makes of the first check-ups. */
  SeasonResult.Bank judged(int checkUps) {
    List<KeptMonth> months = new ArrayList<>();
    for (int m = 0; m < checkUps; m++) {
      months.add(month(m));
    }
    return Season.of(months, List.of()).banks().get(0);
  }

  SeasonResult.Bank judged() {
    return judged(days.length);
  }

  private KeptMonth month(int m) {
    Instant from = START.plus(Duration.ofMillis(Math.round(days[m] * 86_400_000)));
    Instant to = from.plus(Duration.ofHours(1));
    double[] capacity = column(ampereHours, m);
    double median = Robust.median(capacity);
    List<KeptCheck.Cell> estimates = new ArrayList<>();
    List<KeptMonth.Cell> cells = new ArrayList<>();
    for (int c = 0; c < capacity.length; c++) {
      estimates.add(cell(c, m, capacity[c], median));
      cells.add(new KeptMonth.Cell("Nothing to do.", List.of(), Map.of()));
    }
    return new KeptMonth(
        new KeptMonth.Battery(
            "Measured", ZoneId.of("Etc/UTC"), Chemistry.LFP, nominalAh, "test", "a".repeat(64)),
        new KeptCheck.Bank("main", from, to, "Check-up " + m + ".", Severity.WELL, estimates),
        new KeptMonth.Conditions(3600, 1, PULSE_S),
        Map.of(
            BankFigure.Estimated.MEDIAN_CAPACITY_AH, Estimate.of(median, shareSd * median),
            BankFigure.Estimated.ACTIVATION_ENERGY_KJ_PER_MOL, Estimate.unknown("Not measured.")),
        Map.of(),
        cells,
        List.of(),
        List.of(new InputFile(m + ".csv", "b".repeat(64), 3600, from, to)));
  }

  private KeptCheck.Cell cell(int c, int m, double capacity, double median) {
    Map<Quantity, Estimate> estimates = new EnumMap<>(Quantity.class);
    estimates.put(Quantity.CAPACITY_AH, Estimate.of(capacity, shareSd * capacity));
    estimates.put(Quantity.CAPACITY_RELATIVE, Estimate.of(capacity / median, shareSd));
    milliohm.ifPresent(
        all -> {
          double own = all[c][m];
          double relative = own / Robust.median(column(all, m));
          estimates.put(Quantity.RESISTANCE_MOHM, Estimate.of(own, RESISTANCE_SD * own));
          estimates.put(
              Quantity.RESISTANCE_RELATIVE, Estimate.of(relative, RESISTANCE_SD * relative));
        });
    return new KeptCheck.Cell(c + 1, c + 1, Finding.HEALTHY, estimates);
  }

  private static double[] column(double[][] rows, int at) {
    double[] column = new double[rows.length];
    for (int c = 0; c < rows.length; c++) {
      column[c] = rows[c][at];
    }
    return column;
  }
}
