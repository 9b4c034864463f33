package sagbook.record.store;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sagbook.issue.InputProblem;
import sagbook.record.CheckResult;
import sagbook.record.DiaryEvent;
import sagbook.record.InventedResult;
import sagbook.record.KeptCheck;
import sagbook.record.KeptMonth;

class RecordFileTest {
  private static final String SETTINGS = "a".repeat(64);

  @TempDir private Path folder;

  private Path file() {
    return folder.resolve("battery.db");
  }

  private static List<KeptMonth> kept(CheckResult result) {
    return KeptMonth.of(result, SETTINGS);
  }

  private List<KeptMonth> keep(List<List<KeptMonth>> checks) throws InputProblem {
    try (RecordFile record = RecordFile.open(file())) {
      for (List<KeptMonth> check : checks) {
        record.keep(check);
      }
    }
    return months();
  }

  private List<KeptMonth> months() throws InputProblem {
    try (RecordFile record = RecordFile.existing(file())) {
      return record.months();
    }
  }

  @Test
  void givesBackAllThatItWasGiven() throws InputProblem {
    List<KeptMonth> check = kept(InventedResult.twoBanks());
    assertEquals(check, keep(List.of(check)));
  }

  @Test
  void keepsALeakThatMayBeLarger() throws InputProblem {
    List<KeptMonth> check = kept(InventedResult.leakingUnseen(4));
    assertEquals(check, keep(List.of(check)));
  }

  @Test
  void keepsAMonthOfWhichNothingIsKnown() throws InputProblem {
    List<KeptMonth> check = kept(InventedResult.nothing());
    assertEquals(check, keep(List.of(check)));
  }

  @Test
  void listsMonthsOldestFirstWhateverTheOrderTheyCameIn() throws InputProblem {
    List<KeptMonth> months =
        keep(
            List.of(
                kept(InventedResult.earlier(1)),
                kept(InventedResult.month()),
                kept(InventedResult.earlier(4))));
    assertEquals(3, months.size());
    assertEquals(
        months.stream().map(m -> m.bank().from()).sorted().toList(),
        months.stream().map(m -> m.bank().from()).toList());
  }

  @Test
  void replacesAMonthThatIsRunAgain() throws InputProblem {
    List<KeptMonth> second = kept(InventedResult.withoutCurrent());
    assertEquals(second, keep(List.of(kept(InventedResult.month()), second)));
  }

  @ParameterizedTest
  @CsvSource({
    "2026-05-01, 2026-06-01, 2026-05-01, 2026-05-20, true",
    "2026-05-01, 2026-05-31, 2026-05-31, 2026-06-30, false",
    "2026-05-01, 2026-06-01, 2026-05-20, 2026-06-20, false",
    "2026-05-10, 2026-05-12, 2026-05-01, 2026-06-01, true",
    "2026-05-01, 2026-05-01, 2026-05-01, 2026-05-01, true"
  })
  void takesPeriodsForTheSameThatShareMoreThanHalf(
      String from, String to, String otherFrom, String otherTo, boolean same) {
    assertEquals(same, MonthWriter.mostlySame(day(from), day(to), day(otherFrom), day(otherTo)));
  }

  private static Instant day(String day) {
    return Instant.parse(day + "T00:00:00Z");
  }

  @Test
  void keepsTheDiaryInOrderOfDays() throws InputProblem {
    DiaryEvent later =
        new DiaryEvent(
            LocalDate.parse("2026-04-02"),
            DiaryEvent.Kind.CELL_REPLACED,
            "main",
            9,
            "B 17",
            "=1+1");
    DiaryEvent earlier =
        new DiaryEvent(
            LocalDate.parse("2026-03-01"), DiaryEvent.Kind.FIRMWARE_CHANGED, "", 0, "", "it’s 2.1");
    try (RecordFile record = RecordFile.open(file())) {
      record.note(later);
      record.note(earlier);
      assertEquals(List.of(earlier, later), record.diary());
    }
  }

  /** The page limit stands for a disk that is full. */
  @Test
  void aFullDiskGivesOneSentenceAndTheOldState() throws InputProblem, SQLException {
    List<KeptMonth> old = keep(List.of(kept(InventedResult.month())));
    try (RecordFile record = RecordFile.open(file())) {
      record.limitPages(1);
      List<KeptMonth> many = new ArrayList<>();
      for (int back = 1; back < 12; back++) {
        many.addAll(kept(InventedResult.earlier(back)));
      }
      InputProblem problem = assertThrows(InputProblem.class, () -> record.keep(many));
      assertEquals(InputProblem.Kind.OUTPUT, problem.kind());
      assertTrue(problem.sentence().contains("disk is full"), problem.sentence());
      assertEquals(old, record.months());
    }
    assertEquals(old, months());
  }

