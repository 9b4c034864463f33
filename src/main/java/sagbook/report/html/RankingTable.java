package sagbook.report.html;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import sagbook.model.Estimate;
import sagbook.record.Quantity;
import sagbook.report.chart.Picks;
import sagbook.report.words.OutsideText;
import sagbook.verdict.CellVerdict;
import sagbook.wording.Words;

/** Puts the cells in order of weakness, with the figures that matter and reasons for the rest. */
final class RankingTable {
  private final List<CellVerdict> cells;
  private final Picks picks;
  private final Words words;
  private final Map<String, String> marks = new LinkedHashMap<>();

  private RankingTable(List<CellVerdict> cells, Picks picks, Words words) {
    this.cells = cells;
    this.picks = picks;
    this.words = words;
  }

  static Page.Ranking of(List<CellVerdict> cells, Picks picks, Words words) {
    return new RankingTable(cells, picks, words).make();
  }

  private Page.Ranking make() {
    List<Quantity> shown =
        List.of(
            either(Quantity.CAPACITY_AH, Quantity.CAPACITY_RELATIVE),
            either(Quantity.RESISTANCE_MOHM, Quantity.RESISTANCE_RELATIVE),
            Quantity.CHARGE_OFFSET_PERCENT,
            Quantity.COST_ALONE_AH);
    List<String> columns =
        shown.stream().map(q -> words.say("quantity." + q.key()) + ", " + Display.unit(q)).toList();
    List<Page.RankingRow> rows = new ArrayList<>();
    cells.stream()
        .sorted(Comparator.comparingInt(CellVerdict::rank))
        .forEach(cell -> rows.add(row(cell, shown)));
    List<Page.Note> notes = new ArrayList<>();
    marks.forEach((reason, mark) -> notes.add(new Page.Note(mark, reason)));
    return new Page.Ranking(columns, rows, notes);
  }

  /** The first quantity, unless no cell has it. */
  private Quantity either(Quantity wanted, Quantity otherwise) {
    boolean known = cells.stream().anyMatch(c -> wanted.of(c) instanceof Estimate.Known);
    return known ? wanted : otherwise;
  }

  private Page.RankingRow row(CellVerdict cell, List<Quantity> shown) {
    List<Page.Figure> figures = new ArrayList<>();
    for (Quantity quantity : shown) {
      figures.add(figure(Display.of(quantity, quantity.of(cell))));
    }
    return new Page.RankingRow(
        cell.rank(),
        span(cell),
        cell.cell(),
        words.say("finding." + cell.findingKey()),
        picks.of(cell.cell()),
        figures);
  }

  /** The ranks that a cell may hold, as far as its cost can be told from the others'. */
  private String span(CellVerdict cell) {
    if (cell.tiedWith().isEmpty()) {
      return "";
    }
    long costlier = cells.stream().filter(c -> sure(c, cell) && c.rank() < cell.rank()).count();
    long cheaper = cells.stream().filter(c -> sure(c, cell) && c.rank() > cell.rank()).count();
    return words.say("range", Long.toString(1 + costlier), Long.toString(cells.size() - cheaper));
  }

  private static boolean sure(CellVerdict other, CellVerdict cell) {
    return !cell.tiedWith().contains(other.cell());
  }

  private Page.Figure figure(Estimate estimate) {
    if (estimate instanceof Estimate.Known known) {
      String range = Display.range(known, words);
      return new Page.Figure(
          Display.value(known, words), range, "", Double.toString(known.value()));
    }
    String reason = OutsideText.shown(((Estimate.Unknown) estimate).reason());
    String mark = marks.computeIfAbsent(reason, r -> mark(marks.size()));
    return new Page.Figure(words.say("none"), "", mark, "");
  }

  /** a, b, ... z, aa, ab and so on. */
  private static String mark(int index) {
    String last = Character.toString('a' + index % 26);
    return index < 26 ? last : mark(index / 26 - 1) + last;
  }
}
