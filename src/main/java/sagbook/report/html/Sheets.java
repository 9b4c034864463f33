package sagbook.report.html;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import sagbook.evidence.Stress;
import sagbook.model.Estimate;
import sagbook.record.BankResult;
import sagbook.record.CellReading;
import sagbook.record.Quantity;
import sagbook.report.chart.Picks;
import sagbook.report.words.Numbers;
import sagbook.report.words.OutsideText;
import sagbook.verdict.CellVerdict;
import sagbook.wording.Words;

/** One sheet a cell: what to do, why, and every estimate with its range or its reason. */
final class Sheets {
  private final BankResult bank;
  private final Picks picks;
  private final Words words;

  private Sheets(BankResult bank, Picks picks, Words words) {
    this.bank = bank;
    this.picks = picks;
    this.words = words;
  }

  static List<Page.Sheet> of(BankResult bank, Picks picks, Words words) {
    Sheets sheets = new Sheets(bank, picks, words);
    return bank.verdict().cells().stream().map(sheets::sheet).toList();
  }

  /** What no cell's sheet has, for one reason; said once instead of on every sheet. */
  static List<String> open(BankResult bank, Words words) {
    Sheets sheets = new Sheets(bank, Picks.of(List.of()), words);
    List<String> open = new ArrayList<>();
    for (Quantity quantity : Quantity.values()) {
      sheets
          .reason(quantity)
          .ifPresent(
              reason ->
                  open.add(
                      words.say("sheet.open", words.say("quantity." + quantity.key()), reason)));
    }
    return open;
  }

  /** Why no cell has a quantity, where the reason is the same for all of several cells. */
  private Optional<String> reason(Quantity quantity) {
    List<Estimate> all = bank.verdict().cells().stream().map(quantity::of).distinct().toList();
    return bank.seriesCells() > 1
            && all.size() == 1
            && all.get(0) instanceof Estimate.Unknown unknown
        ? Optional.of(OutsideText.shown(unknown.reason()))
        : Optional.empty();
  }

  private Page.Sheet sheet(CellVerdict cell) {
    List<Page.Line> lines = new ArrayList<>();
    for (Quantity quantity : Quantity.values()) {
      if (reason(quantity).isEmpty()) {
        lines.add(line(quantity, cell));
      }
    }
    List<String> evidence = new ArrayList<>();
    cell.evidence().forEach(sentence -> evidence.add(OutsideText.shown(sentence)));
    String title =
        words.say(
            "sheet.title",
            Integer.toString(cell.cell()),
            words.say("finding." + cell.findingKey()));
    return new Page.Sheet(
        cell.cell(),
        title,
        picks.of(cell.cell()),
        OutsideText.shown(cell.action()),
        evidence,
        List.of(
            words.say("sheet.mind", OutsideText.shown(cell.advice().mindChanger())),
            words.say("sheet.next", OutsideText.shown(cell.advice().nextObservation()))),
        lines,
        words.say("sheet.readings", readings(cell.cell())));
  }

  private Page.Line line(Quantity quantity, CellVerdict cell) {
    String name = words.say("quantity." + quantity.key());
    Estimate estimate = Display.of(quantity, quantity.of(cell));
    if (estimate instanceof Estimate.Known known) {
      String value = Numbers.with(Display.value(known, words), Display.unit(quantity));
      return new Page.Line(
          name, known.isOpen() ? words.say("at-least", value) : value, Display.range(known, words));
    }
    String reason = OutsideText.shown(((Estimate.Unknown) estimate).reason());
    return new Page.Line(name, words.say("none.because", reason), "");
  }

  private String readings(int cell) {
    List<String> parts = new ArrayList<>();
    Stress stress = bank.evidence().stress();
    double low = CellReading.LOWEST_VOLTAGE_V.of(stress, cell);
    double high = CellReading.HIGHEST_VOLTAGE_V.of(stress, cell);
    if (Double.isFinite(low) && Double.isFinite(high)) {
      parts.add(words.say("sheet.reading.voltage", Numbers.text(low, 3), unit(high, 3, "V")));
    }
    double coldest = CellReading.LOWEST_TEMPERATURE_C.of(stress, cell);
    double warmest = CellReading.HIGHEST_TEMPERATURE_C.of(stress, cell);
    if (Double.isFinite(coldest) && Double.isFinite(warmest)) {
      double mean = CellReading.MEAN_TEMPERATURE_C.of(stress, cell);
      parts.add(
          words.say(
              "sheet.reading.temperature",
              Numbers.text(coldest, 1),
              unit(warmest, 1, "°C"),
              unit(mean, 1, "°C")));
    }
    hours(parts, "above", CellReading.HOURS_ABOVE_MAX_VOLTAGE.of(stress, cell));
    hours(parts, "below", CellReading.HOURS_BELOW_MIN_VOLTAGE.of(stress, cell));
    hours(parts, "cold", CellReading.HOURS_CHARGING_COLD.of(stress, cell));
    hours(parts, "hot", CellReading.HOURS_CHARGING_HOT.of(stress, cell));
    hours(parts, "over", CellReading.HOURS_HOT.of(stress, cell));
    double bled = CellReading.BLED_AH.of(stress, cell);
    if (bled > 0) {
      parts.add(words.say("sheet.reading.bled", Numbers.with(Numbers.significant(bled, 2), "Ah")));
    }
    return parts.isEmpty() ? words.say("sheet.reading.none") : String.join("; ", parts);
  }

  private void hours(List<String> parts, String which, double hours) {
    if (hours > 0) {
      parts.add(
          words.say("sheet.reading." + which, Numbers.with(Numbers.significant(hours, 2), "h")));
    }
  }

  private static String unit(double value, int decimals, String unit) {
    return Numbers.with(Numbers.text(value, decimals), unit);
  }
}
