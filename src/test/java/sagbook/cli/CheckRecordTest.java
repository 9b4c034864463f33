package sagbook.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.zip.GZIPInputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sagbook.issue.InputProblem;
import sagbook.record.KeptMonth;
import sagbook.record.store.RecordFile;

/** What the record does for somebody who checks month after month. */
class CheckRecordTest {
  private static final String PACK = "sample-logs/pack.toml";
  private static final int TWO_DAYS = 2 * 1440;

  @TempDir private Path temp;

  private record Run(int code, String out, String err) {}

  private Run check(String... more) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    List<String> line =
        new java.util.ArrayList<>(List.of("check", "--out", temp.resolve("report").toString()));
    if (!List.of(more).contains("--pack")) {
      line.addAll(List.of("--pack", PACK));
    }
    line.addAll(List.of("--record", temp.resolve("battery.db").toString()));
    line.addAll(List.of(more));
    int code = Main.run(new PrintWriter(out), new PrintWriter(err), line.toArray(String[]::new));
    return new Run(code, out.toString(), err.toString());
  }

  private List<KeptMonth> months() throws InputProblem {
    try (RecordFile record = RecordFile.existing(temp.resolve("battery.db"))) {
      return record.months();
    }
  }

  /** The first days of a sample month. */
  private Path log(String month, int rows) throws IOException {
    Path folder = Files.createDirectories(temp.resolve("logs"));
    try (BufferedReader reader =
        new BufferedReader(
            new InputStreamReader(
                new GZIPInputStream(
                    Files.newInputStream(Path.of("sample-logs/logs", month + ".csv.gz"))),
                StandardCharsets.UTF_8))) {
      return Files.write(folder.resolve(month + ".csv"), reader.lines().limit(1L + rows).toList());
    }
  }

  @Test
  void aMonthIsKeptAndNotReadAgain() throws IOException, InputProblem {
    Path log = log("2026-09", TWO_DAYS);
    Run first = check(log.toString());
    assertEquals("", first.err());
    assertTrue(first.out().contains("Kept in "), first.out());
    assertTrue(first.out().contains(": 2026-09."), first.out());
    List<KeptMonth> kept = months();
    assertEquals(1, kept.size());
    assertEquals(16, kept.get(0).cells().size());
    assertEquals(TWO_DAYS, kept.get(0).conditions().rows());
    assertEquals(1, kept.get(0).inputs().size());

    Files.delete(temp.resolve("report/report.html"));
    Run second = check(log.toString());
    assertEquals(first.code(), second.code());
    assertEquals(
        "Nothing is new: the record knows this file, and it was not read again.",
        second.out().strip());
    assertFalse(Files.exists(temp.resolve("report/report.html")), "nothing was checked");
    assertEquals(kept, months());
  }

  /** A pack description among the logs is no log that is always new. */
  @Test
  void thePackDescriptionIsNotTakenForALog() throws IOException {
    log("2026-09", TWO_DAYS);
    Path pack = Files.copy(Path.of(PACK), temp.resolve("logs/pack.toml"));
    String logs = temp.resolve("logs").toString();
    check("--pack", pack.toString(), logs);
    assertEquals(
        "Nothing is new: the record knows this file, and it was not read again.",
        check("--pack", pack.toString(), logs).out().strip());
  }

  @Test
  void aLogThatGrewReplacesItsMonth() throws IOException, InputProblem {
    check(log("2026-09", TWO_DAYS).toString());
    Run run = check(log("2026-09", 2 * TWO_DAYS).toString());
    assertTrue(run.out().contains("Kept in "), run.out());
    assertEquals(1, months().size());
    assertEquals(2L * TWO_DAYS, months().get(0).conditions().rows());
  }

  @Test
  void aFolderOfMonthsCostsOnlyWhatIsNew() throws IOException, InputProblem {
    log("2026-07", TWO_DAYS);
    log("2026-09", TWO_DAYS);
    Run first = check(temp.resolve("logs").toString());
    assertEquals("", first.err());
    assertTrue(first.out().contains(": 2026-07, 2026-09."), first.out());
    for (String page : List.of("index.html", "report.html", "2026-07/report.html")) {
      assertTrue(Files.exists(temp.resolve("report").resolve(page)), page);
    }
    List<KeptMonth> kept = months();
    assertEquals(2, kept.size());

    log("2026-08", TWO_DAYS);
    Files.writeString(temp.resolve("logs/README.txt"), "Logs of the mill.\n");
    Run second = check(temp.resolve("logs").toString());
    assertTrue(second.out().contains("knows 2 of the 4 files"), second.out());
    assertTrue(second.out().contains(": 2026-08."), second.out());
    assertEquals(List.of(kept.get(0), kept.get(1)), List.of(months().get(0), months().get(2)));

    Run third = check(temp.resolve("logs").toString());
    assertEquals("", third.err());
    assertTrue(third.out().startsWith("Nothing is new"), third.out());
  }

  /** Thirty days a file, as some loggers write, whatever the calendar says. */
  @Test
  void filesOfAboutAMonthAreMonths() throws IOException, InputProblem {
    Path logs = Files.createDirectories(temp.resolve("logs"));
    List<String> july = Files.readAllLines(log("2026-07", Integer.MAX_VALUE));
    List<String> august = Files.readAllLines(log("2026-08", Integer.MAX_VALUE));
    List<String> both = new java.util.ArrayList<>(july);
    both.addAll(august.subList(1, august.size()));
    Files.delete(logs.resolve("2026-07.csv"));
    Files.delete(logs.resolve("2026-08.csv"));
    for (int part = 0; part < 2; part++) {
      List<String> lines = new java.util.ArrayList<>(both.subList(0, 1));
      for (int row = 0; row < 27 * 1440; row += 10) {
        lines.add(both.get(1 + part * 27 * 1440 + row));
      }
      Files.write(logs.resolve("part" + part + ".csv"), lines);
    }
    Run run = check(logs.toString());
    assertEquals("", run.err());
    assertEquals(2, months().size(), run.out());
    assertEquals(List.of(1, 1), months().stream().map(month -> month.inputs().size()).toList());
    assertTrue(check(logs.toString()).out().startsWith("Nothing is new"));
  }

  @Test
  void otherSettingsAreCheckedAfresh() throws IOException, InputProblem {
    Path log = log("2026-09", TWO_DAYS);
    check(log.toString());
    Run run = check("--to", "2026-09-02", log.toString());
    assertTrue(run.out().contains("Kept in "), run.out());
    assertEquals(1, months().size());
    assertEquals(1440, months().get(0).conditions().rows());
  }

  @Test
  void aRecordThatIsNoneIsSaidInOneSentence() throws IOException {
    Files.writeString(temp.resolve("battery.db"), "no record ".repeat(200));
    Run run = check(log("2026-09", TWO_DAYS).toString());
    assertEquals(3, run.code());
    assertEquals(1, run.err().strip().lines().count(), run.err());
    assertTrue(run.err().contains("battery.db"), run.err());
  }
}
