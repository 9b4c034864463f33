package sagbook.record.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.Collections;
import org.jspecify.annotations.Nullable;
import sagbook.model.Estimate;
import sagbook.record.KeptCheck;

/** Rows of one table on their way into the record, written together. */
final class Row implements AutoCloseable {
  private final PreparedStatement statement;

  /**
   * Prepares rows.
   *
   * @param columns how many, in the order of the table
   */
  Row(Connection connection, String table, int columns) throws SQLException {
    String places = String.join(", ", Collections.nCopies(columns, "?"));
    this.statement =
        connection.prepareStatement("INSERT INTO " + table + " VALUES (" + places + ")");
  }

  /** Adds a row; a NaN is stored as a missing value. */
  void add(@Nullable Object... values) throws SQLException {
    for (int i = 0; i < values.length; i++) {
      Object value = values[i];
      statement.setObject(i + 1, value instanceof Double d && d.isNaN() ? null : value);
    }
    statement.addBatch();
  }

  /** Adds a row that ends with an estimate's value, low, high and note. */
  void add(Estimate estimate, Object... before) throws SQLException {
    @Nullable Object[] values = new @Nullable Object[before.length + 4];
    System.arraycopy(before, 0, values, 0, before.length);
    if (estimate instanceof Estimate.Known known) {
      values[before.length] = known.value();
      values[before.length + 1] = known.low();
      values[before.length + 2] = known.isOpen() ? null : known.high();
    }
    String note = KeptCheck.note(estimate);
    values[before.length + 3] = note.isEmpty() ? null : note;
    add(values);
  }

  @Override
  public void close() throws SQLException {
    try (statement) {
      statement.executeBatch();
    }
  }
}
