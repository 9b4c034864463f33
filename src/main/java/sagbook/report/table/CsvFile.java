package sagbook.report.table;

import java.io.IOException;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.apache.commons.csv.QuoteMode;
import sagbook.report.words.OutsideText;
import tech.tablesaw.api.ColumnType;
import tech.tablesaw.api.Table;
import tech.tablesaw.columns.Column;

/** A table as the text of a CSV file: comma, decimal point, line feed, missing values empty. */
public final class CsvFile {
  private static final CSVFormat FORMAT =
      CSVFormat.RFC4180.builder().setRecordSeparator('\n').setQuoteMode(QuoteMode.MINIMAL).get();

  private CsvFile() {}

  public static String text(Table table) {
    StringBuilder out = new StringBuilder();
    try (CSVPrinter printer = new CSVPrinter(out, FORMAT)) {
      printer.printRecord(table.columnNames());
      for (int row = 0; row < table.rowCount(); row++) {
        List<String> cells = new ArrayList<>();
        for (Column<?> column : table.columns()) {
          cells.add(cell(column, row));
        }
        printer.printRecord(cells);
      }
    } catch (IOException e) {
      throw new IllegalStateException("a string builder does not fail", e);
    }
    return out.toString();
  }

  private static String cell(Column<?> column, int row) {
    if (column.isMissing(row)) {
      return "";
    }
    if (column.type().equals(ColumnType.DOUBLE)) {
      return BigDecimal.valueOf((Double) column.get(row)).stripTrailingZeros().toPlainString();
    }
    return column.type().equals(ColumnType.STRING)
        ? harmless((String) column.get(row))
        : String.valueOf(column.get(row));
  }

  /**
   * Text that no spreadsheet takes for a formula: one that begins like a formula gets an apostrophe
   * before it (OWASP, CSV Injection).
   */
  static String harmless(String text) {
    String shown = OutsideText.shown(text);
    String start = shown.stripLeading();
    boolean formula = !start.isEmpty() && "=+-@＝＋－＠".indexOf(start.charAt(0)) >= 0;
    return formula ? "'" + shown : shown;
  }
}
