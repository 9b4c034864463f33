package sagbook.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.zip.GZIPInputStream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sagbook.issue.InputProblem;
import sagbook.record.KeptMonth;
import sagbook.record.store.RecordFile;

/**
 * The packaged program killed while it checks into a record, and run twice at once. {@code
 * -Dsagbook.kills=200} kills more often than the usual build does.
 */
class RecordKilledIT {
  private static final int KILLS = Integer.getInteger("sagbook.kills", 6);

  @TempDir private static Path folder;
  private static Path before;
  private static List<KeptMonth> oldState;
  private static List<KeptMonth> newState;
  private static long usualMs;

  @BeforeAll
  static void aRecordOfOneMonthAndWhatItBecomes() throws Exception {
    before = folder.resolve("before.db");
    log("2026-07");
    log("2026-09");
    assertEquals(0, start(before, "2026-07").waitFor() % 10);
    oldState = months(before);
    Path after = Files.copy(before, folder.resolve("after.db"));
    long start = System.nanoTime();
    start(after, "2026-09").waitFor();
    usualMs = TimeUnit.NANOSECONDS.toMillis(System.nanoTime() - start);
    newState = months(after);
    assertEquals(List.of(1, 2), List.of(oldState.size(), newState.size()));
  }

  private static void log(String month) throws IOException {
    try (BufferedReader reader =
        new BufferedReader(
            new InputStreamReader(
                new GZIPInputStream(
                    Files.newInputStream(Path.of("sample-logs/logs", month + ".csv.gz"))),
                StandardCharsets.UTF_8))) {
      Files.write(folder.resolve(month + ".csv"), reader.lines().limit(400).toList());
    }
  }

  private static Process start(Path record, String month) throws IOException {
    List<String> line =
        List.of(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-XX:TieredStopAtLevel=1",
            "-Djava.io.tmpdir=" + folder,
            "-jar",
            System.getProperty("sagbook.jar"),
            "check",
            "--pack",
            "sample-logs/pack.toml",
            "--quiet",
            "--out",
            folder.resolve("report-" + month).toString(),
            "--record",
            record.toString(),
            folder.resolve(month + ".csv").toString());
    return new ProcessBuilder(line)
        .redirectErrorStream(true)
        .redirectOutput(folder.resolve("output.txt").toFile())
        .start();
  }

  private static List<KeptMonth> months(Path record) throws InputProblem {
    try (RecordFile file = RecordFile.existing(record)) {
      return file.months();
    }
  }

  /** Half of the moments lie anywhere, half near the end, where the record is written. */
  @Test
  void aKillAtAnyMomentLeavesTheOldOrTheNewState() throws Exception {
    Random random = new Random(20261125);
    Path record = folder.resolve("battery.db");
    for (int kill = 0; kill < KILLS; kill++) {
      Files.deleteIfExists(folder.resolve("battery.db-journal"));
      Files.copy(before, record, java.nio.file.StandardCopyOption.REPLACE_EXISTING);
      double from = kill % 2 == 0 ? 0 : 0.7;
      long wait = Math.round(usualMs * (from + random.nextDouble() * (1.05 - from)));
      Process process = start(record, "2026-09");
      process.waitFor(wait, TimeUnit.MILLISECONDS);
      process.destroyForcibly().waitFor();
      List<KeptMonth> state = months(record);
      assertTrue(
          state.equals(oldState) || state.equals(newState),
          () -> "killed after " + wait + " ms: " + state.size() + " months");
    }
  }

  @Test
  void twoRunsAtOnceKeepBothMonths() throws Exception {
    Path record = folder.resolve("both.db");
    Process one = start(record, "2026-07");
    Process other = start(record, "2026-09");
    assertEquals(0, one.waitFor() % 10);
    assertEquals(0, other.waitFor() % 10);
    assertEquals(newState, months(record));
  }
}
