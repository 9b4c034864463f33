package sagbook.report.html;

import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import sagbook.report.chart.DataTable;
import sagbook.report.chart.Plate;
import sagbook.wording.Words;

/**
 * Everything on the page, already in words.
 *
 * @param words wording of the fixed parts
 * @param title of the window
 * @param name of the battery
 * @param facts the form at the head of the page
 * @param banks one a bank
 * @param methods how the numbers were made, with sources
 * @param limits limits used
 * @param rules when a difference counts, with reasons
 * @param cautions what to mind before touching anything
 * @param inputs the files
 * @param glossary terms with one sentence each
 * @param software version
 * @param assets style sheet and script with the policy that admits just these
 */
public record Page(
    Words words,
    String title,
    String name,
    List<Entry> facts,
    List<Bank> banks,
    List<String> methods,
    DataTable limits,
    DataTable rules,
    List<String> cautions,
    DataTable inputs,
    List<Entry> glossary,
    String software,
    Assets assets) {

  /**
   * A term with what is said about it.
   *
   * @param term a few words
   * @param sentences one or more
   */
  public record Entry(String term, List<String> sentences) {}

  /**
   * A bank's part of the page.
   *
   * @param id prefix of its anchors
   * @param name shown where there are several; empty for the only one
   * @param headline the one sentence
   * @param state is it fine, and what is wrong
   * @param todo what to do now
   * @param idle what is said where that is nothing, or what to measure beside it; may be empty
   * @param worth what that buys, and how sure it is
   * @param nextMonth what to measure or change
   * @param plan the test for next month, sentences
   * @param checklists an action with what to go through before it
   * @param ranking cells, weakest first
   * @param gives what the battery gives as it is, sentences
   * @param buysLead what the table of changes rests on
   * @param buys what each change would buy
   * @param plates charts
   * @param missing charts that could not be drawn, and why
   * @param stress what the bank went through
   * @param balancing what balancing did
   * @param boards the same board by board; no rows when not logged
   * @param open what is known of no cell, sentences
   * @param sheets one a cell
   * @param quality how good its log is
   */
  public record Bank(
      String id,
      String name,
      String headline,
      List<Entry> state,
      List<String> todo,
      String idle,
      List<Entry> worth,
      List<String> nextMonth,
      List<String> plan,
      List<Entry> checklists,
      Ranking ranking,
      List<String> gives,
      List<String> buysLead,
      DataTable buys,
      List<NumberedPlate> plates,
      List<String> missing,
      DataTable stress,
      List<String> balancing,
      DataTable boards,
      List<String> open,
      List<Sheet> sheets,
      Quality quality) {
    /** The sheets as they stand abreast on paper, two and two. */
    public List<List<Sheet>> pairs() {
      return IntStream.iterate(0, first -> first < sheets.size(), first -> first + 2)
          .mapToObj(first -> sheets.subList(first, Math.min(first + 2, sheets.size())))
          .toList();
    }

    /** So many letters still fit on the first printed page in large type. */
    private static final int BRIEF = 1100;

    /** Whether the answers are short enough for large type on paper; they have to fit one page. */
    public boolean isBrief() {
      Stream<String> entries =
          Stream.of(state, worth).flatMap(List::stream).flatMap(e -> e.sentences().stream());
      Stream<String> lists = Stream.of(todo, List.of(idle), nextMonth, plan).flatMap(List::stream);
      return Stream.concat(entries, lists).mapToInt(String::length).sum() < BRIEF;
    }
  }

  /**
   * The ranking table.
   *
   * @param columns headers of the figures, with units
   * @param rows weakest first
   * @param notes reasons for figures that can't be had, one a mark
   */
  public record Ranking(List<String> columns, List<RankingRow> rows, List<Note> notes) {}

  /**
   * A cell in the ranking.
   *
   * @param rank 1 for the weakest
   * @param span ranks it may hold; empty when there is no doubt
   * @param cell its number
   * @param finding in words
   * @param pick as in the plates; 0 for a cell that is not picked out
   * @param figures one a column
   */
  public record RankingRow(
      int rank, String span, int cell, String finding, int pick, List<Figure> figures) {}

  /**
   * A figure of the ranking.
   *
   * @param value the best value, or that there is none
   * @param range its range; empty when there is no value
   * @param note mark of the reason; empty when there is a value
   * @param sort what the column is sorted by; empty for no value
   */
  public record Figure(String value, String range, String note, String sort) {}

  /** A reason under the table, with its mark. */
  public record Note(String mark, String text) {}

  /** A plate with its number on the page. */
  public record NumberedPlate(int number, Plate plate) {}

  /**
   * One cell's page of evidence.
   *
   * @param cell its number
   * @param title cell and finding
   * @param pick as in the plates
   * @param action what to do
   * @param evidence why
   * @param doubts what would change the mind, and what to look at next
   * @param estimates quantity, value, range
   * @param readings what its readings went through, one sentence
   */
  public record Sheet(
      int cell,
      String title,
      int pick,
      String action,
      List<String> evidence,
      List<String> doubts,
      List<Line> estimates,
      String readings) {}

  /**
   * A line of a sheet.
   *
   * @param quantity what
   * @param value best value, or why there is none
   * @param range its range; empty when there is no value
   */
  public record Line(String quantity, String value, String range) {}

  /**
   * How good a bank's log is.
   *
   * @param reading how it was read
   * @param remarks assumptions and corrections
   * @param summary the channels in one sentence
   * @param channels the channels one by one
   */
  public record Quality(
      List<String> reading, List<String> remarks, String summary, DataTable channels) {}
}
