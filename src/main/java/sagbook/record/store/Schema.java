package sagbook.record.store;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.Objects;
import java.util.regex.Pattern;
import sagbook.issue.InputProblem;

/**
 * The record's tables. The file's {@code user_version} says which version it has; the resources
 * {@code 1.sql}, {@code 2.sql} and so on lead from each version to the next and never change once
 * released.
 */
final class Schema {
  static final int VERSION = 1;

  private static final Pattern END = Pattern.compile(";\\s*\\n");

  /** Marks the file as a record of this program: "sagb". */
  private static final int APPLICATION = 0x73616762;

  /** The tables, those first that others refer to. */
  static final List<String> TABLES =
      List.of(
          "bank_check",
          "bank_estimate",
          "bank_count",
          "cell_finding",
          "cell_estimate",
          "cell_reading",
          "sentence",
          "input_file",
          "diary_event");

  private Schema() {}

  /** Whether nothing is left to do, so that a record can be read where nothing may be written. */
  static boolean isUpToDate(Connection connection) throws SQLException {
    return number(connection, "PRAGMA user_version") == VERSION
        && number(connection, "PRAGMA application_id") == APPLICATION;
  }

  /** To be run in a transaction. */
  static void bringUpToDate(Connection connection, Path file) throws SQLException, InputProblem {
    int version = number(connection, "PRAGMA user_version");
    int application = number(connection, "PRAGMA application_id");
    boolean fresh = number(connection, "SELECT count(*) FROM sqlite_schema") == 0;
    if (!fresh && application != APPLICATION) {
      throw InputProblem.input("problem.record.other", InputProblem.quoted(file.toString()));
    }
    if (version > VERSION) {
      throw InputProblem.input(
          "problem.record.newer",
          InputProblem.quoted(file.toString()),
          Integer.toString(version),
          Integer.toString(VERSION));
    }
    try (Statement statement = connection.createStatement()) {
      for (int next = version + 1; next <= VERSION; next++) {
        for (String sql : END.splitAsStream(script(next)).toList()) {
          statement.execute(sql);
        }
        statement.execute("PRAGMA user_version = " + next);
        statement.execute("PRAGMA application_id = " + APPLICATION);
      }
    }
  }

  static int number(Connection connection, String sql) throws SQLException {
    try (Statement statement = connection.createStatement();
        ResultSet answer = statement.executeQuery(sql)) {
      return answer.next() ? answer.getInt(1) : 0;
    }
  }

  private static String script(int version) {
    String name = "/sagbook/record/" + version + ".sql";
    try (InputStream in = Objects.requireNonNull(Schema.class.getResourceAsStream(name), name)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8).strip() + "\n";
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
