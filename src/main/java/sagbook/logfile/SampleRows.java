package sagbook.logfile;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import sagbook.issue.InputProblem;

/** The first rows of values of a file, for working out what its columns hold. */
record SampleRows(List<String[]> rows, NumberReader numbers) {
  static SampleRows of(Head head, Dialect dialect) throws IOException, InputProblem {
    Fields fields = Fields.of(dialect);
    List<String[]> rows = new ArrayList<>();
    LineReader lines = head.reopen();
    while (lines.next()) {
      if (lines.number() < dialect.firstDataLine()) {
        continue;
      }
      fields.split(lines);
      if (fields.count() == dialect.fieldCount() || fields.count() == dialect.names().size()) {
        String[] row = fields.all();
        if (!List.of(row).equals(dialect.names())) {
          rows.add(row);
        }
      }
    }
    return new SampleRows(rows, new NumberReader(dialect.decimalComma()));
  }

  /** The numbers of a column, sorted. */
  double[] sorted(int field) {
    return rows.stream()
        .filter(row -> field < row.length)
        .mapToDouble(row -> numbers.read(row[field]))
        .filter(value -> !Double.isNaN(value))
        .sorted()
        .toArray();
  }

  /** NaN when the column holds no numbers. */
  double median(int field) {
    double[] sorted = sorted(field);
    return sorted.length == 0 ? Double.NaN : sorted[sorted.length / 2];
  }

  /** Largest size of a number in the column; NaN when it holds none. */
  double largest(int field) {
    double[] sorted = sorted(field);
    return Arrays.stream(sorted).map(Math::abs).max().orElse(Double.NaN);
  }

  /** The unit written behind the numbers of a column, empty when there is none. */
  String unitBehind(int field) {
    for (String[] row : rows) {
      if (field < row.length && !row[field].isEmpty()) {
        return NumberReader.unitBehind(row[field]);
      }
    }
    return "";
  }
}
