package sagbook.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ExportCommandTest {
  private static final Path COMMITTED = Path.of("notebooks-export");
  private static final String HOW =
      "notebooks-export is out of date; after mvn package run: java -jar target/sagbook.jar export"
          + " --pack sample-logs/pack.toml --out notebooks-export sample-logs/logs";

  @TempDir private Path folder;
  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();

  private int run(String... args) {
    return Main.run(new PrintWriter(out, true), new PrintWriter(err, true), args);
  }

  /** Words must be the same; numbers may differ in the last places another machine computes. */
  @Test
  void writesWhatIsCommittedForNotebooks() throws IOException {
    String to = folder.toString();
    assertEquals(
        0, run("export", "--pack", "sample-logs/pack.toml", "--tables", to, "sample-logs/logs"));
    assertTrue(out.toString().startsWith("8 months checked; "), out::toString);
    for (String name : List.of("estimates.csv", "cells.csv", "banks.csv", "dictionary.csv")) {
      List<CSVRecord> fresh = rows(folder.resolve(name));
      List<CSVRecord> committed = rows(COMMITTED.resolve(name));
      assertEquals(fresh.size(), committed.size(), HOW);
      for (int r = 0; r < fresh.size(); r++) {
        assertSame(fresh.get(r), committed.get(r));
      }
    }
    assertEquals(
        Files.readString(folder.resolve("season.ipynb")),
        Files.readString(COMMITTED.resolve("season.ipynb")),
        HOW);
  }

  private static void assertSame(CSVRecord fresh, CSVRecord committed) {
    assertEquals(fresh.size(), committed.size(), HOW);
    for (int c = 0; c < fresh.size(); c++) {
      String now = fresh.get(c);
      String then = committed.get(c);
      if (now.matches("-?\\d+(\\.\\d+)?") && then.matches("-?\\d+(\\.\\d+)?")) {
        double value = Double.parseDouble(now);
        assertEquals(value, Double.parseDouble(then), 1e-4 * Math.abs(value) + 1e-9, HOW);
      } else {
        assertEquals(now, then, HOW);
      }
    }
  }

  private static List<CSVRecord> rows(Path file) throws IOException {
    try (CSVParser parser = CSVParser.parse(Files.readString(file), CSVFormat.RFC4180)) {
      return parser.getRecords();
    }
  }

  @Test
  void saysInOneSentenceWhatItCannotRead() {
    String to = folder.resolve("new").toString();
    assertEquals(3, run("export", "--pack", "sample-logs/pack.toml", "--out", to, "no-such-log"));
    assertTrue(err.toString().contains("no-such-log"), err::toString);
    assertEquals(1, err.toString().lines().count());
    assertTrue(!Files.exists(Path.of(to)));
  }

  @Test
  void wantsADayOfLog() {
    String invented = folder.resolve("short").toString();
    run("simulate", "--scenario", "healthy", "--days", "1", "--cadence-s", "60", "--out", invented);
    String to = folder.resolve("new").toString();
    String pack = folder.resolve("short/pack.toml").toString();
    assertEquals(3, run("export", "--pack", pack, "--out", to, invented + "/logs"));
    assertTrue(err.toString().contains("at least a day"), err::toString);
  }
}
