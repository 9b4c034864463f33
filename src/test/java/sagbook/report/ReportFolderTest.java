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
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sagbook.issue.InputProblem;
import sagbook.record.CheckResult;
import sagbook.record.InventedResult;

final class ReportFolderTest {
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
      assertEquals(List.of(), PrintedPages.halfEmpty(document));
      assertTrue(PrintedPages.right(document) < 1 - 15 / 210.0, "a table runs out of the page");
      String first = text(document, 1, 1);
      for (String question : page.select(".answers dt").eachText()) {
        assertTrue(first.contains(question), question + " in " + first);
      }
      String all = text(document, 1, pages);
      for (String words : page.select("h1, h2, h3, figcaption").eachText()) {
        assertTrue(all.contains(flat(words)), words);
      }
      // Two abreast: whole in the order of the page, not line by line across it.
      String inOrder = flat(String.join("\n", PrintedPages.texts(document)));
      for (String words : page.select(".glossary dd").eachText()) {
        assertTrue(inOrder.contains(flat(words)), words);
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
