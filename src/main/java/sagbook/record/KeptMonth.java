package sagbook.record;

import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import sagbook.model.Chemistry;
import sagbook.model.Estimate;
import sagbook.verdict.CellVerdict;
import sagbook.wording.Words;

/**
 * What lasts of a check of one bank: everything of its results that a later season may ask for.
 *
 * @param battery which battery, and how the check was made
 * @param bank name, period, headline and the cells' estimates
 * @param conditions under which the log was taken
 * @param figures estimates of the bank
 * @param counts sums and extremes of the bank; one that was not logged is missing
 * @param cells what is told of each cell besides its estimates, cell 1 first
 * @param remarks assumptions made, corrections applied, plain sentences
 * @param inputs the log files
 */
public record KeptMonth(
    Battery battery,
    KeptCheck.Bank bank,
    Conditions conditions,
    Map<BankFigure.Estimated, Estimate> figures,
    Map<BankFigure.Counted, Double> counts,
    List<Cell> cells,
    List<String> remarks,
    List<InputFile> inputs) {

  /**
   * Which battery, and how the check was made.
   *
   * @param pack its name
   * @param zone in which its times are shown
   * @param chemistry of its cells
   * @param nominalCapacityAh on the cell maker's sheet, Ah
   * @param software version of Sagbook, which is the version of the methods
   * @param settingsSha256 of all that the keeper told besides the logs, lower-case hexadecimal
   */
  public record Battery(
      String pack,
      ZoneId zone,
      Chemistry chemistry,
      double nominalCapacityAh,
      String software,
      String settingsSha256) {}

  /**
   * Conditions under which the log was taken.
   *
   * @param rows of the log
   * @param cadenceS usual time between rows, s; NaN when there is none
   * @param resistancePulseS pulse time of the resistances, s; NaN when there is none
   */
  public record Conditions(long rows, double cadenceS, double resistancePulseS) {}

  /**
   * What is told of a cell besides its estimates.
   *
   * @param action what to do
   * @param evidence why, plain sentences
   * @param readings what its readings went through; one that was not logged is missing
   */
  public record Cell(String action, List<String> evidence, Map<CellReading, Double> readings) {
    public Cell {
      evidence = List.copyOf(evidence);
      readings = Map.copyOf(readings);
    }
  }

  public KeptMonth {
    figures = Map.copyOf(figures);
    counts = Map.copyOf(counts);
    cells = List.copyOf(cells);
    remarks = List.copyOf(remarks);
    inputs = List.copyOf(inputs);
    if (cells.size() != bank.cells().size()) {
      throw new IllegalArgumentException(cells.size() + " of " + bank.cells().size() + " cells");
    }
  }

  /** One a bank of a check. */
  public static List<KeptMonth> of(CheckResult result, String settingsSha256) {
    Battery battery =
        new Battery(
            result.pack().name(),
            result.pack().timezone(),
            result.pack().chemistry(),
            result.pack().nominalCapacityAh(),
            result.softwareVersion(),
            settingsSha256);
    return result.banks().stream().map(bank -> of(battery, bank, result.inputs())).toList();
  }

  private static KeptMonth of(Battery battery, BankResult result, List<InputFile> inputs) {
    List<KeptCheck.Cell> estimates = new ArrayList<>();
    List<Cell> cells = new ArrayList<>();
    for (CellVerdict cell : result.verdict().cells()) {
      estimates.add(estimates(cell));
      Map<CellReading, Double> readings = new EnumMap<>(CellReading.class);
      for (CellReading reading : CellReading.values()) {
        put(readings, reading, reading.of(result.evidence().stress(), cell.cell()));
      }
      cells.add(new Cell(cell.action(), cell.evidence(), readings));
    }
    Map<BankFigure.Estimated, Estimate> figures = new EnumMap<>(BankFigure.Estimated.class);
    for (BankFigure.Estimated figure : BankFigure.Estimated.values()) {
      figures.put(figure, figure.of(result));
    }
    Map<BankFigure.Counted, Double> counts = new EnumMap<>(BankFigure.Counted.class);
    for (BankFigure.Counted count : BankFigure.Counted.values()) {
      put(counts, count, count.of(result));
    }
    return new KeptMonth(
        battery,
        new KeptCheck.Bank(
            result.bank(),
            result.from(),
            result.to(),
            result.verdict().headline(),
            result.verdict().severity(),
            estimates),
        new Conditions(
            result.evidence().rows(),
            result.evidence().cadenceS(),
            result.estimates().resistancePulseS()),
        figures,
        counts,
        cells,
        result.estimates().remarks(),
        inputs);
  }

  private static KeptCheck.Cell estimates(CellVerdict cell) {
    Map<Quantity, Estimate> estimates = new EnumMap<>(Quantity.class);
    for (Quantity quantity : Quantity.values()) {
      estimates.put(quantity, quantity.of(cell));
    }
    return new KeptCheck.Cell(cell.cell(), cell.rank(), cell.finding(), estimates);
  }

  private static <K extends Enum<K>> void put(Map<K, Double> map, K key, double value) {
    if (Double.isFinite(value)) {
      map.put(key, value);
    }
  }

  /** Middle of its period. */
  public Instant middle() {
    long from = bank.from().getEpochSecond();
    return Instant.ofEpochSecond(from + (bank.to().getEpochSecond() - from) / 2);
  }

  public Estimate figure(BankFigure.Estimated figure) {
    return figures.getOrDefault(figure, Estimate.unknown(Words.english().say("unknown.not-kept")));
  }
}
