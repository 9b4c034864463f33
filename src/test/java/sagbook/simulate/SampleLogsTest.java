package sagbook.simulate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.zip.GZIPInputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SampleLogsTest {
  private static final Path SAMPLES = Path.of("sample-logs");

  /**
   * Compares what is inside the compressed files: another machine's compressor may pack the same
   * text differently.
   */
  @Test
  void areWhatTheSimulatorWritesToday(@TempDir Path fresh) throws IOException {
    SimulatedLogs.write(Scenarios.find("mill-season").orElseThrow(), fresh, false);
    List<Path> logs = list(fresh.resolve("logs"));
    assertEquals(8, logs.size());
    assertEquals(8, list(SAMPLES.resolve("logs")).size());
    for (Path log : logs) {
      Path packed = SAMPLES.resolve("logs").resolve(log.getFileName() + ".gz");
      try (InputStream expected = Files.newInputStream(log);
          InputStream committed = new GZIPInputStream(Files.newInputStream(packed), 1 << 16)) {
        assertEquals(-1, firstDifference(expected, committed), packed::toString);
      }
    }
    for (String name : List.of("pack.toml", "truth.csv")) {
      assertEquals(
          Files.readString(fresh.resolve(name)), Files.readString(SAMPLES.resolve(name)), name);
    }
  }

  @Test
  void stayUnderFiveMegabytes() throws IOException {
    try (var files = Files.walk(SAMPLES)) {
      long bytes = files.filter(Files::isRegularFile).mapToLong(f -> f.toFile().length()).sum();
      assertTrue(bytes < 5_000_000, () -> bytes + " bytes");
    }
  }

  private static List<Path> list(Path folder) throws IOException {
    try (var files = Files.list(folder)) {
      return files.sorted().toList();
    }
  }

  private static long firstDifference(InputStream a, InputStream b) throws IOException {
    byte[] left = new byte[1 << 16];
    byte[] right = new byte[1 << 16];
    long at = 0;
    while (true) {
      int n = a.readNBytes(left, 0, left.length);
      int m = b.readNBytes(right, 0, right.length);
      int different = java.util.Arrays.mismatch(left, 0, n, right, 0, m);
      if (different >= 0) {
        return at + different;
      }
      if (n == 0) {
        return -1;
      }
      at += n;
    }
  }
}
