package sagbook.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The packaged program fed through a pipe. */
class StandardInputIT {
  private static final Path SAMPLES = Path.of("sample-logs");

  @TempDir private Path folder;

  @Test
  void aPackedLogOnStandardInputIsReadLikeTheFile() throws IOException, InterruptedException {
    String piped = preview("-");
    String named = preview(log().toString());

    assertTrue(piped.contains("\"standard input\": 44,640 rows"), piped);
    assertEquals(withoutFirstFile(named), withoutFirstFile(piped));
  }

  @Test
  void anEmptyStandardInputIsOneSentenceAndExitCodeThree() throws Exception {
    Path empty = Files.createFile(folder.resolve("empty"));
    Path output = folder.resolve("output.txt");
    assertEquals(3, run(empty, output, "-"));
    assertEquals(
        "The file \"standard input\" is empty; expected a log with rows.",
        Files.readString(output).strip());
  }

  private static Path log() {
    return SAMPLES.resolve("logs/2026-08.csv.gz");
  }

  private static String withoutFirstFile(String preview) {
    return preview.lines().skip(2).reduce("", (a, b) -> a + b + "\n");
  }

  private String preview(String log) throws IOException, InterruptedException {
    Path output = folder.resolve("output.txt");
    assertEquals(0, run(log(), output, log), () -> "see " + output);
    return Files.readString(output, StandardCharsets.UTF_8);
  }

  private static int run(Path input, Path output, String log)
      throws IOException, InterruptedException {
    List<String> line =
        List.of(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-jar",
            System.getProperty("sagbook.jar"),
            "preview",
            "--pack",
            SAMPLES.resolve("pack.toml").toString(),
            log);
    Process process =
        new ProcessBuilder(line)
            .redirectErrorStream(true)
            .redirectInput(input.toFile())
            .redirectOutput(output.toFile())
            .start();
    assertTrue(process.waitFor(120, TimeUnit.SECONDS), "still running after two minutes");
    return process.exitValue();
  }
}
