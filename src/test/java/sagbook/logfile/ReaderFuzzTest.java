package sagbook.logfile;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import sagbook.issue.InputProblem;
import sagbook.model.Chemistry;
import sagbook.model.PackDescription;
import sagbook.model.SampleBlock;
import sagbook.packfile.MappingFile;
import sagbook.packfile.PackFile;

/** Whatever comes in, the reader gives good rows or one printable sentence. */
class ReaderFuzzTest {
  private static final PackDescription PACK =
      PackDescription.of("fuzzed", Chemistry.LFP, 4, 100, ZoneId.of("Europe/Berlin"));

  @FuzzTest(maxDuration = "20m")
  void anyFileGivesGoodRowsOrASentence(byte[] data) throws IOException {
    Path file = Files.createTempFile("fuzzed", ".log");
    try {
      Files.write(file, data);
      ReadRequest request =
          new ReadRequest(
              PACK, List.of(file.toString()), Optional.empty(), Optional.empty(), Optional.empty());
      OpenedLogs logs = LogFolder.open(request);
      double[] last = {Double.NEGATIVE_INFINITY};
      ReadReport report = logs.read("main", block -> check(block, last));
      report.sentences().forEach(ReaderFuzzTest::assertPrintable);
      report.advice().forEach(ReaderFuzzTest::assertPrintable);
    } catch (InputProblem e) {
      assertPrintable(e.sentence());
    } finally {
      Files.delete(file);
    }
  }

  private static void check(SampleBlock block, double[] last) {
    for (int row = 0; row < block.rows(); row++) {
      double time = block.timeS()[row];
      assertTrue(time > last[0], "times must rise");
      last[0] = time;
      for (double[] cell : block.voltageV()) {
        assertFalse(cell[row] <= 0 || cell[row] >= 6, "voltage " + cell[row]);
      }
      for (double[] cell : block.bleedFraction()) {
        assertFalse(cell[row] < 0 || cell[row] > 1, "bleed " + cell[row]);
      }
    }
  }

  private static void assertPrintable(String sentence) {
    assertFalse(sentence.isBlank());
    assertTrue(
        sentence.codePoints().noneMatch(Character::isISOControl), "control character: " + sentence);
  }

  @FuzzTest(maxDuration = "5m")
  void anyDescriptionGivesAPackOrASentence(byte[] data) {
    String text = new String(data, StandardCharsets.UTF_8);
    try {
      assertTrue(PackFile.parse("pack.toml", text).seriesCells() >= 2);
    } catch (InputProblem e) {
      assertPrintable(e.sentence());
    }
  }

  @FuzzTest(maxDuration = "5m")
  void anyMappingGivesMappingsOrASentence(byte[] data) {
    String text = new String(data, StandardCharsets.UTF_8);
    try {
      MappingFile.parse("columns.toml", text)
          .forEach(
              mapping ->
                  assertTrue(mapping.headerLine().isEmpty() || mapping.headerLine().get() >= 0));
    } catch (InputProblem e) {
      assertPrintable(e.sentence());
    }
  }
}
