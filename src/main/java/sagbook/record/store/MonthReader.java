package sagbook.record.store;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import sagbook.model.Chemistry;
import sagbook.model.Estimate;
import sagbook.model.Finding;
import sagbook.record.BankFigure;
import sagbook.record.CellReading;
import sagbook.record.InputFile;
import sagbook.record.KeptCheck;
import sagbook.record.KeptMonth;
import sagbook.record.Quantity;
import sagbook.verdict.Severity;

/** Reads the months back, one query a table. */
final class MonthReader {
  private static final Map<String, Quantity> QUANTITIES = byKey(Quantity.values(), Quantity::key);
  private static final Map<String, CellReading> READINGS =
      byKey(CellReading.values(), CellReading::key);
  private static final Map<String, BankFigure.Estimated> FIGURES =
      byKey(BankFigure.Estimated.values(), BankFigure.Estimated::key);
  private static final Map<String, BankFigure.Counted> COUNTS =
      byKey(BankFigure.Counted.values(), BankFigure.Counted::key);

  private final Connection connection;
  private final Map<Long, Draft> drafts = new LinkedHashMap<>();

  /** A month while its rows come in. */
  private static final class Draft {
    final Map<BankFigure.Estimated, Estimate> figures = new LinkedHashMap<>();
    final Map<BankFigure.Counted, Double> counts = new LinkedHashMap<>();
    final Map<Integer, CellDraft> cells = new TreeMap<>();
    final List<KeptCheck.Cell> findings = new ArrayList<>();
    final List<KeptMonth.Cell> told = new ArrayList<>();
    final List<String> remarks = new ArrayList<>();
    final List<InputFile> inputs = new ArrayList<>();

    CellDraft cell(int cell) {
      return cells.computeIfAbsent(cell, place -> new CellDraft());
    }
  }

  private static final class CellDraft {
    final Map<Quantity, Estimate> estimates = new LinkedHashMap<>();
    final Map<CellReading, Double> readings = new LinkedHashMap<>();
    final List<String> evidence = new ArrayList<>();
  }

  MonthReader(Connection connection) {
    this.connection = connection;
  }

  List<KeptMonth> all() throws SQLException {
    each(
        "SELECT id FROM bank_check ORDER BY bank, from_time, id",
        row -> drafts.put(row.getLong("id"), new Draft()));
    each(
        "SELECT * FROM bank_estimate", row -> put(draft(row).figures, FIGURES, row, estimate(row)));
    each(
        "SELECT * FROM bank_count",
        row -> put(draft(row).counts, COUNTS, row, row.getDouble("value")));
    each(
        "SELECT * FROM cell_estimate",
        row -> put(cell(row).estimates, QUANTITIES, row, estimate(row)));
    each(
        "SELECT * FROM cell_reading",
        row -> put(cell(row).readings, READINGS, row, row.getDouble("value")));
    each("SELECT * FROM sentence ORDER BY check_id, cell, kind, place", this::sentence);
    each(
        "SELECT * FROM input_file ORDER BY check_id, place",
        row -> draft(row).inputs.add(input(row)));
    each("SELECT * FROM cell_finding ORDER BY check_id, cell", this::finding);
    List<KeptMonth> months = new ArrayList<>();
    each("SELECT * FROM bank_check ORDER BY bank, from_time, id", row -> months.add(month(row)));
    return months;
  }

  private void finding(ResultSet row) throws SQLException {
    CellDraft cell = cell(row);
    draft(row)
        .findings
        .add(
            new KeptCheck.Cell(
                row.getInt("cell"),
                row.getInt("place_rank"),
                Finding.valueOf(row.getString("finding")),
                cell.estimates));
    draft(row).told.add(new KeptMonth.Cell(row.getString("action"), cell.evidence, cell.readings));
  }

  private KeptMonth month(ResultSet row) throws SQLException {
    Draft draft = draft(row.getLong("id"));
    return new KeptMonth(
        new KeptMonth.Battery(
            row.getString("pack"),
            ZoneId.of(row.getString("timezone")),
            Chemistry.find(row.getString("chemistry")).orElseThrow(),
            row.getDouble("nominal_capacity_ah"),
            row.getString("software"),
            row.getString("settings_sha256")),
        new KeptCheck.Bank(
            row.getString("bank"),
            Instant.parse(row.getString("from_time")),
            Instant.parse(row.getString("to_time")),
            row.getString("headline"),
            Severity.valueOf(row.getString("severity")),
            draft.findings),
        new KeptMonth.Conditions(
            row.getLong("log_rows"), number(row, "cadence_s"), number(row, "resistance_pulse_s")),
        draft.figures,
        draft.counts,
        draft.told,
        draft.remarks,
        draft.inputs);
  }

  /** What is done with a row. */
  @FunctionalInterface
  private interface Take {
    void row(ResultSet row) throws SQLException;
  }

  private void each(String sql, Take take) throws SQLException {
    try (Statement statement = connection.createStatement();
        ResultSet rows = statement.executeQuery(sql)) {
      while (rows.next()) {
        take.row(rows);
      }
    }
  }

  private Draft draft(ResultSet row) throws SQLException {
    return draft(row.getLong("check_id"));
  }

  private Draft draft(long id) {
    return drafts.computeIfAbsent(id, unknown -> new Draft());
  }

  private CellDraft cell(ResultSet row) throws SQLException {
    return draft(row).cell(row.getInt("cell"));
  }

  private void sentence(ResultSet row) throws SQLException {
    boolean remark = row.getString("kind").equals(MonthWriter.REMARK);
    List<String> own = remark ? draft(row).remarks : cell(row).evidence;
    own.add(row.getString("text"));
  }

  private static InputFile input(ResultSet row) throws SQLException {
    return new InputFile(
        row.getString("file"),
        row.getString("sha256"),
        row.getLong("log_rows"),
        Instant.parse(row.getString("first_time")),
        Instant.parse(row.getString("last_time")));
  }

  private static Estimate estimate(ResultSet row) throws SQLException {
    double value = number(row, "value");
    if (Double.isNaN(value)) {
      return Estimate.unknown(row.getString("note"));
    }
    double high = number(row, "high");
    return new Estimate.Known(
        value, row.getDouble("low"), Double.isNaN(high) ? Double.POSITIVE_INFINITY : high);
  }

  /** A missing value is NaN. */
  private static double number(ResultSet row, String column) throws SQLException {
    double value = row.getDouble(column);
    return row.wasNull() ? Double.NaN : value;
  }

  /** What a later version keeps and this one doesn't know is passed over. */
  private static <K, V> void put(Map<K, V> map, Map<String, K> known, ResultSet row, V value)
      throws SQLException {
    K key = known.get(row.getString("quantity"));
    if (key != null) {
      map.put(key, value);
    }
  }

  private static <K> Map<String, K> byKey(K[] all, Function<K, String> key) {
    Map<String, K> map = new LinkedHashMap<>();
    Arrays.stream(all).forEach(one -> map.put(key.apply(one), one));
    return map;
  }
}
