package sagbook.wording;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.Reader;
import java.io.StringWriter;
import java.io.Writer;
import java.lang.reflect.Method;
import java.net.MalformedURLException;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.TextNode;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sagbook.issue.InputProblem;
import sagbook.record.store.RecordFile;
import sagbook.season.InventedSeason;

/**
 * The program in a language that is English in brackets: what people read stands within them, or it
 * would stay English in a translation. Its classes are loaded anew, with the other wording first.
 */
final class TranslationTest {
  private static final Pattern WORDS_IN_A_ROW = Pattern.compile("\\p{L}{2,}(?: +\\p{L}{2,})+");

  /** What a page has for people beside its text. */
  private static final List<String> SPOKEN = List.of("title", "aria-label", "alt");

  /** Fields of results.json that hold words for programs. */
  private static final Set<String> CODES =
      Set.of("action", "finding", "severity", "change", "quantity");

  private static final String PACK = "sample-logs/pack.toml";

  @TempDir private static Path wording;

  @TempDir private Path folder;

  private static OtherProgram program;
  private static Method run;

  @BeforeAll
  static void startInTheOtherLanguage() throws IOException, ReflectiveOperationException {
    Properties english = new Properties();
    try (Reader in =
        Files.newBufferedReader(Path.of("src/main/resources/sagbook/words.properties"))) {
      english.load(in);
    }
    Properties other = new Properties();
    english.forEach(
        (key, value) ->
            other.put(key, isForTheProgram(key.toString()) ? value : "⟦" + value + "⟧"));
    Files.createDirectories(wording.resolve("sagbook"));
    try (Writer out = Files.newBufferedWriter(wording.resolve("sagbook/words.properties"))) {
      other.store(out, null);
    }
    program = new OtherProgram(wording);
    run =
        program
            .loadClass("sagbook.cli.Main")
            .getDeclaredMethod("run", PrintWriter.class, PrintWriter.class, String[].class);
    run.setAccessible(true);
  }

  @AfterAll
  static void leaveTheOtherLanguage() throws IOException {
    program.close();
  }

  /** The program's classes a second time, with another wording; everything else is shared. */
  private static final class OtherProgram extends URLClassLoader {
    OtherProgram(Path wording) throws MalformedURLException {
      super(
          new URL[] {
            wording.toUri().toURL(), Words.class.getProtectionDomain().getCodeSource().getLocation()
          },
          Words.class.getClassLoader());
    }

    @Override
    protected Class<?> loadClass(String name, boolean resolve) throws ClassNotFoundException {
      if (!name.startsWith("sagbook.")) {
        return super.loadClass(name, resolve);
      }
      synchronized (getClassLoadingLock(name)) {
        Class<?> loaded = findLoadedClass(name);
        return loaded == null ? findClass(name) : loaded;
      }
    }

    @Override
    public URL getResource(String name) {
      URL own = findResource(name);
      return own == null ? super.getResource(name) : own;
    }
  }

  /** Patterns of dates and the language's own tag. */
  private static boolean isForTheProgram(String key) {
    return key.equals("language") || key.equals("time") || key.startsWith("date");
  }

  @Test
  void noEnglishIsLeftInTheReportTheResultsAndTheAnswers() throws Exception {
    String report = folder.resolve("report").toString();
    String log = "sample-logs/logs/2026-09.csv.gz";
    assertAllSaid(said(10, "check", "--pack", PACK, "--out", report, log));
    assertEquals(Set.of(), english(page("report/report.html")));
    assertEquals(Set.of(), english(texts("report/results.json")));
    assertAllSaid(said(0, "swap", "--results", report, "--cell", "6"));
    assertAllSaid(said(0, "spares", "--pack", PACK, "--results", report, bench()));
    assertAllSaid(said(0, "preview", "--pack", PACK, log));
  }

  @Test
  void noEnglishIsLeftInTheSeasonAndItsSummary() throws Exception {
    String record = keep();
    String out = folder.resolve("s").toString();
    assertAllSaid(said(10, "season", "--record", record, "--out", out, "--dossier"));
    for (String file : List.of("index.html", "season.html", "dossier.html")) {
      assertEquals(Set.of(), english(page("s/" + file)), file);
    }
    assertEquals(Set.of(), english(texts("s/season.json")));
  }

  @Test
  void noEnglishIsLeftInWhatIsSaidOfARecord() throws Exception {
    String record = keep();
    String csv = folder.resolve("csv").toString();
    String copy = folder.resolve("copy.db").toString();
    assertAllSaid(
        said(0, "note", "--record", record, "--day", "2026-03-14", "--kind", "rebalanced"));
    assertAllSaid(said(0, "export", "--record", record, "--out", csv));
    assertAllSaid(said(0, "import", "--record", copy, csv));
    assertAllSaid(said(2, "import", "--record", copy, csv));
    assertAllSaid(said(3, "season", "--record", PACK, "--out", folder.resolve("s").toString()));
  }

