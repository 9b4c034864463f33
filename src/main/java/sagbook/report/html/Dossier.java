package sagbook.report.html;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import sagbook.model.Estimate;
import sagbook.record.BankFigure;
import sagbook.record.DiaryEvent;
import sagbook.record.InputFile;
import sagbook.record.KeptCheck;
import sagbook.record.KeptMonth;
import sagbook.record.Quantity;
import sagbook.record.Rounded;
import sagbook.report.chart.DataTable;
import sagbook.report.words.Numbers;
import sagbook.report.words.OutsideText;
import sagbook.season.MiddleCell;
import sagbook.season.SeasonResult;
import sagbook.season.Warmth;
import sagbook.wording.Words;

/**
 * What is handed to a warranty desk or an insurer: few pages, ready to print, well-formed XHTML.
 *
 * @param words wording of the fixed parts
 * @param name of the battery
 * @param made the day it was made; empty when no date is wanted
 * @param facts what the battery is
 * @param banks one a bank
 * @param inputs the log files with their hashes
 * @param software versions that checked the months and made this
 * @param style style sheet
 */
public record Dossier(
    Words words,
    String name,
    String made,
    List<Page.Entry> facts,
    List<Bank> banks,
    DataTable inputs,
    String software,
    String style) {

  /**
   * A bank's part.
   *
   * @param name shown where there are several; empty for the only one
   * @param headline the one sentence
   * @param evidence what the string as a whole does
   * @param operated what it went through
   * @param history month by month
   * @param cells cell by cell
   * @param diary what was done
   */
  public record Bank(
      String name,
      String headline,
      List<String> evidence,
      DataTable operated,
      DataTable history,
      DataTable cells,
      DataTable diary) {}

  /** The page's whole text. */
  public static String html(
      SeasonResult season,
      List<DiaryEvent> diary,
      String software,
      Optional<LocalDate> made,
      Words words) {
    List<Bank> banks = new ArrayList<>();
    for (SeasonResult.Bank bank : season.banks()) {
      banks.add(
          new Bank(
              season.banks().size() > 1 ? OutsideText.shown(bank.bank()) : "",
              bank.headline(),
              bank.evidence(),
              SeasonTables.stress(bank.stress(), words),
              history(bank, words),
              cells(bank, words),
              SeasonTables.diary(bank, diary, words)));
    }
    Dossier dossier =
        new Dossier(
            words,
            OutsideText.shown(season.battery().pack()),
            made.map(words::date).orElse(""),
            facts(season, words),
            banks,
            inputs(season, words),
            software(season, software),
            Assets.dossier().style());
    return Template.filled("dossier.jte", dossier);
  }

  private static List<Page.Entry> facts(SeasonResult season, Words words) {
    SeasonResult.Bank bank = season.banks().get(0);
    int cells = bank.cells().size();
    List<Page.Entry> facts = new ArrayList<>();
    facts.add(
        entry(
            words.say("fact.cells"),
            words.say(
                "fact.cells.value",
                Integer.toString(cells),
                words.say(
                    "chemistry." + season.battery().chemistry().key().toLowerCase(Locale.ROOT)))));
    facts.add(
        entry(
            words.say("fact.nominal"),
            Numbers.with(Rounded.of(season.battery().nominalCapacityAh()).toPlainString(), "Ah")));
    facts.add(entry(words.say("dossier.banks"), Integer.toString(season.banks().size())));
    facts.add(
        entry(
            words.say("fact.period"),
            words.say(
                "head.period",
                words.date(bank.from(), season.battery().zone()),
                words.date(bank.to(), season.battery().zone()))));
    facts.add(entry(words.say("story.months"), Integer.toString(bank.months().size())));
    return facts;
  }

  private static Page.Entry entry(String term, String sentence) {
    return new Page.Entry(term, List.of(sentence));
  }

  private static DataTable history(SeasonResult.Bank bank, Words words) {
    List<List<String>> rows = new ArrayList<>();
    for (KeptMonth month : bank.months()) {
      rows.add(
          List.of(
              words.monthAndYear(LocalDate.ofInstant(month.middle(), month.battery().zone())),
              SeasonStory.shown(month.figure(BankFigure.Estimated.MEDIAN_CAPACITY_AH), words),
              SeasonStory.shown(month.figure(BankFigure.Estimated.STRING_USABLE_AH), words),
              SeasonStory.shown(MiddleCell.resistance(month), words),
              Warmth.mean(month).isPresent()
                  ? Numbers.text(Warmth.mean(month).getAsDouble(), 1)
                  : words.say("not-logged")));
    }
    return new DataTable(
        List.of(
            words.say("column.month"),
            words.say("dossier.column.capacity"),
            words.say("dossier.column.usable"),
            words.say("dossier.column.resistance"),
            words.say("column.mean-temperature")),
        rows);
  }

  private static DataTable cells(SeasonResult.Bank bank, Words words) {
    List<List<String>> rows = new ArrayList<>();
    List<KeptCheck.Cell> newest = bank.months().get(bank.months().size() - 1).bank().cells();
    for (SeasonResult.Cell cell : bank.cells()) {
      KeptCheck.Cell now = newest.get(cell.cell() - 1);
      Estimate share =
          Display.of(Quantity.CAPACITY_RELATIVE, now.estimate(Quantity.CAPACITY_RELATIVE));
      rows.add(
          List.of(
              words.cell(cell.cell())
                  + (isPlain(cell, words) ? "" : " " + OutsideText.shown(cell.mark())),
              SeasonStory.shown(now.estimate(Quantity.CAPACITY_AH), words),
              SeasonStory.shown(share, words),
              SeasonStory.shown(cell.capacityTrend(), words),
              SeasonStory.shown(now.estimate(Quantity.RESISTANCE_MOHM), words),
              SeasonStory.shown(cell.resistanceTrend(), words),
              words.say(cell.isDrifting() ? "story.yes" : "story.no")));
    }
    return new DataTable(
        List.of(
            words.say("column.cell"),
            words.say("dossier.column.cell-capacity"),
            words.say("dossier.column.share"),
            words.say("story.column.capacity"),
            words.say("dossier.column.cell-resistance"),
            words.say("story.column.resistance"),
            words.say("story.column.drifts")),
        rows);
  }

  private static boolean isPlain(SeasonResult.Cell cell, Words words) {
    return cell.mark().equals(words.say("drift.place", Integer.toString(cell.cell())));
  }

  /** Every file once, in the order of the months. */
  private static DataTable inputs(SeasonResult season, Words words) {
    Set<List<String>> rows = new LinkedHashSet<>();
    for (SeasonResult.Bank bank : season.banks()) {
      for (KeptMonth month : bank.months()) {
        for (InputFile input : month.inputs()) {
          rows.add(
              List.of(
                  OutsideText.shown(input.file()), Numbers.count(input.rows()), input.sha256()));
        }
      }
    }
    return new DataTable(
        List.of(words.say("dossier.column.file"), words.say("dossier.column.rows"), "SHA-256"),
        List.copyOf(rows));
  }

  private static String software(SeasonResult season, String software) {
    Set<String> versions = new LinkedHashSet<>();
    for (SeasonResult.Bank bank : season.banks()) {
      bank.months().forEach(month -> versions.add("sagbook " + month.battery().software()));
    }
    versions.add("sagbook " + software);
    return String.join(", ", versions);
  }
}
