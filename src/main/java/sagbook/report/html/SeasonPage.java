package sagbook.report.html;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import sagbook.model.Finding;
import sagbook.record.KeptCheck;
import sagbook.record.Quantity;
import sagbook.report.chart.Plate;
import sagbook.report.chart.TrendPlate;
import sagbook.report.words.OutsideText;
import sagbook.verdict.Severity;
import sagbook.wording.Words;

/**
 * The page over all checks of a battery, newest first, with what changed over them.
 *
 * @param words wording of the fixed parts
 * @param name of the battery
 * @param checks newest first
 * @param banks trends, one entry a bank
 * @param assets style sheet and script
 */
public record SeasonPage(
    Words words, String name, List<Line> checks, List<Trends> banks, Assets assets) {
  /** Begins the key of a check whose report does not lie there. */
  public static final String NOWHERE = "?";

  /** What is followed over the season; of each row the first that can be drawn. */
  private static final List<List<Quantity>> TRENDS =
      List.of(
          List.of(Quantity.CAPACITY_AH, Quantity.CAPACITY_RELATIVE),
          List.of(Quantity.RESISTANCE_MOHM, Quantity.RESISTANCE_RELATIVE),
          List.of(Quantity.CHARGE_OFFSET_PERCENT));

  /**
   * A check in the list.
   *
   * @param address of its report, relative to the page; empty when it has none there
   * @param period from when to when
   * @param fine whether all was fine, in words
   * @param headlines one sentence a bank
   */
  public record Line(String address, String period, String fine, List<String> headlines) {}

  /**
   * The trends of a bank.
   *
   * @param id of its section
   * @param bank its name; empty where it is the only one
   * @param plates charts
   */
  public record Trends(String id, String bank, List<Page.NumberedPlate> plates) {}

  /**
   * The page's whole text.
   *
   * @param checks by the folder of their report; a key that begins with {@link #NOWHERE} stands for
   *     none
   */
  public static String html(Map<String, KeptCheck> checks, Words words) {
    List<Map.Entry<String, KeptCheck>> newestFirst = new ArrayList<>(checks.entrySet());
    newestFirst.sort(
        Comparator.comparing((Map.Entry<String, KeptCheck> e) -> e.getValue().to())
            .reversed()
            .thenComparing(Map.Entry::getKey));
    List<KeptCheck> oldestFirst = new ArrayList<>();
    newestFirst.forEach(entry -> oldestFirst.add(0, entry.getValue()));
    SeasonPage page =
        new SeasonPage(
            words,
            OutsideText.shown(newestFirst.get(0).getValue().pack()),
            newestFirst.stream().map(entry -> line(entry, words)).toList(),
            trends(oldestFirst, words),
            Assets.own());
    return Template.filled("season.jte", page);
  }

  private static Line line(Map.Entry<String, KeptCheck> entry, Words words) {
    KeptCheck check = entry.getValue();
    return new Line(
        entry.getKey().startsWith(NOWHERE) ? "" : entry.getKey() + "/report.html",
        words.say(
            "head.period",
            words.date(check.from(), check.zone()),
            words.date(check.to(), check.zone())),
        words.say("answer.fine") + " " + fine(check, words),
        check.banks().stream().map(bank -> OutsideText.shown(bank.headline())).toList());
  }

  private static String fine(KeptCheck check, Words words) {
    List<KeptCheck.Cell> cells =
        check.banks().stream().flatMap(bank -> bank.cells().stream()).toList();
    long open = cells.stream().filter(c -> c.finding() == Finding.INSUFFICIENT_EVIDENCE).count();
    return check.severity() == Severity.WELL && open > 0
        ? words.say("answer.fine.open", Long.toString(open), Integer.toString(cells.size()))
        : words.say(
            "answer.fine." + check.severity().name().toLowerCase(Locale.ROOT).replace('_', '-'));
  }

  private static List<Trends> trends(List<KeptCheck> oldestFirst, Words words) {
    KeptCheck latest = oldestFirst.get(oldestFirst.size() - 1);
    List<Trends> trends = new ArrayList<>();
    int number = 0;
    for (KeptCheck.Bank bank : latest.banks()) {
      List<KeptCheck.Bank> checks =
          oldestFirst.stream()
              .map(check -> check.find(bank.bank()))
              .flatMap(Optional::stream)
              .toList();
      List<Page.NumberedPlate> plates = new ArrayList<>();
      for (List<Quantity> either : TRENDS) {
        Optional<Plate> plate =
            either.stream()
                .flatMap(quantity -> TrendPlate.of(checks, quantity, words).stream())
                .findFirst();
        if (plate.isPresent()) {
          plates.add(new Page.NumberedPlate(++number, plate.get()));
        }
      }
      String name = latest.banks().size() > 1 ? OutsideText.shown(bank.bank()) : "";
      trends.add(new Trends("trends" + (trends.size() + 1), name, plates));
    }
    return trends;
  }
}
