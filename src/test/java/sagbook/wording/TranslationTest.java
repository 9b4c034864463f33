package sagbook.wording;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.File;
import java.io.IOException;
import java.io.Reader;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.TimeUnit;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.TextNode;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sagbook.issue.InputProblem;
import sagbook.record.store.RecordFile;
import sagbook.season.InventedSeason;

/**
 * The program in a language that is English in brackets: what people read stands within them, or it
 * would stay English in a translation. It runs by itself, with the other wording first on its path.
 */
final class TranslationTest {
  private static final Pattern WORDS_IN_A_ROW =
      Pattern.compile("\\p{L}{2,}(?:[ ,]+\\p{L}{2,}){2,}");

  /** What a page has for people beside its text. */
  private static final List<String> SPOKEN = List.of("title", "aria-label", "alt");

  @TempDir private Path folder;

  @BeforeEach
  void writeTheOtherLanguage() throws IOException {
    Properties english = new Properties();
    try (Reader in =
        Files.newBufferedReader(Path.of("src/main/resources/sagbook/words.properties"))) {
      english.load(in);
    }
    Properties other = new Properties();
    english.forEach(
        (key, value) ->
            other.put(key, isForTheProgram(key.toString()) ? value : "⟦" + value + "⟧"));
    Files.createDirectories(folder.resolve("other/sagbook"));
    try (Writer out = Files.newBufferedWriter(folder.resolve("other/sagbook/words.properties"))) {
      other.store(out, null);
    }
  }

  /** Patterns of dates and the language's own tag. */
  private static boolean isForTheProgram(String key) {
    return key.equals("language") || key.equals("time") || key.startsWith("date");
  }

  @Test
  void noEnglishIsLeftInTheReportAndTheSummary() throws Exception {
    String said =
        run(
            10,
            "check",
            "--pack",
            "sample-logs/pack.toml",
            "--out",
            folder.resolve("report").toString(),
            "sample-logs/logs/2026-09.csv.gz");
    assertTrue(said.contains("⟦"), said);
    assertEquals(Set.of(), english(said));

    Set<String> left = english(page("report/report.html"));
    left.removeAll(saidByTheReader());
    assertEquals(Set.of(), left);
  }

  @Test
  void noEnglishIsLeftInTheSeasonAndItsSummary() throws Exception {
    String record = keep();
    String said = run(10, "season", "--record", record, "--out", folder.resolve("s").toString());
    assertTrue(said.contains("⟦"), said);
    assertEquals(Set.of(), english(said));
    assertEquals(Set.of(), english(page("s/index.html")));
  }

  private String keep() throws InputProblem {
    Path record = folder.resolve("battery.db");
    try (RecordFile file = RecordFile.open(record)) {
      file.keep(new InventedSeason(1).make());
    }
    return record.toString();
  }

  /** What the reader says of files stays English for now. */
  private Set<String> saidByTheReader() throws IOException {
    JsonNode bank =
        new ObjectMapper().readTree(folder.resolve("report/results.json").toFile()).at("/banks/0");
    Set<String> said = new TreeSet<>();
    for (String list : List.of("reading", "next_month")) {
      bank.get(list).forEach(sentence -> said.add(sentence.asText()));
    }
    return said;
  }

  private String run(int expected, String... arguments) throws IOException, InterruptedException {
    List<String> line = new ArrayList<>();
    line.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    line.add("-Djava.awt.headless=true");
    line.add("-cp");
    line.add(folder.resolve("other") + File.pathSeparator + System.getProperty("java.class.path"));
    line.add("sagbook.cli.Main");
    line.addAll(List.of(arguments));
    Path out = folder.resolve("out.txt");
    Process process =
        new ProcessBuilder(line)
            .redirectOutput(out.toFile())
            .redirectError(folder.resolve("err.txt").toFile())
            .start();
    assertTrue(process.waitFor(5, TimeUnit.MINUTES));
    assertEquals(expected, process.exitValue(), Files.readString(folder.resolve("err.txt")));
    return Files.readString(out);
  }

  /** Text and spoken names of a page, one piece a line. */
  private String page(String file) throws IOException {
    Document page = Jsoup.parse(folder.resolve(file).toFile());
    Stream<String> texts = page.body().nodeStream(TextNode.class).map(TextNode::getWholeText);
    Stream<String> names =
        page.getAllElements().stream().flatMap(e -> SPOKEN.stream().map(e::attr));
    return String.join(
        "\n", Stream.of(texts, names, Stream.of(page.title())).flatMap(s -> s).toList());
  }

  /** Pieces outside all brackets that have three words in a row. */
  private static Set<String> english(String text) {
    StringBuilder outside = new StringBuilder();
    int depth = 0;
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      depth += c == '⟦' ? 1 : c == '⟧' ? -1 : 0;
      outside.append(c == '⟧' ? "\n" : depth == 0 ? String.valueOf(c) : "");
    }
    assertEquals(0, depth, "brackets without their other half");
    Set<String> left = new TreeSet<>();
    outside
        .toString()
        .lines()
        .map(String::strip)
        .filter(piece -> WORDS_IN_A_ROW.matcher(piece).find())
        .forEach(left::add);
    return left;
  }
}
