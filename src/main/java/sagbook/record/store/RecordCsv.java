package sagbook.record.store;

import java.io.IOException;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVPrinter;
import org.apache.commons.csv.CSVRecord;
import org.apache.commons.csv.QuoteMode;
import org.jspecify.annotations.Nullable;
import sagbook.issue.InputProblem;

/**
 * A record as plain CSV, one file a table, and back. Nothing is lost: numbers have all their
 * digits, a missing value is an empty field and an empty text is {@code ""}. {@code schema.csv}
 * says which version the tables have.
 */
public final class RecordCsv {
  private static final String VERSION_FILE = "schema.csv";
  private static final String VERSION_COLUMN = "version";
  private static final CSVFormat FORMAT =
      CSVFormat.RFC4180
          .builder()
          .setRecordSeparator('\n')
          .setQuoteMode(QuoteMode.ALL_NON_NULL)
          .setNullString("")
          .get();

  private RecordCsv() {}

  /** The files of a record by name, rows in the order of the tables' keys. */
  public static Map<String, byte[]> files(RecordFile record) throws InputProblem {
    return record.ask(
        () -> {
          Map<String, byte[]> files = new LinkedHashMap<>();
          files.put(
              VERSION_FILE,
              text(List.of(List.of(VERSION_COLUMN), List.of(Integer.toString(Schema.VERSION)))));
          for (String table : Schema.TABLES) {
            files.put(table + ".csv", text(rows(record.connection(), table)));
          }
          return files;
        });
  }

  /**
   * Makes a new record of a folder with such files.
   *
   * @param file of the record; must not be there yet
   */
  public static void read(Path folder, Path file) throws InputProblem {
    if (Files.exists(file)) {
      throw InputProblem.usage("problem.record.there", InputProblem.quoted(file.toString()));
    }
    Map<String, List<CSVRecord>> tables = new LinkedHashMap<>();
    for (String table : Schema.TABLES) {
      tables.put(table, parsed(folder.resolve(table + ".csv")));
    }
    refuseOtherVersion(folder);
    boolean done = false;
    try (RecordFile record = RecordFile.open(file)) {
      record.change(
          () -> {
            for (Map.Entry<String, List<CSVRecord>> table : tables.entrySet()) {
              insert(record.connection(), table.getKey(), table.getValue(), folder);
            }
          });
      done = true;
    } finally {
      if (!done) {
        file.toFile().delete();
      }
    }
  }

  private static void refuseOtherVersion(Path folder) throws InputProblem {
    List<CSVRecord> rows = parsed(folder.resolve(VERSION_FILE));
    String version = rows.size() == 2 ? rows.get(1).get(0) : "";
    if (!version.equals(Integer.toString(Schema.VERSION))) {
      throw InputProblem.input(
          "problem.record.exported",
          InputProblem.quoted(folder.resolve(VERSION_FILE).toString()),
          InputProblem.quoted(String.valueOf(version)),
          Integer.toString(Schema.VERSION));
    }
  }

  private static List<List<@Nullable String>> rows(Connection connection, String table)
      throws SQLException {
    List<List<@Nullable String>> rows = new ArrayList<>();
    try (Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery("SELECT * FROM " + table + " ORDER BY rowid")) {
      int columns = row.getMetaData().getColumnCount();
      List<@Nullable String> names = new ArrayList<>();
      for (int c = 1; c <= columns; c++) {
        names.add(row.getMetaData().getColumnName(c));
      }
      rows.add(names);
      while (row.next()) {
        List<@Nullable String> values = new ArrayList<>();
        for (int c = 1; c <= columns; c++) {
          Object value = row.getObject(c);
          values.add(value == null ? null : value.toString());
        }
        rows.add(values);
      }
    }
    return rows;
  }

  private static byte[] text(List<? extends List<@Nullable String>> rows) {
    StringBuilder out = new StringBuilder();
    try (CSVPrinter printer = new CSVPrinter(out, FORMAT)) {
      for (List<@Nullable String> row : rows) {
        printer.printRecord(row);
      }
    } catch (IOException e) {
      throw new IllegalStateException("a string builder does not fail", e);
    }
    return out.toString().getBytes(StandardCharsets.UTF_8);
  }

  private static List<CSVRecord> parsed(Path file) throws InputProblem {
    try (CSVParser parser =
        CSVParser.parse(new StringReader(Files.readString(file, StandardCharsets.UTF_8)), FORMAT)) {
      return parser.getRecords();
    } catch (IOException | RuntimeException e) {
      throw InputProblem.input(e, "problem.record.csv", InputProblem.quoted(file.toString()));
    }
  }

  private static void insert(Connection connection, String table, List<CSVRecord> rows, Path folder)
      throws SQLException, InputProblem {
    List<String> names = new ArrayList<>();
    List<String> types = new ArrayList<>();
    try (Statement statement = connection.createStatement();
        ResultSet column = statement.executeQuery("PRAGMA table_info(" + table + ")")) {
      while (column.next()) {
        names.add(column.getString("name"));
        types.add(column.getString("type"));
      }
    }
    if (rows.isEmpty() || !rows.get(0).toList().equals(names)) {
      throw InputProblem.input(
          "problem.record.columns",
          InputProblem.quoted(folder.resolve(table + ".csv").toString()),
          String.join(", ", names));
    }
    String places = String.join(", ", Collections.nCopies(names.size(), "?"));
    try (PreparedStatement insert =
        connection.prepareStatement("INSERT INTO " + table + " VALUES (" + places + ")")) {
      for (CSVRecord row : rows.subList(1, rows.size())) {
        for (int c = 0; c < names.size(); c++) {
          insert.setObject(c + 1, value(row, c, names.get(c), types.get(c), folder, table));
        }
        insert.addBatch();
      }
      insert.executeBatch();
    }
  }

  private static @Nullable Object value(
      CSVRecord row, int column, String name, String type, Path folder, String table)
      throws InputProblem {
    String text = column < row.size() ? row.get(column) : null;
    if (text == null) {
      return null;
    }
    try {
      return switch (type) {
        case "INTEGER" -> Long.valueOf(text);
        case "REAL" -> Double.valueOf(text);
        default -> text;
      };
    } catch (NumberFormatException e) {
      throw InputProblem.input(
          e,
          "problem.record.number",
          InputProblem.quoted(folder.resolve(table + ".csv").toString()),
          Long.toString(row.getRecordNumber()),
          name,
          InputProblem.quoted(text));
    }
  }
}
