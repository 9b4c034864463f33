package sagbook.record.store;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import sagbook.record.DiaryEvent;

/** The diary's table. */
final class Diary {
  private Diary() {}

  static void add(Connection connection, DiaryEvent event) throws SQLException {
    long id = Schema.number(connection, "SELECT coalesce(max(id), 0) + 1 FROM diary_event");
    try (Row row = new Row(connection, "diary_event", 7)) {
      row.add(
          id,
          event.day().toString(),
          event.kind().words(),
          event.bank(),
          event.cell(),
          event.mark(),
          event.text());
    }
  }

  static List<DiaryEvent> all(Connection connection) throws SQLException {
    List<DiaryEvent> events = new ArrayList<>();
    try (Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery("SELECT * FROM diary_event ORDER BY day, id")) {
      while (row.next()) {
        events.add(
            new DiaryEvent(
                LocalDate.parse(row.getString("day")),
                DiaryEvent.Kind.of(row.getString("kind")).orElse(DiaryEvent.Kind.OTHER),
                row.getString("bank"),
                row.getInt("cell"),
                row.getString("mark"),
                row.getString("text")));
      }
    }
    return events;
  }
}
