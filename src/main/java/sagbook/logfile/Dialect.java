package sagbook.logfile;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import sagbook.issue.InputProblem;
import sagbook.model.LogMapping;

/**
 * How a delimited text is written.
 *
 * @param delimiter between fields; an opening brace when each line is a JSON object
 * @param decimalComma whether 3,3 means three point three
 * @param fieldCount fields in most rows
 * @param headerLine line of the column names, from 1; 0 when there is none
 * @param firstDataLine first line that may be a row of values, from 1
 * @param names of the columns
 * @param units a line of units below the names, empty when there is none
 */
record Dialect(
    char delimiter,
    boolean decimalComma,
    int fieldCount,
    int headerLine,
    int firstDataLine,
    List<String> names,
    List<String> units) {

  private static final char JSON = '{';
  private static final String JSON_EXAMPLE = "{\"time\": 1773475200, \"cell1\": 3.3}";
  private static final List<Character> DELIMITERS = List.of('\t', ';', '|', ',');
  private static final Pattern COMMA_NUMBER = Pattern.compile("[-+]?[0-9]+,[0-9]+");
  private static final Pattern POINT_NUMBER = Pattern.compile("[-+]?[0-9]*\\.[0-9]+");
  private static final Pattern GROUPED_COMMA =
      Pattern.compile("[-+]?[0-9]{1,3}(\\.[0-9]{3})+,[0-9]+");
  private static final Pattern GROUPED_POINT =
      Pattern.compile("[-+]?[0-9]{1,3}(,[0-9]{3})+\\.[0-9]+");

  Dialect {
    names = List.copyOf(names);
    units = List.copyOf(units);
  }

  static Dialect find(LogSource source, Head head, Optional<LogMapping> mapping)
      throws InputProblem {
    try {
      if (isJson(head.lines())) {
        return json(source, head.lines());
      }
      char delimiter =
          mapping.flatMap(LogMapping::delimiter).orElseGet(() -> delimiter(head.lines()));
      List<String[]> rows = split(head, delimiter);
      int usual = usualCount(rows);
      refuseTooWide(source, usual);
      boolean comma =
          mapping.flatMap(LogMapping::decimalComma).orElseGet(() -> hasDecimalComma(rows));
      return withHeader(source, mapping, delimiter, comma, usual, rows);
    } catch (IOException e) {
      throw Head.unreadable(source, e);
    }
  }

  /** Whether each line is a JSON object. */
  boolean isJson() {
    return delimiter == JSON;
  }

  private static boolean isJson(List<String> lines) {
    for (String line : lines) {
      if (!line.isBlank()) {
        return JsonFields.looksLikeObject(line);
      }
    }
    return false;
  }

  private static Dialect json(LogSource source, List<String> lines)
      throws IOException, InputProblem {
    Set<String> names = new LinkedHashSet<>();
    for (String line : lines) {
      names.addAll(JsonFields.read(line.toCharArray(), 0, line.length()).keySet());
    }
    if (names.isEmpty()) {
      throw InputProblem.input(
          "problem.log.json", InputProblem.quoted(source.name()), JSON_EXAMPLE);
    }
    refuseTooWide(source, names.size());
    return new Dialect(JSON, false, names.size(), 0, 1, List.copyOf(names), List.of());
  }

  private static void refuseTooWide(LogSource source, int columns) throws InputProblem {
    if (columns > Fields.MOST_FIELDS) {
      throw InputProblem.input(
          "problem.log.wide", InputProblem.quoted(source.name()), Integer.toString(columns));
    }
  }

  private static Dialect withHeader(
      LogSource source,
      Optional<LogMapping> mapping,
      char delimiter,
      boolean comma,
      int usual,
      List<String[]> rows)
      throws InputProblem {
    Optional<Integer> told = mapping.flatMap(LogMapping::headerLine);
    HeaderFinder finder = new HeaderFinder(rows, usual, new NumberReader(comma));
    int header = told.isPresent() ? told.get() - 1 : finder.headerIndex();
    if (header < 0) {
      if (told.isEmpty() && finder.firstDataIndex() < 0) {
        throw InputProblem.input("problem.log.no-rows", InputProblem.quoted(source.name()));
      }
      List<String> numbered = new ArrayList<>();
      for (int i = 1; i <= usual; i++) {
        numbered.add("column " + i);
      }
      int first = told.isPresent() ? 1 : finder.firstDataIndex() + 1;
      return new Dialect(delimiter, comma, usual, 0, first, numbered, List.of());
    }
    if (header >= rows.size()) {
      throw InputProblem.usage(
          "problem.log.header", InputProblem.quoted(source.name()), Integer.toString(header + 1));
    }
    List<String> names = HeaderFinder.withoutCommentSign(rows.get(header));
    List<String> units = finder.unitsBelow(header);
    int first = header + 2 + (units.isEmpty() ? 0 : 1);
    return new Dialect(delimiter, comma, usual, header + 1, first, names, units);
  }

  private static char delimiter(List<String> lines) {
    char best = ',';
    double bestShare = 0;
    for (char candidate : DELIMITERS) {
      double share = consistency(lines, candidate);
      if (share > bestShare + 0.25) {
        best = candidate;
        bestShare = share;
      }
    }
    return best;
  }

  /** Share of the lines that split into the usual number of fields, 0 when that is one. */
  private static double consistency(List<String> lines, char delimiter) {
    Map<Integer, Integer> counts = new HashMap<>();
    int all = 0;
    for (String line : lines) {
      if (!line.isBlank()) {
        counts.merge(occurrences(line, delimiter), 1, Integer::sum);
        all++;
      }
    }
    int most = 0;
    for (Map.Entry<Integer, Integer> entry : counts.entrySet()) {
      most = entry.getKey() > 0 ? Math.max(most, entry.getValue()) : most;
    }
    return all == 0 ? 0 : (double) most / all;
  }

  private static int occurrences(String line, char delimiter) {
    int count = 0;
    boolean quoted = false;
    for (int i = 0; i < line.length(); i++) {
      char c = line.charAt(i);
      quoted ^= c == '"';
      count += c == delimiter && !quoted ? 1 : 0;
    }
    return count;
  }

  /** Rows by physical line; a line that belongs to the row above it has no fields. */
  private static List<String[]> split(Head head, char delimiter) throws IOException, InputProblem {
    Fields fields = new Fields(delimiter);
    List<String[]> rows = new ArrayList<>();
    LineReader lines = head.reopen();
    while (lines.next()) {
      fields.split(lines);
      rows.add(fields.all());
      while (rows.size() < lines.number()) {
        rows.add(new String[0]);
      }
    }
    return rows;
  }

  private static int usualCount(List<String[]> rows) {
    Map<Integer, Integer> counts = new HashMap<>();
    for (String[] row : rows) {
      if (row.length > 1) {
        counts.merge(row.length, 1, Integer::sum);
      }
    }
    int usual = 1;
    int most = 0;
    for (Map.Entry<Integer, Integer> entry : counts.entrySet()) {
      boolean better =
          entry.getValue() > most || (entry.getValue() == most && entry.getKey() > usual);
      if (better) {
        usual = entry.getKey();
        most = entry.getValue();
      }
    }
    return usual;
  }

  private static boolean hasDecimalComma(List<String[]> rows) {
    int comma = 0;
    int point = 0;
    for (String[] row : rows) {
      for (String field : row) {
        if (field.length() > 24) {
          continue;
        }
        comma += COMMA_NUMBER.matcher(field).matches() ? 1 : 0;
        comma += GROUPED_COMMA.matcher(field).matches() ? 1 : 0;
        point += POINT_NUMBER.matcher(field).matches() ? 1 : 0;
        point += GROUPED_POINT.matcher(field).matches() ? 1 : 0;
      }
    }
    return comma > point;
  }
}
