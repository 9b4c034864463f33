package sagbook.logfile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import sagbook.issue.InputProblem;
import sagbook.model.PackDescription;
import sagbook.packfile.PackFile;

/**
 * Small logs, good and bad, one folder each in a folder of their theme. {@code expected.txt} starts
 * with "reads" and the rows that must come out (time | cell voltages | temperatures | current |
 * bleed), or with "refuses" and the one sentence that must be said; "says:" lines must be part of
 * what is said about a reading.
 */
class LogCorpusTest {
  private static final Path CORPUS = Path.of("src/test/resources/logs");
  private static final String PACK =
      """
      [pack]
      name = "corpus"
      chemistry = "lfp"
      series_cells = 4
      timezone = "Europe/Berlin"
      """;

  static List<Path> cases() throws IOException {
    try (Stream<Path> found = Files.walk(CORPUS)) {
      return found
          .filter(file -> file.endsWith("expected.txt"))
          .map(file -> CORPUS.relativize(file).getParent())
          .sorted()
          .toList();
    }
  }

  @Test
  void holdsAtLeastOneHundredAndTwentyCases() throws IOException {
    assertTrue(cases().size() >= 120, "cases: " + cases().size());
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("cases")
  void readsOrRefusesAsExpected(Path name) throws IOException {
    Path folder = CORPUS.resolve(name);
    List<String> expected =
        new ArrayList<>(Files.readAllLines(folder.resolve("expected.txt"), StandardCharsets.UTF_8));
    Optional<String> arguments =
        expected.get(0).startsWith("args: ")
            ? Optional.of(expected.remove(0).substring(6))
            : Optional.empty();
    String verdict = expected.remove(0);
    try {
      ReadRequest request = request(folder, arguments);
      Reading reading = Reading.of(LogFolder.open(request));
      assertTrue(verdict.startsWith("reads"), () -> "was read: " + reading.text());
      compare(verdict, expected, reading, folder);
    } catch (InputProblem e) {
      String sentence = withoutFolder(e.sentence(), folder);
      assertTrue(verdict.startsWith("refuses"), () -> "was refused: " + sentence);
      assertEquals(verdict, "refuses " + kind(e));
      assertEquals(String.join("\n", expected), sentence);
    }
  }

  private static String kind(InputProblem problem) {
    return problem.kind() == InputProblem.Kind.USAGE ? "usage" : "input";
  }

  private static void compare(String verdict, List<String> expected, Reading reading, Path folder) {
    List<String> rows = new ArrayList<>();
    String said = withoutFolder(String.join("\n", reading.sentences()), folder);
    for (String line : expected) {
      if (line.startsWith("says: ")) {
        String part = line.substring(6);
        assertTrue(said.contains(part), () -> "not said: " + part + "\nsaid:\n" + said);
      } else {
        rows.add(line);
      }
    }
    if (verdict.startsWith("reads at least ")) {
      int least = Integer.parseInt(verdict.replaceAll("[^0-9]", ""));
      assertTrue(reading.rowsWithCurrent() >= least, "rows " + reading.rowsWithCurrent());
    } else {
      assertEquals(String.join("\n", rows), reading.text());
    }
  }

  private static String withoutFolder(String text, Path folder) {
    return text.replace(folder.toString().replace('\\', '/') + "/", "");
  }

  private static ReadRequest request(Path folder, Optional<String> arguments)
      throws IOException, InputProblem {
    Path packFile = folder.resolve("pack.toml");
    PackDescription pack =
        Files.exists(packFile) ? PackFile.read(packFile) : PackFile.parse("pack.toml", PACK);
    Path columns = folder.resolve("columns.toml");
    return new ReadRequest(
        pack,
        arguments.isPresent() ? List.of(folder + "/" + arguments.get()) : logs(folder),
        Optional.empty(),
        Optional.empty(),
        Files.exists(columns) ? Optional.of(columns) : Optional.empty());
  }

  private static List<String> logs(Path folder) throws IOException {
    List<String> ours = List.of("expected.txt", "pack.toml", "columns.toml");
    try (Stream<Path> files = Files.list(folder)) {
      return files
          .filter(file -> !ours.contains(file.getFileName().toString()))
          .map(Path::toString)
          .sorted()
          .toList();
    }
  }
}
