package sagbook.report;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sagbook.issue.InputProblem;
import sagbook.record.DiaryEvent;
import sagbook.record.KeptMonth;
import sagbook.season.InventedSeason;
import sagbook.season.Season;

class DossierTest {
  @TempDir private Path folder;

  private Path made(String name, Optional<LocalDate> day) throws InputProblem {
    List<KeptMonth> months = new InventedSeason(1).make();
    List<DiaryEvent> diary =
        List.of(
            new DiaryEvent(
                InventedSeason.day(4),
                DiaryEvent.Kind.JOINT_TIGHTENED,
                "",
                5,
                "",
                "with <care> & grease \u202e"));
    Path out = folder.resolve(name);
    SeasonPages.writeWithDossier(Season.of(months, diary), diary, "0.1.0", day, out);
    return out;
  }

  @Test
  void isTheSameBytesEveryTimeApartFromItsDate() throws InputProblem, IOException {
    Path one = made("one", Optional.empty());
    Path other = made("other", Optional.empty());
    for (String file : List.of("dossier.html", "dossier.pdf")) {
      assertArrayEquals(
          Files.readAllBytes(one.resolve(file)), Files.readAllBytes(other.resolve(file)), file);
    }
    Path dated = made("dated", Optional.of(LocalDate.parse("2026-03-14")));
    String html = Files.readString(dated.resolve("dossier.html"));
    assertTrue(html.contains("Made on 14 March 2026"));
    assertEquals(
        Files.readString(one.resolve("dossier.html")), html.replace(". Made on 14 March 2026", ""));
  }

  @Test
  void saysWhatItIsAndWhatItIsNot() throws InputProblem, IOException {
    Document page =
        Jsoup.parse(Files.readString(made("one", Optional.empty()).resolve("dossier.html")));
    assertTrue(page.select(".headline").text().startsWith("Cell 3 drifts"));
    assertTrue(page.select(".not").text().contains("no laboratory test"));
    assertEquals(8, page.select(".files tbody tr").size());
    assertTrue(page.select(".files td").text().contains("b".repeat(64)));
    assertTrue(page.text().contains("with <care> & grease <U+202E>"));
    assertTrue(page.text().contains("Made by sagbook 0.1.0."));
    assertTrue(page.select("script").isEmpty());
  }

  @Test
  void thePdfHoldsTheSameWordsOnFewPages() throws InputProblem, IOException {
    Path pdf = made("one", Optional.empty()).resolve("dossier.pdf");
    try (PDDocument document = Loader.loadPDF(pdf.toFile())) {
      assertTrue(document.getNumberOfPages() <= 5, document.getNumberOfPages() + " pages");
      String text = new PDFTextStripper().getText(document).replaceAll("[\\s\u00a0]+", " ");
      for (String words :
          List.of(
              "Cell 3 drifts",
              "no laboratory test",
              "Resistance, mΩ",
              "with <care> & grease <U+202E>",
              "−",
              "Made by sagbook 0.1.0.")) {
        assertTrue(text.contains(words), words + " in " + text);
      }
      assertFalse(text.contains("#"), "a character that the font lacks");
    }
  }
}
