package sagbook.report;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TimeZone;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sagbook.issue.InputProblem;
import sagbook.record.CheckResult;
import sagbook.record.InventedResult;

final class ReportFolderTest {
  /** Pages between the first and the last hold words down to here, as a share of their height. */
  private static final double FILLED = 0.5;

  private static final List<String> NAMES =
      List.of(
          "report.html",
          "results.json",
          "tables/banks.csv",
          "tables/cells.csv",
          "tables/estimates.csv",
          "tables/inputs.csv",
          "tables/what_if.csv");

  private final CheckResult result = InventedResult.month();

  @TempDir Path dir;

  @Test
  void writesAllFilesAndNothingElse() throws InputProblem, IOException {
    Path out = dir.resolve("2026/05");
    ReportFolder.write(result, out);
    assertEquals(
        NAMES,
        List.copyOf(
            content(dir.resolve("2026")).keySet().stream().map(n -> n.substring(3)).toList()));
  }

  @Test
  void givesTheSameBytesInAnyLocaleAndZone() throws InputProblem, IOException {
    ReportFolder.write(result, dir.resolve("a"));
    Locale locale = Locale.getDefault();
    TimeZone zone = TimeZone.getDefault();
    try {
      Locale.setDefault(Locale.forLanguageTag("fa-IR-u-nu-arabext"));
      TimeZone.setDefault(TimeZone.getTimeZone("Pacific/Chatham"));
      ReportFolder.write(result, dir.resolve("b"));
    } finally {
      Locale.setDefault(locale);
      TimeZone.setDefault(zone);
    }
    Map<String, byte[]> first = content(dir.resolve("a"));
    Map<String, byte[]> second = content(dir.resolve("b"));
    first.forEach((name, bytes) -> assertArrayEquals(bytes, second.get(name), name));
  }

  @Test
  void thePdfHoldsTheSameContentAndTheSameBytesEveryTime() throws InputProblem, IOException {
    ReportFolder.writeWithPdf(result, dir.resolve("a"));
    ReportFolder.writeWithPdf(result, dir.resolve("b"));
    byte[] pdf = Files.readAllBytes(dir.resolve("a/report.pdf"));
    assertArrayEquals(pdf, Files.readAllBytes(dir.resolve("b/report.pdf")));
    Document page = Jsoup.parse(Files.readString(dir.resolve("a/report.html")));
    try (PDDocument document = Loader.loadPDF(pdf)) {
      int pages = document.getNumberOfPages();
      assertTrue(8 <= pages && pages <= 14, pages + " pages");
      assertEquals(page.select(".plate").size(), drawings(document));
      for (int leaf = 2; leaf < pages; leaf++) {
        assertTrue(foot(document, leaf) > FILLED, "page " + leaf + " is half empty");
      }
      String first = text(document, 1, 1);
      for (String question : page.select(".answers dt").eachText()) {
        assertTrue(first.contains(question), question + " in " + first);
      }
      String all = text(document, 1, pages);
      for (String words : page.select("h1, h2, h3, figcaption, .glossary dd").eachText()) {
        assertTrue(all.contains(flat(words)), words);
      }
      assertFalse(all.contains("#"), "a character that the font lacks");
    }
  }

  private static String text(PDDocument document, int from, int to) throws IOException {
    PDFTextStripper stripper = new PDFTextStripper();
    stripper.setSortByPosition(true);
    stripper.setStartPage(from);
    stripper.setEndPage(to);
    return flat(stripper.getText(document));
  }

  /** How far down a page its last words but the page number stand, as a share of its height. */
  private static double foot(PDDocument document, int page) throws IOException {
    double[] lowest = {0};
    PDFTextStripper stripper =
        new PDFTextStripper() {
          @Override
          protected void processTextPosition(TextPosition text) {
            double share = text.getY() / text.getPageHeight();
            lowest[0] = share < 0.94 ? Math.max(lowest[0], share) : lowest[0];
          }
        };
    stripper.setStartPage(page);
    stripper.setEndPage(page);
    stripper.getText(document);
    return lowest[0];
  }

  private static String flat(String text) {
    return text.replaceAll("[\\s\u00a0\u202f]+", " ");
  }

  private static int drawings(PDDocument document) {
    int drawings = 0;
    for (PDPage page : document.getPages()) {
      for (COSName name : page.getResources().getXObjectNames()) {
        drawings += name.getName().isEmpty() ? 0 : 1;
      }
    }
    return drawings;
  }

  @Test
  void aPdfThatIsThereIsNeverLeftBehindByALaterMonth() throws InputProblem, IOException {
    ReportFolder.writeWithPdf(result, dir);
    byte[] before = Files.readAllBytes(dir.resolve("report.pdf"));
    ReportFolder.write(InventedResult.withoutCurrent(), dir);
    assertFalse(Arrays.equals(before, Files.readAllBytes(dir.resolve("report.pdf"))));
  }

  @Test
  void replacesAnEarlierReportAndLeavesOtherFilesAlone() throws InputProblem, IOException {
    ReportFolder.write(InventedResult.withoutCurrent(), dir);
    Files.writeString(dir.resolve("my notes.txt"), "mine");
    ReportFolder.write(result, dir);
    Map<String, byte[]> now = content(dir);
    assertEquals(NAMES.size() + 1, now.size());
    assertEquals("mine", Files.readString(dir.resolve("my notes.txt")));
    assertTrue(Files.readString(dir.resolve("results.json")).contains("\"charged_ah\" : 5210.4"));
  }

  @Test
  void keepsTheEarlierReportWholeWhenAFileCannotBeReplaced() throws InputProblem, IOException {
    ReportFolder.write(InventedResult.withoutCurrent(), dir);
    Files.delete(dir.resolve("results.json"));
    Files.createDirectories(dir.resolve("results.json/in the way"));
    Map<String, byte[]> before = content(dir);
    InputProblem problem = assertThrows(InputProblem.class, () -> ReportFolder.write(result, dir));
    assertEquals(InputProblem.Kind.OUTPUT, problem.kind());
    Map<String, byte[]> after = content(dir);
    assertEquals(before.keySet(), after.keySet());
    before.forEach((name, bytes) -> assertArrayEquals(bytes, after.get(name), name));
  }

  @Test
  void saysInOneSentenceThatTheFolderIsAFile() throws IOException {
    Path file = Files.writeString(dir.resolve("report"), "x");
    InputProblem problem = assertThrows(InputProblem.class, () -> ReportFolder.write(result, file));
    assertEquals(InputProblem.Kind.OUTPUT, problem.kind());
    assertTrue(problem.sentence().contains("it is a file, not a folder"), problem.sentence());
    assertFalse(problem.sentence().contains("\n"));
    assertEquals("x", Files.readString(file));
  }

  private static Map<String, byte[]> content(Path folder) throws IOException {
    Map<String, byte[]> content = new TreeMap<>();
    try (Stream<Path> paths = Files.walk(folder)) {
      for (Path path : paths.filter(Files::isRegularFile).toList()) {
        String name = folder.relativize(path).toString().replace('\\', '/');
        content.put(name, Files.readAllBytes(path));
      }
    }
    return content;
  }
}
