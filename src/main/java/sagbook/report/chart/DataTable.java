package sagbook.report.chart;

import java.util.List;

/**
 * The numbers behind a plate, as text.
 *
 * @param headers one a column, with its unit
 * @param rows as many texts as headers each
 */
public record DataTable(List<String> headers, List<List<String>> rows) {
  public DataTable {
    headers = List.copyOf(headers);
    rows = rows.stream().map(List::copyOf).toList();
    for (List<String> row : rows) {
      if (row.size() != headers.size()) {
        throw new IllegalArgumentException(
            "a row has " + row.size() + " cells for " + headers.size() + " headers");
      }
    }
  }

  /** The same in two parts that stand abreast, the first no shorter. */
  public List<DataTable> halves() {
    int half = (rows.size() + 1) / 2;
    return List.of(
        new DataTable(headers, rows.subList(0, half)),
        new DataTable(headers, rows.subList(half, rows.size())));
  }
}
