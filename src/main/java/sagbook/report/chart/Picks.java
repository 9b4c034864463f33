package sagbook.report.chart;

import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import sagbook.model.Finding;
import sagbook.record.KeptCheck;
import sagbook.verdict.CellVerdict;

/** The cells that plots pick out by line style and label: those with a finding, weakest first. */
public final class Picks {
  /** As many line styles as a reader can tell apart. */
  static final int MOST = 4;

  private final Map<Integer, Integer> picks = new LinkedHashMap<>();

  private Picks() {}

  public static Picks of(List<CellVerdict> cells) {
    Picks picks = new Picks();
    cells.stream()
        .filter(c -> isFault(c.finding()))
        .sorted(Comparator.comparingInt(CellVerdict::rank))
        .limit(MOST)
        .forEach(c -> picks.add(c.cell()));
    return picks;
  }

  static Picks ofKept(List<KeptCheck.Cell> cells) {
    Picks picks = new Picks();
    cells.stream()
        .filter(c -> isFault(c.finding()))
        .sorted(Comparator.comparingInt(KeptCheck.Cell::rank))
        .limit(MOST)
        .forEach(c -> picks.add(c.cell()));
    return picks;
  }

  /** Cells of the caller's choice, those first that matter most. */
  public static Picks ofCells(List<Integer> cells) {
    Picks picks = new Picks();
    cells.stream().distinct().limit(MOST).forEach(picks::add);
    return picks;
  }

  private static boolean isFault(Finding finding) {
    return finding != Finding.HEALTHY && finding != Finding.INSUFFICIENT_EVIDENCE;
  }

  private void add(int cell) {
    picks.put(cell, picks.size() + 1);
  }

  /** 1 and up for a picked cell, 0 for another. */
  public int of(int cell) {
    return picks.getOrDefault(cell, 0);
  }

  Ink ink(Role role, int cell) {
    return new Ink(role, cell, of(cell));
  }
}
