package sagbook.report.html;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import sagbook.model.Estimate;
import sagbook.record.DiaryEvent;
import sagbook.record.KeptMonth;
import sagbook.record.Quantity;
import sagbook.report.chart.DataTable;
import sagbook.report.chart.Picks;
import sagbook.report.chart.Plate;
import sagbook.report.chart.SeasonWarmthPlate;
import sagbook.report.chart.TrendPlate;
import sagbook.report.words.Numbers;
import sagbook.report.words.OutsideText;
import sagbook.season.SeasonResult;
import sagbook.wording.Words;

/**
 * The season's page: who drifts, what the string does, what was done about it.
 *
 * @param words wording of the fixed parts
 * @param title of the window
 * @param name of the battery
 * @param banks one a bank
 * @param assets style sheet and script
 */
public record SeasonStory(Words words, String title, String name, List<Bank> banks, Assets assets) {
  private static final List<List<Quantity>> TRENDS =
      List.of(
          List.of(Quantity.CAPACITY_AH, Quantity.CAPACITY_RELATIVE),
          List.of(Quantity.RESISTANCE_MOHM, Quantity.RESISTANCE_RELATIVE));

  /**
   * A bank's part.
   *
   * @param id prefix of its anchors
   * @param name shown where there are several; empty for the only one
   * @param headline the one sentence
   * @param period from when to when
   * @param findings what the monthly checks found
   * @param string what the string as a whole does
   * @param columns headers of the cells' figures
   * @param cells worst first
   * @param drifting why, one entry a drifting cell
   * @param plates charts
   * @param diary what was done, and whether it helped
   * @param changes steps
   * @param stress what it went through
   * @param list the months, newest first, with their sentences
   */
  public record Bank(
      String id,
      String name,
      String headline,
      String period,
      List<String> findings,
      List<String> string,
      List<String> columns,
      List<CellRow> cells,
      List<Page.Entry> drifting,
      List<Page.NumberedPlate> plates,
      DataTable diary,
      List<String> changes,
      DataTable stress,
      List<Page.Entry> list) {}

  /**
   * A cell in the table.
   *
   * @param cell its place
   * @param mark serial or the keeper's mark
   * @param pick as in the plates; 0 for a cell that does not drift
   * @param figures one a column
   */
  public record CellRow(int cell, String mark, int pick, List<Page.Figure> figures) {}

  /** The page's whole text. */
  public static String html(SeasonResult season, List<DiaryEvent> diary, Words words) {
    List<Bank> banks = new ArrayList<>();
    int number = 0;
    for (SeasonResult.Bank bank : season.banks()) {
      String name = season.banks().size() > 1 ? OutsideText.shown(bank.bank()) : "";
      List<Page.NumberedPlate> plates = new ArrayList<>();
      for (Plate plate : plates(bank, diary, words)) {
        plates.add(new Page.NumberedPlate(++number, plate));
      }
      banks.add(bank("bank" + (banks.size() + 1), name, bank, diary, plates, words));
    }
    String name = OutsideText.shown(season.battery().pack());
    SeasonResult.Bank first = season.banks().get(0);
    SeasonStory page =
        new SeasonStory(
            words,
            words.say(
                "story.title",
                name,
                words.date(first.from(), season.battery().zone()),
                words.date(first.to(), season.battery().zone())),
            name,
            banks,
            Assets.own());
    return Template.filled("story.jte", page);
  }

  private static Bank bank(
      String id,
      String name,
      SeasonResult.Bank bank,
      List<DiaryEvent> diary,
      List<Page.NumberedPlate> plates,
      Words words) {
    List<Page.Entry> drifting = new ArrayList<>();
    for (SeasonResult.Cell cell : bank.cells()) {
      if (cell.isDrifting()) {
        drifting.add(
            new Page.Entry(words.say("story.why", Integer.toString(cell.cell())), cell.evidence()));
      }
    }
    List<Page.Entry> list = new ArrayList<>();
    for (int i = bank.months().size() - 1; i >= 0; i--) {
      KeptMonth month = bank.months().get(i);
      list.add(
          new Page.Entry(
              period(month.bank().from(), month.bank().to(), bank, words),
              List.of(OutsideText.shown(month.bank().headline()))));
    }
    return new Bank(
        id,
        name,
        bank.headline(),
        period(bank.from(), bank.to(), bank, words),
        bank.findings().stream().map(SeasonResult.Stretch::words).toList(),
        bank.evidence(),
        List.of(
            words.say("story.column.capacity"),
            words.say("story.column.capacity-against"),
            words.say("story.column.resistance"),
            words.say("story.column.resistance-against"),
            words.say("story.column.years80"),
            words.say("story.column.years70")),
        cells(bank, words),
        drifting,
        plates,
        SeasonTables.diary(bank, diary, words),
        bank.changes().stream().map(SeasonResult.Change::words).map(OutsideText::shown).toList(),
        SeasonTables.stress(bank.stress(), words),
        list);
  }

