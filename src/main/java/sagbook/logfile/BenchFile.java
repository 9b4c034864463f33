package sagbook.logfile;

import java.io.IOException;
import java.nio.charset.MalformedInputException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import sagbook.issue.InputProblem;
import sagbook.model.BenchLog;
import sagbook.wording.Words;

/**
 * Reads the bench test of a single cell: delimited text with a header line that names time (s),
 * voltage (V or mV) and current (A or mA); other columns are left alone.
 */
public final class BenchFile {
  private static final String HEADER = "time_s,voltage_v,current_a";

  private final Path file;
  private final String text;

  private BenchFile(Path file, String text) {
    this.file = file;
    this.text = text;
  }

  /** Reads one test; the file's name without its ending is the cell's name. */
  public static BenchLog read(Path file) throws InputProblem {
    try {
      return new BenchFile(file, Files.readString(file)).log();
    } catch (MalformedInputException e) {
      throw InputProblem.input(e, "problem.bench.text", quoted(file), HEADER);
    } catch (IOException e) {
      throw InputProblem.input(e, "problem.bench.read", quoted(file));
    }
  }

  private BenchLog log() throws InputProblem, IOException {
    String header = text.lines().findFirst().orElse("");
    char delimiter = header.indexOf(';') >= 0 ? ';' : header.indexOf('\t') >= 0 ? '\t' : ',';
    CSVFormat format =
        CSVFormat.DEFAULT
            .builder()
            .setDelimiter(delimiter)
            .setHeader()
            .setSkipHeaderRecord(true)
            .setIgnoreSurroundingSpaces(true)
            .get();
    List<double[]> rows = new ArrayList<>();
    try (CSVParser parser = CSVParser.parse(text, format)) {
      List<String> names = parser.getHeaderNames();
      int time = column(names, "t", "time", "seconds", "elapsed");
      int volt = column(names, "v", "u", "voltage", "cell_voltage");
      int ampere = column(names, "i", "a", "current");
      double voltScale = scale(names.get(volt), "mv");
      double ampereScale = scale(names.get(ampere), "ma");
      double last = Double.NEGATIVE_INFINITY;
      for (CSVRecord row : parser) {
        double t = number(row, time, delimiter);
        if (t > last) {
          rows.add(
              new double[] {
                t,
                voltScale * number(row, volt, delimiter),
                ampereScale * number(row, ampere, delimiter)
              });
          last = t;
        }
      }
    } catch (IllegalArgumentException | java.io.UncheckedIOException e) {
      throw InputProblem.input(e, "problem.bench.table", quoted(file), HEADER);
    }
    if (rows.size() < 3) {
      throw InputProblem.input(
          "problem.bench.rows", quoted(file), HEADER, Integer.toString(rows.size()));
    }
    return new BenchLog(name(), values(rows, 0), values(rows, 1), values(rows, 2));
  }

  private int column(List<String> names, String... known) throws InputProblem {
    for (String word : known) {
      for (int c = 0; c < names.size(); c++) {
        String name = names.get(c).toLowerCase(Locale.ROOT).replaceAll("[ \\[(]+", "_");
        if (name.replaceAll("[_\\])]*(s|v|a|mv|ma)?[\\])]*$", "").equals(word)
            || name.equals(word)) {
          return c;
        }
      }
    }
    throw InputProblem.input(
        "problem.bench.column",
        quoted(file),
        HEADER,
        String.join(Words.english().say("list.either"), known),
        InputProblem.quoted(String.join(", ", names)));
  }

  private static double scale(String name, String milli) {
    return name.toLowerCase(Locale.ROOT).matches(".*[^a-z]" + milli + "[^a-z]*") ? 0.001 : 1;
  }

  private double number(CSVRecord row, int column, char delimiter) throws InputProblem {
    String found = column < row.size() ? row.get(column).strip() : "";
    try {
      return Double.parseDouble(delimiter == ',' ? found : found.replace(',', '.'));
    } catch (NumberFormatException e) {
      throw InputProblem.input(
          e,
          "problem.bench.number",
          quoted(file),
          Long.toString(row.getRecordNumber() + 1),
          Integer.toString(column + 1),
          InputProblem.quoted(found));
    }
  }

  private String name() {
    String name = String.valueOf(file.getFileName());
    int dot = name.indexOf('.');
    return dot > 0 ? name.substring(0, dot) : name;
  }

  private static double[] values(List<double[]> rows, int column) {
    return rows.stream().mapToDouble(row -> row[column]).toArray();
  }

  private static String quoted(Path file) {
    return InputProblem.quoted(file.toString());
  }
}
