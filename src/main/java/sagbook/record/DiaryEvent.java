package sagbook.record;

import java.time.LocalDate;
import java.util.Locale;
import java.util.Optional;
import sagbook.wording.Words;

/**
 * Something the keeper did to the battery, which breaks or explains a trend.
 *
 * @param day when, in the battery's time zone
 * @param kind what
 * @param bank where; empty for the whole battery
 * @param cell place in the string, 1 for the first; 0 when it concerns no single cell
 * @param mark serial or own mark of the cell that sits at the place from then on; may be empty
 * @param text in the keeper's words; may be empty
 */
public record DiaryEvent(
    LocalDate day, Kind kind, String bank, int cell, String mark, String text) {

  /** What was done. */
  public enum Kind {
    /** Another cell sits at the place; its history starts here. */
    CELL_REPLACED,
    /** A cell of the battery was put at the place; it keeps its history. */
    CELL_MOVED,
    /** The cell at the place got a name; nothing was done to it. */
    CELL_MARKED,
    JOINT_TIGHTENED,
    REBALANCED,
    BOARD_CHANGED,
    SETTINGS_CHANGED,
    FIRMWARE_CHANGED,
    OTHER;

    /** As stored and typed. */
    public String words() {
      return name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    /** As it is said to people. */
    public String spoken() {
      return Words.english().say("diary." + words().replace(' ', '-'));
    }

    /** The kind of these words; hyphens and blanks are the same. */
    public static Optional<Kind> of(String words) {
      String plain = words.strip().toLowerCase(Locale.ROOT).replace('-', ' ').replace('_', ' ');
      for (Kind kind : values()) {
        if (kind.words().equals(plain)) {
          return Optional.of(kind);
        }
      }
      return Optional.empty();
    }

    /** Whether capacities before and after belong to different histories of the place. */
    public boolean breaksCapacity() {
      return this == CELL_REPLACED || this == BOARD_CHANGED;
    }

    /** Whether resistances before and after belong to different histories of the place. */
    public boolean breaksResistance() {
      return breaksCapacity() || this == JOINT_TIGHTENED || this == CELL_MOVED;
    }
  }

  public DiaryEvent {
    if (!(cell >= 0)) {
      throw new IllegalArgumentException("cell " + cell);
    }
  }

  /** Whether it concerns a place, itself or as part of its bank or of the battery. */
  public boolean concerns(String ofBank, int place) {
    return (bank.isEmpty() || bank.equals(ofBank)) && (cell == 0 || cell == place);
  }
}
