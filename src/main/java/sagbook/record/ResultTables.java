package sagbook.record;

import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import sagbook.model.Estimate;
import sagbook.verdict.CellVerdict;
import sagbook.whatif.Outcome;
import tech.tablesaw.api.DoubleColumn;
import tech.tablesaw.api.IntColumn;
import tech.tablesaw.api.LongColumn;
import tech.tablesaw.api.StringColumn;
import tech.tablesaw.api.Table;

/**
 * The results as tables, one row a cell, a bank, an input or an estimate. An estimate that can't be
 * had is a missing value; {@link #estimates} holds its reason.
 */
public final class ResultTables {
  private ResultTables() {}

  /** One row a cell: every estimate with its interval, every reading. */
  public static Table cells(CheckResult result) {
    Table table = Table.create("cells");
    place(table);
    table.addColumns(
        IntColumn.create("rank"), StringColumn.create("finding"), StringColumn.create("action"));
    for (Quantity quantity : Quantity.values()) {
      interval(table, quantity.key());
    }
    for (CellReading reading : CellReading.values()) {
      table.addColumns(DoubleColumn.create(reading.key()));
    }
    for (BankResult bank : result.banks()) {
      for (CellVerdict cell : bank.verdict().cells()) {
        appendPlace(table, bank, cell);
        table.intColumn("rank").append(cell.rank());
        table.stringColumn("finding").append(cell.finding().words());
        table.stringColumn("action").append(cell.action());
        for (Quantity quantity : Quantity.values()) {
          appendInterval(table, quantity.key(), quantity.of(cell));
        }
        for (CellReading reading : CellReading.values()) {
          append(table, reading.key(), reading.of(bank.evidence().stress(), cell.cell()));
        }
      }
    }
    return table;
  }

  /** One row an estimate of a cell, with its unit or the reason why there is none. */
  public static Table estimates(CheckResult result) {
    Table table = Table.create("estimates");
    place(table);
    table.addColumns(
        StringColumn.create("quantity"),
        StringColumn.create("unit"),
        DoubleColumn.create("value"),
        DoubleColumn.create("low"),
        DoubleColumn.create("high"),
        StringColumn.create("note"));
    for (BankResult bank : result.banks()) {
      for (CellVerdict cell : bank.verdict().cells()) {
        for (Quantity quantity : Quantity.values()) {
          appendPlace(table, bank, cell);
          Estimate estimate = quantity.of(cell);
          table.stringColumn("quantity").append(quantity.key());
          table.stringColumn("unit").append(quantity.unit());
          append(table, "value", end(estimate, Estimate.Known::value));
          append(table, "low", end(estimate, Estimate.Known::low));
          append(table, "high", end(estimate, Estimate.Known::high));
          table.stringColumn("note").append(KeptCheck.note(estimate));
        }
      }
    }
    return table;
  }

  /** One row a bank. */
  public static Table banks(CheckResult result) {
    Table table = Table.create("banks");
    text(table, "bank", result, BankResult::bank);
    text(table, "chemistry", result, b -> b.chemistry().key());
    text(table, "from", result, b -> b.from().toString());
    text(table, "to", result, b -> b.to().toString());
    text(table, "severity", result, b -> ResultsJson.words(b.verdict().severity()));
    text(table, "headline", result, b -> b.verdict().headline());
    number(table, "series_cells", result, BankResult::seriesCells);
    number(table, "rows", result, b -> b.evidence().rows());
    number(table, "cadence_s", result, b -> b.evidence().cadenceS());
    number(table, "resistance_pulse_s", result, b -> b.estimates().resistancePulseS());
    for (BankFigure.Counted counted : BankFigure.Counted.values()) {
      number(table, counted.key(), result, counted::of);
    }
    for (BankFigure.Estimated estimated : BankFigure.Estimated.values()) {
      Table columns = Table.create();
      interval(columns, estimated.key());
      result.banks().forEach(b -> appendInterval(columns, estimated.key(), estimated.of(b)));
      columns.columns().forEach(table::addColumns);
    }
    return table;
  }

  /** One row a change to a string: rebalancing, mending joints, replacing any one or two cells. */
  public static Table whatIf(CheckResult result) {
    Table table =
        Table.create(
            "what_if",
            StringColumn.create("bank"),
            StringColumn.create("change"),
            StringColumn.create("cells"));
    for (Gain gain : Gain.values()) {
      interval(table, gain.key());
    }
    for (BankResult bank : result.banks()) {
      for (Outcome outcome : bank.prospect().all()) {
        table.stringColumn("bank").append(bank.bank());
        table.stringColumn("change").append(outcome.change().kind().words());
        table.stringColumn("cells").append(cells(outcome));
        for (Gain gain : Gain.values()) {
          appendInterval(table, gain.key(), gain.of(outcome));
        }
      }
    }
    return table;
  }

  private static String cells(Outcome outcome) {
    return String.join(" ", outcome.change().cells().stream().map(String::valueOf).toList());
  }

  /** One row an input file. */
  public static Table inputs(CheckResult result) {
    StringColumn file = StringColumn.create("file");
    StringColumn sha256 = StringColumn.create("sha256");
    LongColumn rows = LongColumn.create("rows");
    StringColumn first = StringColumn.create("first");
    StringColumn last = StringColumn.create("last");
    for (InputFile input : result.inputs()) {
      file.append(input.file());
      sha256.append(input.sha256());
      rows.append(input.rows());
      first.append(input.first().toString());
      last.append(input.last().toString());
    }
    return Table.create("inputs", file, sha256, rows, first, last);
  }

  private static void place(Table table) {
    table.addColumns(
        StringColumn.create("bank"),
        StringColumn.create("from"),
        StringColumn.create("to"),
        IntColumn.create("cell"));
  }

  private static void appendPlace(Table table, BankResult bank, CellVerdict cell) {
    table.stringColumn("bank").append(bank.bank());
    table.stringColumn("from").append(bank.from().toString());
    table.stringColumn("to").append(bank.to().toString());
    table.intColumn("cell").append(cell.cell());
  }

  private static void text(
      Table table, String name, CheckResult result, Function<BankResult, String> of) {
    StringColumn column = StringColumn.create(name);
    result.banks().forEach(bank -> column.append(of.apply(bank)));
    table.addColumns(column);
  }

  private static void number(
      Table table, String name, CheckResult result, ToDoubleFunction<BankResult> of) {
    // Filled before it is added: a table with rows pads an empty column.
    Table column = Table.create(DoubleColumn.create(name));
    result.banks().forEach(bank -> append(column, name, of.applyAsDouble(bank)));
    table.addColumns(column.column(0));
  }

  private static void interval(Table table, String name) {
    table.addColumns(
        DoubleColumn.create(name),
        DoubleColumn.create(name + "_low"),
        DoubleColumn.create(name + "_high"));
  }

  private static void appendInterval(Table table, String name, Estimate estimate) {
    append(table, name, end(estimate, Estimate.Known::value));
    append(table, name + "_low", end(estimate, Estimate.Known::low));
    append(table, name + "_high", end(estimate, Estimate.Known::high));
  }

  private static double end(Estimate estimate, ToDoubleFunction<Estimate.Known> which) {
    return estimate instanceof Estimate.Known known && Double.isFinite(which.applyAsDouble(known))
        ? Rounded.of(which.applyAsDouble(known), known).doubleValue()
        : Double.NaN;
  }

  private static void append(Table table, String name, double value) {
    if (Double.isFinite(value)) {
      table.doubleColumn(name).append(value);
    } else {
      table.doubleColumn(name).appendMissing();
    }
  }
}
