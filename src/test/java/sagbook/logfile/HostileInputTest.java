package sagbook.logfile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.zip.GZIPOutputStream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sagbook.issue.InputProblem;
import sagbook.model.Chemistry;
import sagbook.model.PackDescription;

/** Input made to hang, fill memory or lie: each gets its one sentence, and nothing is lost. */
class HostileInputTest {
  private static final int ROWS = 200;

  @TempDir private Path folder;

  @Test
  void aLineOfAHundredMegabytesIsRefused() throws IOException {
    Path file = folder.resolve("long.csv");
    byte[] megabyte = "3.300,".repeat(1 << 18).getBytes(StandardCharsets.UTF_8);
    try (OutputStream out = Files.newOutputStream(file)) {
      out.write("time,cell 1\n2026-03-14T08:00:00Z,3.3\n".getBytes(StandardCharsets.UTF_8));
      for (long written = 0; written < 100L << 20; written += megabyte.length) {
        out.write(megabyte);
      }
    }
    assertRefused("longer than 1,048,576 characters", file);
  }

  @Test
  void aHundredThousandColumnsAreRefused() throws IOException {
    StringBuilder text = new StringBuilder("time");
    text.append(",c".repeat(100_000)).append("\n0").append(",3".repeat(100_000)).append('\n');
    Path file = Files.writeString(folder.resolve("wide.csv"), text);
    assertRefused("columns", file);
  }

  @Test
  void aGzipFileThatUnpacksWithoutEndIsRefused() throws IOException {
    Path file = folder.resolve("bomb.csv.gz");
    try (OutputStream out = new GZIPOutputStream(Files.newOutputStream(file))) {
      bomb(out);
    }
    assertRefused("unpacks to more than 500 times its size", file);
  }

  @Test
  void aZipEntryThatUnpacksWithoutEndIsRefused() throws IOException {
    Path file = folder.resolve("bomb.zip");
    try (ZipOutputStream out = new ZipOutputStream(Files.newOutputStream(file))) {
      out.putNextEntry(new ZipEntry("bomb.csv"));
      bomb(out);
    }
    assertRefused("unpacks to more than 500 times its size", file);
  }

  private static void bomb(OutputStream out) throws IOException {
    out.write(log(ROWS).getBytes(StandardCharsets.UTF_8));
    byte[] same = "#\n".repeat(1 << 19).getBytes(StandardCharsets.UTF_8);
    for (int i = 0; i < 80; i++) {
      out.write(same);
    }
  }

  @Test
  void anArchiveOfThousandsOfFilesIsRefused() throws IOException {
    Path file = folder.resolve("many.zip");
    try (ZipOutputStream out = new ZipOutputStream(Files.newOutputStream(file))) {
      for (int i = 0; i < 2001; i++) {
        out.putNextEntry(new ZipEntry(i + ".csv"));
      }
    }
    assertRefused("more than 2,000 files", file);
  }

  @Test
  void anArchiveThatNamesPlacesOutsideItselfWritesNothingThere() throws Exception {
    Path file = folder.resolve("climbing.zip");
    try (ZipOutputStream out = new ZipOutputStream(Files.newOutputStream(file))) {
      out.putNextEntry(new ZipEntry("../../climbed.csv"));
      out.write(log(ROWS).getBytes(StandardCharsets.UTF_8));
    }
    assertEquals(ROWS, rows(open(file)));
    assertFalse(Files.exists(folder.resolve("../climbed.csv")));
  }

  @Test
  void linksInACircleAreNotFollowed() throws Exception {
    Path logs = Files.createDirectory(folder.resolve("logs"));
    Files.writeString(logs.resolve("a.csv"), log(ROWS));
    link(logs.resolve("again"), logs);
    link(logs.resolve("self.csv"), logs.resolve("self.csv"));
    assertEquals(ROWS, rows(open(logs)));
    assertRefused("There is no file or folder", logs.resolve("self.csv"));
  }

