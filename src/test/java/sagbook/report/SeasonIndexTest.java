package sagbook.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sagbook.issue.InputProblem;
import sagbook.record.InventedResult;

final class SeasonIndexTest {
  @TempDir Path dir;

  private void season() throws InputProblem {
    ReportFolder.write(InventedResult.month(), dir.resolve("2026 May #5"));
    for (int back = 1; back < 5; back++) {
      ReportFolder.write(InventedResult.earlier(back), dir.resolve("2026-0" + (5 - back)));
    }
  }

  @Test
  void listsTheChecksNewestFirstWithTheirSentence() throws InputProblem, IOException {
    season();
    assertEquals(5, SeasonIndex.write(dir));
    Document page = Jsoup.parse(Files.readString(dir.resolve("index.html")));
    assertEquals(
        List.of(
            "1 May 2026 to 1 June 2026",
            "1 April 2026 to 2 May 2026",
            "2 March 2026 to 2 April 2026",
            "31 January 2026 to 2 March 2026",
            "1 January 2026 to 31 January 2026"),
        page.select(".checks a").eachText());
    assertEquals("./2026%20May%20%235/report.html", page.select(".checks a").attr("href"));
    assertTrue(page.select(".checks li").text().contains("Cell 12 limits the battery"));
  }

  @Test
  void drawsWhatChangedOverTheSeason() throws InputProblem, IOException {
    season();
    SeasonIndex.write(dir);
    Document page = Jsoup.parse(Files.readString(dir.resolve("index.html")));
    assertEquals(
        List.of(
            "Plate 1 Capacity: cell 12 went from 261 to 243 Ah, more than the ranges allow for.",
            "Plate 2 Resistance: no cell changed by more than the ranges allow for.",
            "Plate 3 Fuller (+) or emptier (−): no cell changed by more than the ranges allow"
                + " for."),
        page.select(".plate h3").eachText());
  }

  @Test
  void namesTheReportThatCannotBeRead() throws InputProblem, IOException {
    season();
    Files.writeString(dir.resolve("2026-02/results.json"), "{");
    InputProblem problem = assertThrows(InputProblem.class, () -> SeasonIndex.write(dir));
    assertTrue(problem.sentence().contains("2026-02"), problem.sentence());
    assertTrue(Files.notExists(dir.resolve("index.html")));
  }

  @Test
  void saysThatThereIsNoReport() {
    InputProblem problem = assertThrows(InputProblem.class, () -> SeasonIndex.write(dir));
    assertEquals(InputProblem.Kind.INPUT, problem.kind());
  }
}
