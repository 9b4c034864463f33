package sagbook.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sagbook.issue.InputProblem;
import sagbook.record.Quantity;
import sagbook.record.store.RecordFile;
import sagbook.season.InventedSeason;

class SeasonCommandTest {
  @TempDir private Path folder;
  private String record;

  private record Run(int code, String out, String err) {}

  private static Run run(String... args) {
    StringWriter out = new StringWriter();
    StringWriter err = new StringWriter();
    int code = Main.run(new PrintWriter(out), new PrintWriter(err), args);
    return new Run(code, out.toString(), err.toString());
  }

  @BeforeEach
  void aRecordOfEightMonths() throws InputProblem {
    record = folder.resolve("battery.db").toString();
    try (RecordFile file = RecordFile.open(Path.of(record))) {
      file.keep(new InventedSeason(1).make());
    }
  }

  @Test
  void tellsWhichCellDriftsAndWritesThePages() {
    Run run = run("season", "--record", record, "--out", folder.resolve("season").toString());
    assertEquals(10, run.code(), run.err());
    assertTrue(run.out().startsWith("Cell 3 drifts"), run.out());
    assertTrue(Files.exists(folder.resolve("season/season.json")));
    assertTrue(Files.exists(folder.resolve("season/index.html")));
  }

  @Test
  void aRecordGoesToPlainCsvAndBack() {
    String csv = folder.resolve("csv").toString();
    String copy = folder.resolve("copy.db").toString();
    assertEquals(0, run("export", "--record", record, "--out", csv).code());
    assertEquals(0, run("import", "--record", copy, csv).code());
    assertEquals(2, run("import", "--record", copy, csv).code());
    String to = folder.resolve("season").toString();
    assertEquals(
        run("season", "--record", record, "--out", to).out(),
        run("season", "--record", copy, "--out", to).out());
  }

  @Test
  void aRecordGivesTidyTablesWithTheirDictionary() throws IOException {
    run("note", "--record", record, "--day", "2025-08-01", "--kind", "other", "new", "roof");
    Path to = folder.resolve("tables");
    assertEquals(0, run("export", "--record", record, "--tables", to.toString()).code());
    List<String> estimates = Files.readAllLines(to.resolve("estimates.csv"));
    assertEquals("month,bank,from,to,cell,quantity,unit,value,low,high,note", estimates.get(0));
    assertEquals(1 + 8 * 8 * Quantity.values().length, estimates.size());
    assertTrue(Files.readString(to.resolve("diary.csv")).contains("2025-08-01,other,,,,new roof"));
    String dictionary = Files.readString(to.resolve("dictionary.csv"));
    for (String name : List.of("cells.csv", "banks.csv", "diary.csv")) {
      for (String column : Files.readAllLines(to.resolve(name)).get(0).split(",", -1)) {
        assertTrue(dictionary.contains(name + "," + column + ","), name + " " + column);
      }
    }
  }

  @Test
  void anExportOfNothingIsRefused() {
    assertEquals(2, run("export", "--record", record).code());
    assertEquals(2, run("export", "--tables", folder.toString(), "logs").code());
    assertEquals(2, run("export", "--pack", "p.toml", "--tables", folder.toString()).code());
  }

  @Test
  void saysThatThereIsNoRecord() {
    Run run = run("season", "--record", "none.db", "--out", folder.resolve("s").toString());
    assertEquals(3, run.code());
    assertTrue(run.err().contains("none.db"), run.err());
    assertTrue(Files.notExists(folder.resolve("s")));
  }

  @Test
  void theDiaryTakesNotesAndPrintsThem() {
    Run noted =
        run(
            "note",
            "--record",
            record,
            "--day",
            "2025-08-01",
            "--kind",
            "joint-tightened",
            "--cell",
            "5",
            "to",
            "6",
            "Nm");
    assertEquals(0, noted.code(), noted.err());
    assertEquals("Noted: 2025-08-01, joint tightened, cell 5, to 6 Nm", noted.out().strip());
    assertEquals(
        "2025-08-01, joint tightened, cell 5, to 6 Nm",
        run("note", "--record", record).out().strip());
  }

  @ParameterizedTest
  @CsvSource({
    "2025-08-01, cell swapped, 3, --kind",
    "1 August, cell replaced, 3, --day",
    "2025-08-01, cell replaced, 9, from 1 to 8",
    "2025-08-01, cell replaced, 0, from 1 to 8",
    "2025-08-01, cell moved, 3, --mark"
  })
  void aNoteThatMakesNoSenseIsRefusedInOneSentence(
      String day, String kind, String cell, String word) {
    Run run = run("note", "--record", record, "--day", day, "--kind", kind, "--cell", cell);
    assertEquals(2, run.code(), run.err());
    assertEquals(1, run.err().strip().lines().count(), run.err());
    assertTrue(run.err().contains(word), run.err());
    assertEquals("", run("note", "--record", record).out());
  }
}
