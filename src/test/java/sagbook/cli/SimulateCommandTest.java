package sagbook.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sagbook.simulate.Scenario;
import sagbook.simulate.Scenarios;

class SimulateCommandTest {
  @TempDir private Path folder;
  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();

  private int run(String... args) {
    String[] line = Stream.concat(Stream.of("simulate"), Stream.of(args)).toArray(String[]::new);
    return Main.run(new PrintWriter(out, true), new PrintWriter(err, true), line);
  }

  @Test
  void writesLogsPackDescriptionAndTruth() throws IOException {
    Path dir = folder.resolve("new").resolve("loose");
    String to = dir.toString();
    assertEquals(
        0, run("--scenario", "loose-joint", "--days", "40", "--cadence-s", "300", "--out", to));
    assertTrue(Files.exists(dir.resolve("logs/2026-06.csv")));
    assertTrue(Files.exists(dir.resolve("logs/2026-07.csv")));
    assertTrue(Files.readString(dir.resolve("pack.toml")).contains("series_cells = 16"));
    assertTrue(Files.readString(dir.resolve("truth.csv")).contains("2026-07,7,connection,"));
    assertEquals("", err.toString());
  }

  @Test
  void makesAnNmcPackOfAnySize() throws IOException {
    String to = folder.toString();
    String[] size = {"--chemistry", "nmc", "--cells", "14", "--capacity-ah", "65"};
    String[] args = {"--scenario", "healthy", "--days", "1", "--out", to, "--gzip"};
    assertEquals(0, run(join(args, size)));
    assertTrue(Files.exists(folder.resolve("logs/2026-06.csv.gz")));
    String pack = Files.readString(folder.resolve("pack.toml"));
    assertTrue(pack.contains("chemistry = \"nmc\""));
    assertTrue(pack.contains("series_cells = 14"));
  }

  @Test
  void leavesColumnsOut() throws IOException {
    String[] args = {"--scenario", "healthy", "--days", "1", "--out", folder.toString()};
    assertEquals(0, run(join(args, new String[] {"--leave-out", "current,bleed"})));
    String text = Files.readString(folder.resolve("logs/2026-06.csv"));
    String header = text.lines().findFirst().orElseThrow();
    assertTrue(header.startsWith("time,cell01_mv,"), header);
    assertTrue(header.endsWith(",cell16_temp_c"), header);
    text.lines().forEach(line -> assertEquals(33, line.split(",", -1).length));
  }

  private static String[] join(String[] a, String[] b) {
    String[] both = java.util.Arrays.copyOf(a, a.length + b.length);
    System.arraycopy(b, 0, both, a.length, b.length);
    return both;
  }

  @ParameterizedTest
  @CsvSource({
    "--scenario, nonsense, known are healthy",
    "--cadence-s, 7, divide a day evenly",
    "--cells, 40, 2 to 32 cells",
    "--days, 0, days must be 1 to 7400",
    "--chemistry, lead, lfp or nmc",
    "--leave-out, voltage, 'current, temperature, bleed'"
  })
  void refusesOptionsThatMakeNoSense(String option, String value, String says) {
    String to = folder.resolve("none").toString();
    String[] args = {"--scenario=healthy", "--out", to, option, value};
    String[] scenarioOnce = {option, value, "--out", to};
    assertEquals(2, run(option.equals("--scenario") ? scenarioOnce : args));
    assertTrue(err.toString().contains(says), err::toString);
    assertTrue(!Files.exists(folder.resolve("none")));
  }

  @Test
  void saysThatItCannotWrite() throws IOException {
    Path file = Files.createFile(folder.resolve("file"));
    assertEquals(4, run("--scenario", "healthy", "--days", "1", "--out", file.toString()));
    assertTrue(err.toString().startsWith("Can't write to "), err::toString);
    assertEquals(1, err.toString().lines().count());
  }

  @Test
  void listsEveryScenarioInItsHelp() {
    assertEquals(0, run("--help"));
    for (Scenario scenario : Scenarios.all()) {
      assertTrue(out.toString().contains("  " + scenario.name() + " "), scenario::name);
    }
    out.toString().lines().forEach(line -> assertTrue(line.length() <= 100, line));
  }
}
