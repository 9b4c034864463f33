package sagbook.record.store;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sagbook.issue.InputProblem;
import sagbook.record.DiaryEvent;
import sagbook.record.InventedResult;
import sagbook.record.KeptMonth;
import sagbook.season.InventedSeason;

class RecordCsvTest {
  @TempDir private Path folder;

  /** A record with all that CSV finds hard. */
  private Map<String, byte[]> exported() throws InputProblem, IOException {
    Map<String, byte[]> files;
    try (RecordFile record = RecordFile.open(folder.resolve("battery.db"))) {
      record.keep(new InventedSeason(1).make());
      record.keep(
          KeptMonth.of(
              InventedResult.named("a, \"b\"\nc", "ba nk", "=x\r\ny.csv"), "d".repeat(64)));
      record.note(
          new DiaryEvent(
              LocalDate.parse("2026-01-02"), DiaryEvent.Kind.OTHER, "", 0, "", "  \"\", \n, 007 "));
      files = RecordCsv.files(record);
    }
    for (Map.Entry<String, byte[]> file : files.entrySet()) {
      Files.write(folder.resolve(file.getKey()), file.getValue());
    }
    return files;
  }

  @Test
  void comesBackWithoutAnyLoss() throws InputProblem, IOException {
    Map<String, byte[]> files = exported();
    RecordCsv.read(folder, folder.resolve("copy.db"));
    try (RecordFile original = RecordFile.existing(folder.resolve("battery.db"));
        RecordFile copy = RecordFile.existing(folder.resolve("copy.db"))) {
      assertEquals(original.months(), copy.months());
      assertEquals(original.diary(), copy.diary());
      Map<String, byte[]> again = RecordCsv.files(copy);
      files.forEach((name, bytes) -> assertArrayEquals(bytes, again.get(name), name));
    }
  }

  @Test
  void writesOverNoRecord() throws InputProblem, IOException {
    exported();
    InputProblem problem =
        assertThrows(
            InputProblem.class, () -> RecordCsv.read(folder, folder.resolve("battery.db")));
    assertEquals(InputProblem.Kind.USAGE, problem.kind());
  }

  private String refused() {
    Path copy = folder.resolve("copy.db");
    String sentence =
        assertThrows(InputProblem.class, () -> RecordCsv.read(folder, copy)).sentence();
    assertTrue(Files.notExists(copy), "no half-made record");
    assertEquals(1, sentence.lines().count());
    return sentence;
  }

  private void spoil(String file, String from, String to) throws IOException {
    String text = Files.readString(folder.resolve(file));
    assertTrue(text.contains(from));
    Files.writeString(folder.resolve(file), text.replaceFirst(from, to));
  }

  @Test
  void saysWhichNumberIsNone() throws InputProblem, IOException {
    exported();
    spoil("bank_count.csv", "\"720.0\"", "\"many\"");
    List.of("bank_count.csv", "row 2", "column value", "\"many\"")
        .forEach(word -> assertTrue(refused().contains(word), refused()));
  }

  @Test
  void saysWhichColumnsItExpects() throws InputProblem, IOException {
    exported();
    spoil("diary_event.csv", "\"day\"", "\"date\"");
    assertTrue(refused().contains("expected the columns id, day, kind"), refused());
  }

  @Test
  void refusesAnotherVersion() throws InputProblem, IOException {
    exported();
    spoil("schema.csv", "\"1\"", "\"99\"");
    assertTrue(refused().contains("99"), refused());
  }

  @Test
  void refusesAFolderWithoutTheFiles() {
    assertTrue(refused().contains("export --record"), refused());
  }
}
