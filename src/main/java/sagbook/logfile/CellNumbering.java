package sagbook.logfile;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import sagbook.wording.Words;

/** Makes cells count from 1 where a log counts them from 0. */
final class CellNumbering {
  private static final Words WORDS = Words.english();

  private CellNumbering() {}

  /** Makes a temperature without number the first sensor when there are no numbered ones. */
  static List<Column> withOneSensor(List<Column> columns) {
    boolean numbered = false;
    for (Column column : columns) {
      numbered |=
          column.meaning().quantity() == Quantity.CELL_TEMPERATURE && column.meaning().cell() >= 0;
    }
    List<Column> found = new ArrayList<>();
    for (Column column : columns) {
      Meaning meaning = column.meaning();
      boolean lone = meaning.quantity() == Quantity.CELL_TEMPERATURE && meaning.cell() < 0;
      if (!lone) {
        found.add(column);
      } else if (numbered) {
        found.add(column.withMeaning(Meaning.ignored(), WORDS.say("how.no-cell")));
      } else {
        found.add(column.withMeaning(meaning.withCell(1), column.how()));
        numbered = true;
      }
    }
    return found;
  }

  static List<Column> fromOne(List<Column> columns) {
    Set<Quantity> fromZero = EnumSet.noneOf(Quantity.class);
    for (Column column : columns) {
      if (column.meaning().quantity().isOfCell() && column.meaning().cell() == 0) {
        fromZero.add(column.meaning().quantity());
      }
    }
    if (fromZero.isEmpty()) {
      return columns;
    }
    List<Column> shifted = new ArrayList<>();
    for (Column column : columns) {
      Meaning meaning = column.meaning();
      shifted.add(
          fromZero.contains(meaning.quantity()) && meaning.cell() >= 0
              ? column.withMeaning(
                  meaning.withCell(meaning.cell() + 1), WORDS.say("how.from-zero", column.how()))
              : column);
    }
    return shifted;
  }
}
