package sagbook.record.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import sagbook.model.Estimate;
import sagbook.record.BankFigure;
import sagbook.record.CellReading;
import sagbook.record.InputFile;
import sagbook.record.KeptCheck;
import sagbook.record.KeptMonth;
import sagbook.record.Quantity;

/** Writes a bank's month into the tables. */
final class MonthWriter {
  static final String EVIDENCE = "evidence";
  static final String REMARK = "remark";

  private final Connection connection;

  MonthWriter(Connection connection) {
    this.connection = connection;
  }

  /** Writes a month instead of those that cover much of the same time. */
  void replace(KeptMonth month) throws SQLException {
    for (long id : replaced(month.bank())) {
      try (PreparedStatement delete =
          connection.prepareStatement("DELETE FROM bank_check WHERE id = ?")) {
        delete.setLong(1, id);
        delete.executeUpdate();
      }
    }
    write(month, Schema.number(connection, "SELECT coalesce(max(id), 0) + 1 FROM bank_check"));
  }

  private List<Long> replaced(KeptCheck.Bank bank) throws SQLException {
    List<Long> ids = new ArrayList<>();
    try (PreparedStatement select =
        connection.prepareStatement(
            "SELECT id, from_time, to_time FROM bank_check WHERE bank = ?")) {
      select.setString(1, bank.bank());
      try (ResultSet row = select.executeQuery()) {
        while (row.next()) {
          Instant from = Instant.parse(row.getString("from_time"));
          Instant to = Instant.parse(row.getString("to_time"));
          if (mostlySame(from, to, bank.from(), bank.to())) {
            ids.add(row.getLong("id"));
          }
        }
      }
    }
    return ids;
  }

  /** Whether what two periods share is more than half of the shorter one. */
  static boolean mostlySame(Instant from, Instant to, Instant otherFrom, Instant otherTo) {
    Instant start = from.isAfter(otherFrom) ? from : otherFrom;
    Instant end = to.isBefore(otherTo) ? to : otherTo;
    double shared = Duration.between(start, end).toMillis();
    double shorter =
        Math.min(
            Duration.between(from, to).toMillis(), Duration.between(otherFrom, otherTo).toMillis());
    return shared > shorter / 2 || (from.equals(otherFrom) && to.equals(otherTo));
  }

  private void write(KeptMonth month, long id) throws SQLException {
    KeptMonth.Battery battery = month.battery();
    KeptCheck.Bank bank = month.bank();
    try (Row row = new Row(connection, "bank_check", 15)) {
      row.add(
          id,
          battery.pack(),
          battery.zone().getId(),
          battery.chemistry().key(),
          battery.nominalCapacityAh(),
          battery.software(),
          battery.settingsSha256(),
          bank.bank(),
          bank.from().toString(),
          bank.to().toString(),
          bank.headline(),
          bank.severity().name(),
          month.conditions().rows(),
          month.conditions().cadenceS(),
          month.conditions().resistancePulseS());
    }
    figures(month, id);
    cells(month, id);
    sentences(month, id);
    try (Row row = new Row(connection, "input_file", 7)) {
      int place = 0;
      for (InputFile input : month.inputs()) {
        row.add(
            id,
            place++,
            input.file(),
            input.sha256(),
            input.rows(),
            input.first().toString(),
            input.last().toString());
      }
    }
  }

  private void figures(KeptMonth month, long id) throws SQLException {
    try (Row row = new Row(connection, "bank_estimate", 6)) {
      for (BankFigure.Estimated figure : BankFigure.Estimated.values()) {
        row.add(month.figure(figure), id, figure.key());
      }
    }
    try (Row row = new Row(connection, "bank_count", 3)) {
      for (BankFigure.Counted count : BankFigure.Counted.values()) {
        if (month.counts().containsKey(count)) {
          row.add(id, count.key(), month.counts().get(count));
        }
      }
    }
  }

  private void cells(KeptMonth month, long id) throws SQLException {
    try (Row finding = new Row(connection, "cell_finding", 5);
        Row estimate = new Row(connection, "cell_estimate", 7);
        Row reading = new Row(connection, "cell_reading", 4)) {
      for (KeptCheck.Cell cell : month.bank().cells()) {
        KeptMonth.Cell more = month.cells().get(cell.cell() - 1);
        finding.add(id, cell.cell(), cell.rank(), cell.finding().name(), more.action());
        for (Quantity quantity : Quantity.values()) {
          Estimate value = cell.estimate(quantity);
          estimate.add(value, id, cell.cell(), quantity.key());
        }
        for (CellReading kind : CellReading.values()) {
          Map<CellReading, Double> readings = more.readings();
          if (readings.containsKey(kind)) {
            reading.add(id, cell.cell(), kind.key(), readings.get(kind));
          }
        }
      }
    }
  }

  private void sentences(KeptMonth month, long id) throws SQLException {
    try (Row row = new Row(connection, "sentence", 5)) {
      sentences(row, id, 0, REMARK, month.remarks());
      for (int cell = 1; cell <= month.cells().size(); cell++) {
        sentences(row, id, cell, EVIDENCE, month.cells().get(cell - 1).evidence());
      }
    }
  }

  private static void sentences(Row row, long id, int cell, String kind, List<String> sentences)
      throws SQLException {
    int place = 0;
    for (String sentence : sentences) {
      row.add(id, cell, kind, place++, sentence);
    }
  }
}
