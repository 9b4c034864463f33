package sagbook.logfile;

import java.io.IOException;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import sagbook.issue.InputProblem;

/**
 * The fields of one row as places in a character array, without blanks around them.
 *
 * <p>A row without quotes, or whose quotes each wrap a whole field, is split in place. Any other
 * row (a quote or line end inside a field) is split by Commons CSV, so that the rules for quotes
 * are that library's.
 */
final class Fields {
  /** More columns than this are no battery log. */
  static final int MOST_FIELDS = 4096;

  private static final int MOST_LINES_A_ROW = 100;

  private final char delimiter;
  private final CSVFormat format;
  private char[] text = new char[0];
  private int[] starts = new int[64];
  private int[] ends = new int[64];
  private int count;

  /** Column by name for lines that are JSON objects; empty when they are delimited. */
  private final Map<String, Integer> jsonColumns = new HashMap<>();

  Fields(char delimiter) {
    this.delimiter = delimiter;
    this.format =
        CSVFormat.DEFAULT
            .builder()
            .setDelimiter(delimiter)
            .setIgnoreEmptyLines(false)
            .setLenientEof(true)
            .setTrailingData(true)
            .get();
  }

  /** Fields of the kind that a dialect describes. */
  static Fields of(Dialect dialect) {
    Fields fields = new Fields(dialect.delimiter());
    if (dialect.isJson()) {
      for (String name : dialect.names()) {
        fields.jsonColumns.putIfAbsent(name, fields.jsonColumns.size());
      }
    }
    return fields;
  }

  int count() {
    return count;
  }

  char[] text() {
    return text;
  }

  int start(int field) {
    return starts[field];
  }

  int end(int field) {
    return ends[field];
  }

  boolean isEmpty(int field) {
    return starts[field] >= ends[field];
  }

  String field(int field) {
    return new String(text, starts[field], ends[field] - starts[field]);
  }

  String[] all() {
    String[] all = new String[count];
    for (int i = 0; i < count; i++) {
      all[i] = field(i);
    }
    return all;
  }

  /** Splits the current line, and the lines that belong to it when a quoted field spans lines. */
  void split(LineReader lines) throws IOException, InputProblem {
    if (!jsonColumns.isEmpty()) {
      splitJson(lines.buffer(), lines.start(), lines.end());
      return;
    }
    text = lines.buffer();
    if (!splitInPlace(lines.start(), lines.end())) {
      splitWithLibrary(lines);
    }
  }

  /** Splits one line that is at hand as a string. */
  void split(String line) throws IOException {
    if (!jsonColumns.isEmpty()) {
      splitJson(line.toCharArray(), 0, line.length());
      return;
    }
    text = line.toCharArray();
    if (!splitInPlace(0, text.length)) {
      adopt(line);
    }
  }

  /** False when the row needs the full rules of quoting. */
  private boolean splitInPlace(int from, int to) {
    count = 0;
    char[] c = text;
    int at = from;
    while (true) {
      int start = at;
      while (start < to && isBlank(c[start])) {
        start++;
      }
      int stop;
      if (start < to && c[start] == '"') {
        int close = start + 1;
        while (close < to && c[close] != '"') {
          close++;
        }
        int after = close + 1;
        while (after < to && isBlank(c[after])) {
          after++;
        }
        if (close >= to || (after < to && c[after] != delimiter)) {
          return false;
        }
        add(start + 1, close);
        stop = after;
      } else {
        stop = start;
        while (stop < to && c[stop] != delimiter) {
          stop++;
        }
        add(start, stop);
      }
      if (stop >= to) {
        return true;
      }
      at = stop + 1;
    }
  }

  private boolean isBlank(char c) {
    return (c == ' ' || c == '\t' || c == '\u00a0') && c != delimiter;
  }

  private void add(int start, int end) {
    if (count == starts.length) {
      starts = Arrays.copyOf(starts, count * 2);
      ends = Arrays.copyOf(ends, count * 2);
    }
    int last = end;
    while (last > start && isBlank(text[last - 1])) {
      last--;
    }
    starts[count] = start;
    ends[count] = last;
    count++;
  }

  private void splitWithLibrary(LineReader lines) throws IOException, InputProblem {
    StringBuilder record = new StringBuilder(lines.line());
    int taken = 1;
    String ending = lines.ending();
    while (quotes(record) % 2 != 0 && taken < MOST_LINES_A_ROW && lines.next()) {
      record.append(ending).append(lines.line());
      ending = lines.ending();
      taken++;
    }
    adopt(record.toString());
  }

  private static int quotes(CharSequence text) {
    int quotes = 0;
    for (int i = 0; i < text.length(); i++) {
      quotes += text.charAt(i) == '"' ? 1 : 0;
    }
    return quotes;
  }

  private void splitJson(char[] line, int from, int to) throws IOException {
    Map<String, String> values = JsonFields.read(line, from, to);
    String[] row = new String[values.isEmpty() ? 0 : jsonColumns.size()];
    Arrays.fill(row, "");
    values.forEach(
        (name, value) -> {
          Integer column = jsonColumns.get(name);
          if (column != null) {
            row[column] = value;
          }
        });
    adopt(row);
  }

  private void adopt(String row) throws IOException {
    try (CSVParser parser = CSVParser.parse(row, format)) {
      CSVRecord record = parser.iterator().next();
      adopt(record.values());
    }
  }

  private void adopt(String[] values) {
    count = 0;
    text = String.join("", values).toCharArray();
    int at = 0;
    for (String value : values) {
      add(at, at + value.length());
      at += value.length();
    }
  }
}
