package sagbook.whatif;

import java.util.List;

/**
 * What could be done to a string.
 *
 * @param kind what
 * @param cells to which cells, 1 for the first, rising; empty for all
 */
public record Change(Kind kind, List<Integer> cells) {

  /** Kinds of change, under the words that results.json uses. */
  public enum Kind {
    /** Nothing. */
    NOTHING("nothing"),
    /** All cells brought to full together. */
    REBALANCE("rebalance"),
    /** Cells replaced by spares that are as full as the fullest cell left. */
    REPLACE("replace"),
    /** The joint at each cell mended: its immediate excess resistance gone. */
    MEND_JOINT("mend joint");

    private final String words;

    Kind(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }
  }

  public Change {
    cells = cells.stream().sorted().toList();
  }

  /** The string as it is. */
  public static Change nothing() {
    return new Change(Kind.NOTHING, List.of());
  }

  /** All cells brought to full together. */
  public static Change rebalance() {
    return new Change(Kind.REBALANCE, List.of());
  }

  /** Spares in these places. */
  public static Change replace(List<Integer> cells) {
    return new Change(Kind.REPLACE, cells);
  }

  /** The joint at a cell mended. */
  public static Change mend(int cell) {
    return new Change(Kind.MEND_JOINT, List.of(cell));
  }
}