  @Test
  void severalRunsAtOnceLoseNothing() throws Exception {
    RecordFile.open(file()).close();
    ExecutorService runs = Executors.newFixedThreadPool(4);
    try {
      List<Callable<Void>> writers = new ArrayList<>();
      for (int back = 0; back < 8; back++) {
        List<KeptMonth> check = kept(InventedResult.earlier(back));
        writers.add(
            () -> {
              try (RecordFile record = RecordFile.open(file())) {
                record.keep(check);
              }
              return null;
            });
      }
      for (Future<Void> run : runs.invokeAll(writers)) {
        run.get();
      }
    } finally {
      runs.shutdown();
    }
    assertEquals(8, months().size());
  }

  private void sql(String... statements) throws SQLException {
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file());
        Statement statement = connection.createStatement()) {
      for (String sql : statements) {
        statement.execute(sql);
      }
    }
  }

  private String refused() {
    return assertThrows(InputProblem.class, () -> RecordFile.open(file())).sentence();
  }

  @Test
  void refusesARecordOfANewerVersion() throws InputProblem, SQLException {
    RecordFile.open(file()).close();
    sql("PRAGMA user_version = " + (Schema.VERSION + 1));
    String sentence = refused();
    assertTrue(sentence.contains("newer Sagbook"), sentence);
    assertTrue(sentence.contains("version " + (Schema.VERSION + 1)), sentence);
  }

  @Test
  void refusesADatabaseOfAnotherProgram() throws SQLException {
    sql("CREATE TABLE recipe (name TEXT)");
    assertTrue(refused().contains("another program"), refused());
  }

  @Test
  void refusesAFileThatIsNoDatabase() throws IOException {
    Files.writeString(file(), "time,v01,v02\n".repeat(1000));
    assertTrue(refused().contains("no whole record"), refused());
  }

  @Test
  void saysThatThereIsNoRecord() {
    InputProblem problem =
        assertThrows(InputProblem.class, () -> RecordFile.existing(folder.resolve("none.db")));
    assertTrue(problem.sentence().contains("none.db"), problem.sentence());
    assertTrue(Files.notExists(folder.resolve("none.db")));
  }

  @Test
  void saysThatItMayNotWriteThere() {
    InputProblem problem =
        assertThrows(
            InputProblem.class, () -> RecordFile.open(folder.resolve("nowhere/battery.db")));
    assertTrue(problem.sentence().contains("nowhere"), problem.sentence());
    assertEquals(1, problem.sentence().lines().count());
  }

  /** A record as the first released schema left it. */
  @Test
  void bringsARecordOfTheFirstSchemaUpToDate() throws Exception {
    String dump;
    try (var in = RecordFileTest.class.getResourceAsStream("record-1.sql")) {
      dump = new String(in.readAllBytes(), java.nio.charset.StandardCharsets.UTF_8);
    }
    sql(dump.split(";\n"));
    try (RecordFile record = RecordFile.existing(file())) {
      assertEquals(Schema.VERSION, Schema.number(record.connection(), "PRAGMA user_version"));
      KeptMonth old = record.months().get(0);
      assertEquals(List.of(asFarAs(old, kept(InventedResult.month()).get(0))), record.months());
      assertEquals(10, old.bank().cells().get(0).estimates().size());
      assertEquals("B17", record.diary().get(0).mark());
    }
  }

  /** A month without the quantities that came after the record was written. */
  private static KeptMonth asFarAs(KeptMonth old, KeptMonth now) {
    List<KeptCheck.Cell> cells = new ArrayList<>();
    for (KeptCheck.Cell cell : now.bank().cells()) {
      cells.add(
          new KeptCheck.Cell(
              cell.cell(),
              cell.rank(),
              cell.finding(),
              only(old.bank().cells().get(0).estimates(), cell.estimates())));
    }
    List<KeptMonth.Cell> told = new ArrayList<>();
    for (KeptMonth.Cell cell : now.cells()) {
      told.add(
          new KeptMonth.Cell(
              cell.action(),
              cell.evidence(),
              only(old.cells().get(0).readings(), cell.readings())));
    }
    KeptCheck.Bank bank = now.bank();
    return new KeptMonth(
        now.battery(),
        new KeptCheck.Bank(
            bank.bank(), bank.from(), bank.to(), bank.headline(), bank.severity(), cells),
        now.conditions(),
        only(old.figures(), now.figures()),
        only(old.counts(), now.counts()),
        told,
        now.remarks(),
        now.inputs());
  }

  private static <K, V> Map<K, V> only(Map<K, ?> known, Map<K, V> all) {
    Map<K, V> kept = new HashMap<>(all);
    kept.keySet().retainAll(known.keySet());
    return kept;
  }
}
