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
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * What a keeper meets on the command line: answers, exit codes, and one sentence when all is wrong.
 */
class CheckCommandTest {
  private static final String PACK = "sample-logs/pack.toml";
  private static final Path MONTH = Path.of("sample-logs/logs/2026-09.csv.gz");

  @TempDir private Path temp;

  private record Run(int code, String out, String err) {}

  private static Run run(String... args) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    int code = Main.run(new PrintWriter(out), new PrintWriter(err), args);
    return new Run(code, out.toString(), err.toString());
  }

  @TempDir private static Path monthsFolder;
  private static Run month;

  /** A month that needs attention: read once, asked thrice. */
  @BeforeAll
  static void checkTheMonth() {
    month = run("check", "--pack", PACK, "--out", monthsReport().toString(), MONTH.toString());
  }

  private static Path monthsReport() {
    return monthsFolder.resolve("report");
  }

  private Run check(String pack, Path log) {
    return run("check", "--pack", pack, "--out", temp.resolve("report").toString(), log.toString());
  }

  private void refused(Run run, int code, String... words) {
    assertEquals(code, run.code(), run.err());
    assertEquals(1, run.err().strip().lines().count(), run.err());
    for (String word : words) {
      assertTrue(run.err().contains(word), run.err());
    }
    assertFalse(Files.exists(temp.resolve("report")), "no half-written report");
  }

  private Path written(String name, String text) throws IOException {
    return Files.writeString(temp.resolve(name), text);
  }

  private static List<String> linesOfTheMonth() throws IOException {
    try (BufferedReader reader =
        new BufferedReader(
            new InputStreamReader(
                new GZIPInputStream(Files.newInputStream(MONTH)), StandardCharsets.UTF_8))) {
      return reader.lines().toList();
    }
  }

  @Test
  void aMonthThatNeedsAttentionGivesItsSentenceAReportAndTen() {
    assertEquals(10, month.code());
    assertTrue(month.out().startsWith("Cell 6 has lost capacity"), month.out());
    assertEquals("", month.err());
    for (String file : List.of("report.html", "results.json", "tables/cells.csv")) {
      assertTrue(Files.exists(monthsReport().resolve(file)), file);
    }
  }

  @Test
  void endsWithTheSentenceTheWeakestCellsAndWhereTheReportLies() {
    List<String> lines = month.out().lines().toList();
    assertTrue(lines.get(0).startsWith("Cell 6 has lost capacity"), lines.toString());
    assertTrue(lines.get(3).matches("\\s+6 {2}low capacity\\s+86\\.3 \\(8.*"), lines.get(3));
    assertEquals("Report: " + monthsReport().resolve("report.html"), lines.get(lines.size() - 1));
  }

  @Test
  void printsResultsAloneOrNothingWhenAsked() throws IOException {
    String out = temp.resolve("report").toString();
    Run json = run("check", "--json", "--pack", PACK, "--out", out, MONTH.toString());
    assertEquals(Files.readString(temp.resolve("report/results.json")), json.out());
    assertEquals("", json.err());
    Run quiet = run("check", "--quiet", "--pack", PACK, "--out", out, MONTH.toString());
    assertEquals("", quiet.out() + quiet.err());
    assertEquals(json.code(), quiet.code());
  }

  @Test
  void theReportIsThereAsPdfWhenAsked() {
    Path out = temp.resolve("report");
    run("check", "--pdf", "--pack", PACK, "--out", out.toString(), MONTH.toString());
    assertTrue(Files.exists(out.resolve("report.pdf")));
  }

  @Test
  void nothingIsColouredThroughAPipe() {
    String all = month.out() + run("check", "--help").out() + run("--help").out();
    assertFalse(all.contains("\u001b"), "an escape sequence");
  }

  /** A cell that was never heard must neither stop the check nor be called healthy. */
  @Test
  void aCellThatIsMissingFromTheLogIsSaidToBeUnknown() throws IOException {
    List<String> lines = linesOfTheMonth();
    int column = List.of(lines.get(0).split(",", -1)).indexOf("cell01_mv");
    StringBuilder text = new StringBuilder();
    for (String line : lines) {
      String[] fields = line.split(",", -1);
      fields[column] = text.isEmpty() ? fields[column] : "";
      text.append(String.join(",", fields)).append('\n');
    }
    Run run = check(PACK, written("missing.csv", text.toString()));
    assertTrue(run.code() == 10 || run.code() == 0, run.code() + run.err());
    String json = Files.readString(temp.resolve("report/results.json"));
    assertTrue(json.contains("insufficient evidence"), run.out());
  }

  @Test
  void whatIsNotThereIsRefused() {
    refused(check(PACK, temp.resolve("nowhere.csv")), 3, "nowhere.csv");
  }

  @Test
  void anEmptyFileIsRefused() throws IOException {
    refused(check(PACK, written("empty.csv", "")), 3, "empty.csv", "empty");
  }

  @Test
  void aPictureIsRefused() throws IOException {
    Path picture = temp.resolve("picture.csv");
    Files.write(picture, new byte[] {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1a, '\n', 0, 0});
    refused(check(PACK, picture), 3, "PNG");
  }

  @Test
  void aLogWithoutCellsIsRefused() throws IOException {
    String text = "time,a,b\n2026-01-01T00:00:00Z,1,2\n2026-01-01T00:01:00Z,1,2\n";
    refused(check(PACK, written("other.csv", text)), 3, "no cell voltages", "--columns");
  }

  @Test
  void textInANumberIsRefusedWithLineAndColumn() throws IOException {
    List<String> lines = linesOfTheMonth().subList(0, 60);
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < lines.size(); i++) {
      String line = lines.get(i);
      text.append(i == 19 ? line.replaceFirst(",3[0-9]{3},", ",oops,") : line).append('\n');
    }
    refused(check(PACK, written("text.csv", text.toString())), 3, "line 20", "\"oops\"", "number");
  }

  @Test
  void anUnknownKeyIsRefusedWithItsPlaceAndTheNearestKnownOne() throws IOException {
    String text =
        Files.readString(Path.of(PACK)).replace("nominal_capacity_ah", "nominal_capacity");
    Path pack = written("pack.toml", text);
    refused(check(pack.toString(), MONTH), 2, "line 9", "nominal_capacity_ah");
  }

  @Test
  void seventeenCellsForSixteenColumnsAreRefused() throws IOException {
    String text = Files.readString(Path.of(PACK)).replace("series_cells = 16", "series_cells = 17");
    Path pack = written("pack.toml", text);
    refused(check(pack.toString(), MONTH), 2, "17", "16 cells");
  }

  @Test
  void withoutACommandTheKnownOnesAreNamed() {
    Run run = run();
    assertEquals(2, run.code());
    assertTrue(
        run.err()
            .contains("check, preview, season, note, swap, spares, export, import or simulate"),
        run.err());
  }

  @Test
  void theMappingThatPreviewWritesIsTakenBack() throws IOException {
    Path columns = temp.resolve("columns.toml");
    Run preview = run("preview", "--pack", PACK, "--write", columns.toString(), MONTH.toString());
    assertEquals(0, preview.code(), preview.err());
    assertTrue(preview.out().contains("cell 16 voltage"), preview.out());
    assertTrue(Files.readString(columns).contains("\"cell01_mv\" = \"cell 1 voltage, mV\""));
    Run run =
        run(
            "check",
            "--pack",
            PACK,
            "--columns",
            columns.toString(),
            "--out",
            temp.resolve("report").toString(),
            MONTH.toString());
    assertEquals(10, run.code(), run.err());
  }

  /** The joint was sound for ten of the thirty days; what counts is how it is at the end. */
  @Test
  void aJointThatWorksLooseWithinTheMonthIsToldWithTheDay() throws IOException {
    Path folder = temp.resolve("loose");
    run("simulate", "--scenario", "loose-joint", "--cadence-s", "30", "--out", folder.toString());
    Run run = check(folder.resolve("pack.toml").toString(), folder.resolve("logs"));
    assertEquals(10, run.code(), run.err());
    assertTrue(run.out().contains("Cell 7 seems to have a bad joint"), run.out());
    String results = Files.readString(temp.resolve("report/results.json"));
    assertTrue(
        results.contains("Its resistance rose within this log, about 11 June 2026"), results);
  }
}
