package sagbook.report.season;

import java.time.YearMonth;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.SortedMap;
import java.util.function.Function;
import sagbook.record.CheckResult;
import sagbook.record.Quantity;
import sagbook.record.ResultTables;
import tech.tablesaw.api.StringColumn;
import tech.tablesaw.api.Table;

/** The months' tables below one another, each row with its month. */
public final class SeasonTables {
  private SeasonTables() {}

  /**
   * The tables by file name: {@code estimates.csv} has one row an estimate, {@code cells.csv} one a
   * cell, {@code banks.csv} one a bank, each of them a month.
   *
   * @param months at least one
   */
  public static Map<String, Table> of(SortedMap<YearMonth, CheckResult> months) {
    Map<String, Table> tables = new LinkedHashMap<>();
    tables.put("estimates.csv", below(months, ResultTables::estimates));
    tables.put("cells.csv", below(months, SeasonTables::cells));
    tables.put("banks.csv", below(months, ResultTables::banks));
    return tables;
  }

  /** What is told of a cell besides the estimates, which have a table of their own. */
  private static Table cells(CheckResult result) {
    Table table = ResultTables.cells(result);
    for (Quantity quantity : Quantity.values()) {
      table.removeColumns(quantity.key(), quantity.key() + "_low", quantity.key() + "_high");
    }
    return table;
  }

  private static Table below(
      SortedMap<YearMonth, CheckResult> months, Function<CheckResult, Table> of) {
    if (months.isEmpty()) {
      throw new IllegalArgumentException("a season needs a month");
    }
    Table all = null;
    for (Map.Entry<YearMonth, CheckResult> month : months.entrySet()) {
      Table table = of.apply(month.getValue());
      StringColumn label = StringColumn.create("month");
      for (int row = 0; row < table.rowCount(); row++) {
        label.append(month.getKey().toString());
      }
      table.insertColumn(0, label);
      all = all == null ? table : all.append(table);
    }
    return java.util.Objects.requireNonNull(all);
  }
}
