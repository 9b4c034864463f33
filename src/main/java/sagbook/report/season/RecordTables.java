package sagbook.report.season;

import java.time.YearMonth;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import sagbook.model.Estimate;
import sagbook.record.BankFigure;
import sagbook.record.CellReading;
import sagbook.record.DiaryEvent;
import sagbook.record.KeptCheck;
import sagbook.record.KeptMonth;
import sagbook.record.Quantity;
import sagbook.record.ResultsJson;
import sagbook.record.Rounded;
import tech.tablesaw.api.DoubleColumn;
import tech.tablesaw.api.IntColumn;
import tech.tablesaw.api.LongColumn;
import tech.tablesaw.api.StringColumn;
import tech.tablesaw.api.Table;

/** A record as tidy tables, under the same names and columns as {@link SeasonTables}. */
public final class RecordTables {
  private RecordTables() {}

  /**
   * The tables by file name: {@code estimates.csv} has one row an estimate, {@code cells.csv} one a
   * cell, {@code banks.csv} one a bank, each of them a month; {@code diary.csv} one an event.
   */
  public static Map<String, Table> of(List<KeptMonth> months, List<DiaryEvent> diary) {
    Map<String, Table> tables = new LinkedHashMap<>();
    tables.put("estimates.csv", estimates(months));
    tables.put("cells.csv", cells(months));
    tables.put("banks.csv", banks(months));
    tables.put("diary.csv", diary(diary));
    return tables;
  }

  private static Table estimates(List<KeptMonth> months) {
    Table table =
        Table.create(
            "estimates",
            StringColumn.create("month"),
            StringColumn.create("bank"),
            StringColumn.create("from"),
            StringColumn.create("to"),
            IntColumn.create("cell"),
            StringColumn.create("quantity"),
            StringColumn.create("unit"),
            DoubleColumn.create("value"),
            DoubleColumn.create("low"),
            DoubleColumn.create("high"),
            StringColumn.create("note"));
    for (KeptMonth month : months) {
      for (KeptCheck.Cell cell : month.bank().cells()) {
        for (Quantity quantity : Quantity.values()) {
          place(table, month);
          table.intColumn("cell").append(cell.cell());
          table.stringColumn("quantity").append(quantity.key());
          table.stringColumn("unit").append(quantity.unit());
          Estimate estimate = cell.estimate(quantity);
          estimate(table, "value", "low", "high", estimate);
          table.stringColumn("note").append(KeptCheck.note(estimate));
        }
      }
    }
    return table;
  }

  private static Table cells(List<KeptMonth> months) {
    Table table =
        Table.create(
            "cells",
            StringColumn.create("month"),
            StringColumn.create("bank"),
            StringColumn.create("from"),
            StringColumn.create("to"),
            IntColumn.create("cell"),
            IntColumn.create("rank"),
            StringColumn.create("finding"),
            StringColumn.create("action"));
    for (CellReading reading : CellReading.values()) {
      table.addColumns(DoubleColumn.create(reading.key()));
    }
    for (KeptMonth month : months) {
      for (KeptCheck.Cell cell : month.bank().cells()) {
        KeptMonth.Cell told = month.cells().get(cell.cell() - 1);
        place(table, month);
        table.intColumn("cell").append(cell.cell());
        table.intColumn("rank").append(cell.rank());
        table.stringColumn("finding").append(cell.finding().words());
        table.stringColumn("action").append(told.action());
        for (CellReading reading : CellReading.values()) {
          number(table, reading.key(), told.readings().get(reading));
        }
      }
    }
    return table;
  }

  private static Table banks(List<KeptMonth> months) {
    Table table =
        Table.create(
            "banks",
            StringColumn.create("month"),
            StringColumn.create("bank"),
            StringColumn.create("chemistry"),
            StringColumn.create("from"),
            StringColumn.create("to"),
            StringColumn.create("severity"),
            StringColumn.create("headline"),
            IntColumn.create("series_cells"),
            LongColumn.create("rows"),
            DoubleColumn.create("cadence_s"),
            DoubleColumn.create("resistance_pulse_s"));
    for (BankFigure.Counted count : BankFigure.Counted.values()) {
      table.addColumns(DoubleColumn.create(count.key()));
    }
    for (BankFigure.Estimated figure : BankFigure.Estimated.values()) {
      table.addColumns(
          DoubleColumn.create(figure.key()),
          DoubleColumn.create(figure.key() + "_low"),
          DoubleColumn.create(figure.key() + "_high"));
    }
    months.forEach(month -> bank(table, month));
    return table;
  }

  private static void bank(Table table, KeptMonth month) {
    place(table, month);
    table.stringColumn("chemistry").append(month.battery().chemistry().key());
    table.stringColumn("severity").append(ResultsJson.words(month.bank().severity()));
    table.stringColumn("headline").append(month.bank().headline());
    table.intColumn("series_cells").append(month.cells().size());
    table.longColumn("rows").append(month.conditions().rows());
    number(table, "cadence_s", month.conditions().cadenceS());
    number(table, "resistance_pulse_s", month.conditions().resistancePulseS());
    for (BankFigure.Counted count : BankFigure.Counted.values()) {
      number(table, count.key(), month.counts().get(count));
    }
    for (BankFigure.Estimated figure : BankFigure.Estimated.values()) {
      String key = figure.key();
      estimate(table, key, key + "_low", key + "_high", month.figure(figure));
    }
  }

  private static Table diary(List<DiaryEvent> diary) {
    Table table =
        Table.create(
            "diary",
            StringColumn.create("day"),
            StringColumn.create("kind"),
            StringColumn.create("bank"),
            IntColumn.create("cell"),
            StringColumn.create("mark"),
            StringColumn.create("text"));
    for (DiaryEvent event : diary) {
      table.stringColumn("day").append(event.day().toString());
      table.stringColumn("kind").append(event.kind().words());
      table.stringColumn("bank").append(event.bank());
      if (event.cell() > 0) {
        table.intColumn("cell").append(event.cell());
      } else {
        table.intColumn("cell").appendMissing();
      }
      table.stringColumn("mark").append(event.mark());
      table.stringColumn("text").append(event.text());
    }
    return table;
  }

  private static void place(Table table, KeptMonth month) {
    table
        .stringColumn("month")
        .append(YearMonth.from(month.middle().atZone(month.battery().zone())).toString());
    table.stringColumn("bank").append(month.bank().bank());
    table.stringColumn("from").append(month.bank().from().toString());
    table.stringColumn("to").append(month.bank().to().toString());
  }

  private static void estimate(
      Table table, String value, String low, String high, Estimate estimate) {
    if (estimate instanceof Estimate.Known known) {
      table.doubleColumn(value).append(Rounded.of(known.value(), known).doubleValue());
      table.doubleColumn(low).append(Rounded.of(known.low(), known).doubleValue());
      if (known.isOpen()) {
        table.doubleColumn(high).appendMissing();
      } else {
        table.doubleColumn(high).append(Rounded.of(known.high(), known).doubleValue());
      }
    } else {
      List.of(value, low, high).forEach(name -> table.doubleColumn(name).appendMissing());
    }
  }

  private static void number(Table table, String name, @Nullable Double value) {
    if (value != null && Double.isFinite(value)) {
      table.doubleColumn(name).append(Rounded.of(value).doubleValue());
    } else {
      table.doubleColumn(name).appendMissing();
    }
  }
}
