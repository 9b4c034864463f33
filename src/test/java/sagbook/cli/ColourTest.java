package sagbook.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Colours of the help, the only ones there are. {@code CLICOLOR_FORCE} asks for them where the
 * output is no terminal; {@code NO_COLOR} forbids them (no-color.org).
 */
final class ColourTest {
  private static final String ESCAPE = "\u001b[";

  @TempDir private Path folder;

  @Test
  void helpIsColouredWhereThatIsForced() throws IOException, InterruptedException {
    assertTrue(help(Map.of("CLICOLOR_FORCE", "1")).contains(ESCAPE));
  }

  @Test
  void helpIsNotColouredInAFile() throws IOException, InterruptedException {
    assertFalse(help(Map.of()).contains(ESCAPE));
  }

  @Test
  void nothingIsColouredWhereColourIsForbidden() throws IOException, InterruptedException {
    assertFalse(help(Map.of("NO_COLOR", "1")).contains(ESCAPE));
    assertFalse(help(Map.of("NO_COLOR", "1", "TERM", "xterm-256color")).contains(ESCAPE));
    // A terminal that says so of itself; forbidding wins.
    assertFalse(help(Map.of("NO_COLOR", "1", "CLICOLOR", "1", "OSTYPE", "linux")).contains(ESCAPE));
  }

  private String help(Map<String, String> environment) throws IOException, InterruptedException {
    Path out = folder.resolve("out.txt");
    ProcessBuilder builder =
        new ProcessBuilder(
            List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-cp",
                System.getProperty("java.class.path"),
                "sagbook.cli.Main",
                "check",
                "--help"));
    builder.environment().keySet().removeAll(List.of("NO_COLOR", "CLICOLOR", "CLICOLOR_FORCE"));
    builder.environment().putAll(environment);
    Process process = builder.redirectErrorStream(true).redirectOutput(out.toFile()).start();
    assertTrue(process.waitFor(2, TimeUnit.MINUTES));
    assertEquals(0, process.exitValue());
    return Files.readString(out);
  }
}