  private static void link(Path link, Path target) throws IOException {
    try {
      Files.createSymbolicLink(link, target);
    } catch (UnsupportedOperationException e) {
      Assumptions.abort("this file system has no links");
    }
  }

  @Test
  void aDeviceIsRefused() {
    Path device = Path.of("/dev/zero");
    Assumptions.assumeTrue(Files.exists(device), "this system has no /dev/zero");
    assertRefused("is no file but a pipe or device", device);
  }

  @Test
  void standardInputThatDoesNotEndIsRefused() {
    InputStream endless =
        new InputStream() {
          @Override
          public int read() {
            return '1';
          }
        };
    InputProblem problem =
        assertThrows(
            InputProblem.class,
            () -> StandardInput.copy(endless, OutputStream.nullOutputStream(), 1 << 20));
    assertTrue(problem.sentence().contains("does not end"), problem.sentence());
  }

  @Test
  void aFileThatGrowsWhileItIsReadGivesTheRowsItHadAtFirst() throws Exception {
    Path file = Files.writeString(folder.resolve("growing.csv"), log(ROWS));
    OpenedLogs logs = open(file);
    Files.writeString(file, log(2 * ROWS).substring(log(ROWS).length()), StandardOpenOption.APPEND);
    assertEquals(ROWS, rows(logs));
  }

  @Test
  void aFileThatShrinksOrVanishesWhileItIsReadIsReportedAndNotReadInPart() throws Exception {
    Path file = Files.writeString(folder.resolve("shrinking.csv"), log(ROWS));
    OpenedLogs logs = open(file);
    Files.writeString(file, log(ROWS / 2));
    InputProblem shrunk = assertThrows(InputProblem.class, () -> rows(logs));
    assertTrue(shrunk.sentence().contains("changed or removed meanwhile"), shrunk.sentence());
    Files.delete(file);
    InputProblem vanished = assertThrows(InputProblem.class, () -> rows(logs));
    assertTrue(vanished.sentence().contains("changed or removed meanwhile"), vanished.sentence());
  }

  @Test
  void controlCharactersInAFileNameAreNotRepeated() throws Exception {
    Path file;
    try {
      file = Files.writeString(folder.resolve("a\u001b[31m\nb\u0007.csv"), "x\n");
    } catch (java.nio.file.InvalidPathException e) {
      file = Assumptions.abort("this file system has no such names");
    }
    Path named = file;
    InputProblem problem = assertThrows(InputProblem.class, () -> open(named));
    assertTrue(
        problem.sentence().codePoints().noneMatch(Character::isISOControl), problem.sentence());
    Files.writeString(file, log(ROWS));
    for (String sentence : Reading.of(open(file)).sentences()) {
      assertTrue(sentence.codePoints().noneMatch(Character::isISOControl), sentence);
    }
  }

  private void assertRefused(String part, Path file) {
    InputProblem problem = assertThrows(InputProblem.class, () -> rows(open(file)));
    assertEquals(InputProblem.Kind.INPUT, problem.kind());
    assertTrue(problem.sentence().contains(part), problem.sentence());
  }

  private static OpenedLogs open(Path file) throws InputProblem {
    PackDescription pack =
        PackDescription.of("hostile", Chemistry.LFP, 4, 100, ZoneId.of("Europe/Berlin"));
    return LogFolder.open(
        new ReadRequest(
            pack, List.of(file.toString()), Optional.empty(), Optional.empty(), Optional.empty()));
  }

  private static long rows(OpenedLogs logs) throws InputProblem {
    long[] rows = {0};
    logs.read("main", block -> rows[0] += block.rows());
    return rows[0];
  }

  private static String log(int rows) {
    StringBuilder text = new StringBuilder("time,cell 1 V,cell 2 V,cell 3 V,cell 4 V\n");
    for (int i = 0; i < rows; i++) {
      text.append(1_773_475_200L + 10L * i).append(",3.300,3.301,3.302,3.30").append(i % 9);
      text.append('\n');
    }
    return text.toString();
  }
}
