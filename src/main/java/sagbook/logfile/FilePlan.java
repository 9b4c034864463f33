package sagbook.logfile;

import java.nio.charset.Charset;
import java.util.List;
import java.util.Optional;

/**
 * How one file will be read.
 *
 * @param source the file
 * @param charset of its text
 * @param dialect how rows and numbers are written
 * @param clock how it tells time
 * @param columns all columns in their order
 * @param tall layout when there is one line a value or a cell, and not one line a moment
 */
record FilePlan(
    LogSource source,
    Charset charset,
    Dialect dialect,
    ClockPlan clock,
    List<Column> columns,
    Optional<TallLayout> tall) {
  FilePlan {
    columns = List.copyOf(columns);
  }

  FilePlan withColumns(List<Column> others) {
    return new FilePlan(source, charset, dialect, clock, others, tall);
  }

  FilePlan withClock(ClockPlan other) {
    return new FilePlan(source, charset, dialect, other, columns, tall);
  }

  FilePlan withTall(TallLayout layout) {
    return new FilePlan(source, charset, dialect, clock, columns, Optional.of(layout));
  }

  boolean has(Quantity quantity) {
    return columns.stream().anyMatch(c -> c.meaning().quantity() == quantity);
  }

  /** Index of the column with that quantity; -1 when there is none. */
  int fieldOf(Quantity quantity) {
    for (Column column : columns) {
      if (column.meaning().quantity() == quantity) {
        return column.field();
      }
    }
    return -1;
  }

  /** Highest cell number of that quantity; 0 when there is none. */
  int highestCell(Quantity quantity) {
    int highest = 0;
    for (Column column : columns) {
      if (column.meaning().quantity() == quantity) {
        highest = Math.max(highest, column.meaning().cell());
      }
    }
    return highest;
  }
}
