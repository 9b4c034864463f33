package sagbook.logfile;

import java.io.IOException;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import sagbook.issue.InputProblem;
import sagbook.model.PackDescription;
import sagbook.packfile.PackFile;

/**
 * Measures, side by side in one run, how long the reader takes for a log and how long Commons CSV
 * alone takes to split the same file into strings and parse them to double. DEVELOPERS.md says how
 * to run it.
 */
final class ReadingSpeed {
  private static final int ROUNDS = 5;

  private ReadingSpeed() {}

  /** Arguments: pack description, log. */
  public static void main(String[] arguments) throws IOException, InputProblem {
    PackDescription pack = PackFile.read(Path.of(arguments[0]));
    Path log = Path.of(arguments[1]);
    double[] ratios = new double[ROUNDS];
    double[] reads = new double[ROUNDS];
    double sum = 0;
    for (int round = -1; round < ROUNDS; round++) {
      long start = System.nanoTime();
      sum += splitAndParse(log);
      long between = System.nanoTime();
      long rows = read(pack, log);
      long end = System.nanoTime();
      // The first round only warms up.
      if (round >= 0) {
        ratios[round] = (double) (between - start) / (end - between);
        reads[round] = rows;
      }
    }
    Arrays.sort(ratios);
    System.out.printf(
        Locale.ROOT,
        "%.0f rows (checksum %.3e): the reader runs at %.2f (%.2f to %.2f) times the speed of"
            + " Commons CSV and Double.parseDouble%n",
        reads[0],
        sum,
        ratios[ROUNDS / 2],
        ratios[0],
        ratios[ROUNDS - 1]);
  }

  private static double splitAndParse(Path log) throws IOException {
    double sum = 0;
    try (Reader in = Files.newBufferedReader(log, StandardCharsets.UTF_8);
        CSVParser parser = CSVParser.parse(in, CSVFormat.DEFAULT)) {
      boolean header = true;
      for (CSVRecord row : parser) {
        // The first column is a written time.
        for (int i = 1; !header && i < row.size(); i++) {
          sum += Double.parseDouble(row.get(i));
        }
        header = false;
      }
    }
    return sum;
  }

  private static long read(PackDescription pack, Path log) throws InputProblem {
    long[] rows = {0};
    OpenedLogs logs =
        LogFolder.open(
            new ReadRequest(
                pack,
                List.of(log.toString()),
                Optional.empty(),
                Optional.empty(),
                Optional.empty()));
    for (String bank : logs.banks()) {
      logs.read(bank, block -> rows[0] += block.rows());
    }
    return rows[0];
  }
}
