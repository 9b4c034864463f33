package sagbook.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The packaged program on thirty days at five seconds: 518,400 rows, about 120 MB. */
class LargeLogIT {
  @TempDir private Path folder;

  @Test
  void isCheckedInAQuarterOfAGigabyte() throws IOException, InterruptedException {
    String[] simulate = {"simulate", "--scenario", "wearing-cell", "--cadence-s", "5"};
    assertEquals(0, run(simulate, "--out", folder.resolve("invented").toString()));
    Path log = folder.resolve("invented/logs/2026-06.csv");
    assertTrue(Files.size(log) > 110_000_000, () -> "the log is too small for this test");

    String pack = folder.resolve("invented/pack.toml").toString();
    String report = folder.resolve("report").toString();
    int code = run(new String[] {"check", "--pack", pack}, "--out", report, log.toString());

    assertTrue(code == 10 || code == 20, () -> "exit code " + code);
    JsonNode results = new ObjectMapper().readTree(folder.resolve("report/results.json").toFile());
    assertEquals(518_400, results.path("inputs").path(0).path("rows").asLong());
    assertTrue(Files.exists(folder.resolve("report/report.html")));
    JsonNode seventh = results.path("banks").path(0).path("cells").path(6);
    assertEquals(1, seventh.path("rank").asInt(), "cell 7 wears");
    assertEquals("low capacity", seventh.path("finding").asText());
  }

  private int run(String[] command, String... more) throws IOException, InterruptedException {
    List<String> line = new ArrayList<>();
    line.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    line.add("-Xmx256m");
    line.add("-jar");
    line.add(System.getProperty("sagbook.jar"));
    line.addAll(Arrays.asList(command));
    line.addAll(Arrays.asList(more));
    Process process =
        new ProcessBuilder(line)
            .redirectErrorStream(true)
            .redirectOutput(folder.resolve("output.txt").toFile())
            .start();
    assertTrue(process.waitFor(300, TimeUnit.SECONDS), "still running after five minutes");
    return process.exitValue();
  }
}