  private static String period(
      java.time.Instant from, java.time.Instant to, SeasonResult.Bank bank, Words words) {
    var zone = bank.months().get(0).battery().zone();
    return words.say("head.period", words.date(from, zone), words.date(to, zone));
  }

  private static List<Plate> plates(SeasonResult.Bank bank, List<DiaryEvent> diary, Words words) {
    List<TrendPlate.Mark> marks =
        diary.stream()
            .filter(event -> event.bank().isEmpty() || event.bank().equals(bank.bank()))
            .map(
                event ->
                    new TrendPlate.Mark(
                        event.day(),
                        event.cell() == 0
                            ? event.kind().spoken()
                            : event.kind().spoken() + ", " + words.cell(event.cell())))
            .toList();
    List<Plate> plates = new ArrayList<>();
    for (List<Quantity> either : TRENDS) {
      either.stream()
          .flatMap(
              quantity ->
                  TrendPlate.of(
                      bank.months().stream().map(KeptMonth::bank).toList(),
                      quantity,
                      words,
                      picks(bank),
                      marks)
                      .stream())
          .findFirst()
          .ifPresent(plates::add);
    }
    Optional<Plate> warmth = SeasonWarmthPlate.of(bank.months(), words);
    warmth.ifPresent(plates::add);
    return plates;
  }

  /** The cells that drift, then those with a lasting finding. */
  private static Picks picks(SeasonResult.Bank bank) {
    List<Integer> cells = new ArrayList<>();
    worstFirst(bank).stream()
        .filter(SeasonResult.Cell::isDrifting)
        .forEach(cell -> cells.add(cell.cell()));
    bank.findings().stream()
        .filter(SeasonResult.Stretch::lasts)
        .forEach(stretch -> cells.add(stretch.cell()));
    return Picks.ofCells(cells);
  }

  private static List<SeasonResult.Cell> worstFirst(SeasonResult.Bank bank) {
    return bank.cells().stream()
        .sorted(
            Comparator.comparing((SeasonResult.Cell cell) -> !cell.isDrifting())
                .thenComparingDouble(cell -> cell.capacityAgainstString().find().orElse(0))
                .thenComparingInt(SeasonResult.Cell::cell))
        .toList();
  }

  private static List<CellRow> cells(SeasonResult.Bank bank, Words words) {
    Picks picks = picks(bank);
    List<CellRow> rows = new ArrayList<>();
    for (SeasonResult.Cell cell : worstFirst(bank)) {
      rows.add(
          new CellRow(
              cell.cell(),
              cell.mark().equals(words.say("drift.place", Integer.toString(cell.cell())))
                  ? ""
                  : OutsideText.shown(cell.mark()),
              cell.isDrifting() ? Math.max(1, picks.of(cell.cell())) : 0,
              List.of(
                  figure(cell.capacityTrend(), words),
                  figure(cell.capacityAgainstString(), words),
                  figure(cell.resistanceTrend(), words),
                  figure(cell.resistanceAgainstString(), words),
                  figure(cell.yearsTo80(), words),
                  figure(cell.yearsTo70(), words))));
    }
    return rows;
  }

  private static Page.Figure figure(Estimate estimate, Words words) {
    return estimate instanceof Estimate.Known known
        ? new Page.Figure(
            Numbers.value(known),
            words.say("range", Numbers.low(known), Numbers.high(known)),
            "",
            Double.toString(known.value()))
        : new Page.Figure(words.say("none"), "", "", "");
  }

  /** Value with range, or that there is none. */
  static String shown(Estimate estimate, Words words) {
    return estimate instanceof Estimate.Known known
        ? Numbers.value(known)
            + " ("
            + words.say("range", Numbers.low(known), Numbers.high(known))
            + ")"
        : words.say("none");
  }
}
