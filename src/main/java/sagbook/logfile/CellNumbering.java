package sagbook.logfile;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/** Makes cells count from 1 where a log counts them from 0. */
final class CellNumbering {
  private CellNumbering() {}

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
                  meaning.withCell(meaning.cell() + 1), column.how() + "; counted from 0")
              : column);
    }
    return shifted;
  }
}