  @Test
  void noEnglishIsLeftInASimulationAndItsComplaints() throws Exception {
    String out = folder.resolve("invented").toString();
    assertAllSaid(said(0, "simulate", "--scenario", "healthy", "--days", "1", "--out", out));
    assertAllSaid(said(2, "simulate", "--scenario", "healthy", "--days", "0", "--out", out), 1);
  }

  /** But for how a command is called, which is the same in every language. */
  @Test
  void noEnglishIsLeftInTheHelp() throws Exception {
    for (String command : List.of("check", "note", "swap", "simulate")) {
      String help = said(0, command, "--help");
      Set<String> left = english(help);
      left.removeIf(piece -> piece.startsWith("sagbook " + command));
      assertTrue(help.contains("⟦"), help);
      assertEquals(Set.of(), left);
    }
  }

  /** One line each: a log's remarks, and what is wrong with logs and descriptions. */
  @Test
  void noEnglishIsLeftInWhatIsSaidOfStrangeLogs() throws Exception {
    Files.writeString(
        folder.resolve("odd.csv"),
        """
        time;cell 1 [mV];cell 2 [mV];what
        01/02/2026 10:00;3300;3301;x
        01/02/2026 10:01;3300;3302;x
        01/02/2026 10:02;9999;3303;x
        01/02/2026 10:03;3300
        01/02/2026 12:04;3300;3304;x
        """);
    Files.writeString(folder.resolve("two.toml"), pack("series_cells = 2"));
    Files.writeString(folder.resolve("three.toml"), pack("series_cells = 3"));
    Files.writeString(folder.resolve("unknown.toml"), pack("series_cell = 3"));
    String log = folder.resolve("odd.csv").toString();
    assertAllSaid(said(0, "preview", "--pack", folder.resolve("two.toml").toString(), log));
    assertAllSaid(said(2, "preview", "--pack", folder.resolve("three.toml").toString(), log));
    assertAllSaid(said(2, "preview", "--pack", folder.resolve("unknown.toml").toString(), log));
    assertAllSaid(said(3, "preview", "--pack", PACK, folder.resolve("absent.csv").toString()));
    assertAllSaid(said(3, "preview", "--pack", PACK, PACK));
    assertAllSaid(said(2, "chek"));
    assertAllSaid(said(2, "swap", "--cell", "x"), 1);
  }

  private static String pack(String cells) {
    return "[pack]\nname = \"Mill\"\nchemistry = \"lfp\"\n" + cells + "\n";
  }

  /** A discharge at 56 A for nearly five hours. */
  private String bench() throws IOException {
    StringBuilder text = new StringBuilder("time_s,voltage_v,current_a\n0,3.4,0\n");
    for (int minute = 1; minute <= 294; minute++) {
      text.append(60 * minute).append(minute < 294 ? ",3.2,-56\n" : ",2.49,-56\n");
    }
    Path file = folder.resolve("bench.csv");
    Files.writeString(file, text.toString());
    return file.toString();
  }

  private static void assertAllSaid(String said) {
    assertAllSaid(said, Integer.MAX_VALUE);
  }

  private static void assertAllSaid(String said, int lines) {
    String first = String.join("\n", said.lines().limit(lines).toList());
    assertTrue(first.contains("⟦"), first);
    assertEquals(Set.of(), english(first));
  }

  private String keep() throws InputProblem {
    Path record = folder.resolve("battery.db");
    try (RecordFile file = RecordFile.open(record)) {
      file.keep(new InventedSeason(1).make());
    }
    return record.toString();
  }

  /** Everything in such a file that is no code, one piece a line. */
  private String texts(String file) throws IOException {
    List<String> texts = new ArrayList<>();
    collect(new ObjectMapper().readTree(folder.resolve(file).toFile()), texts);
    return String.join("\n", texts);
  }

  private static void collect(JsonNode node, List<String> texts) {
    for (Map.Entry<String, JsonNode> field : node.properties()) {
      if (field.getValue().isTextual() && !CODES.contains(field.getKey())) {
        texts.add(field.getValue().asText());
      }
    }
    node.forEach(
        inner -> {
          if (node.isArray() && inner.isTextual()) {
            texts.add(inner.asText());
          }
          collect(inner, texts);
        });
  }

  private String said(int expected, String... arguments) throws ReflectiveOperationException {
    StringWriter said = new StringWriter();
    PrintWriter out = new PrintWriter(said);
    Thread thread = Thread.currentThread();
    ClassLoader usual = thread.getContextClassLoader();
    thread.setContextClassLoader(program); // templates are looked up there
    try {
      assertEquals(expected, run.invoke(null, out, out, arguments), said.toString());
    } finally {
      thread.setContextClassLoader(usual);
    }
    return said.toString();
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

  /** Pieces outside all brackets that have two words in a row. */
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
