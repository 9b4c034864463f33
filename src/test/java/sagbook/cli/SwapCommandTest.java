package sagbook.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sagbook.record.CheckResult;
import sagbook.record.InventedResult;
import sagbook.record.ResultsJson;

class SwapCommandTest {
  @TempDir private Path folder;
  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();

  @BeforeEach
  void writeResults() throws IOException {
    results(InventedResult.month());
  }

  private void results(CheckResult result) throws IOException {
    Files.writeString(folder.resolve("results.json"), ResultsJson.text(result));
  }

  private int swap(String... args) {
    List<String> all = new ArrayList<>(List.of("swap", "--results", folder.toString()));
    all.addAll(List.of(args));
    return Main.run(
        new PrintWriter(out, true), new PrintWriter(err, true), all.toArray(String[]::new));
  }

  /** The report of the same month says 29 Ah (3 to 33), 1.5 kWh and 2.4 h. */
  @Test
  void answersAsTheReportDoes() {
    assertEquals(0, swap("--cell", "12"), err.toString());
    String text = out.toString().replace('\u00a0', ' ');
    assertTrue(text.startsWith("Replacing cell 12 by a cell of 280 Ah (nominal):"), text);
    assertTrue(text.contains("charge    +29 Ah (3 to 33)"), text);
    assertTrue(text.contains("energy    +1.5 kWh ("), text);
    assertTrue(text.contains("evening   +140 min"), text);
    assertTrue(text.contains("the battery gives 236 Ah"), text);
  }

  @Test
  void reckonsWithTheSpareThatIsNamed() {
    assertEquals(0, swap("--cell", "12", "--cell", "5", "--spare-ah", "250", "--spare-mohm", "5"));
    String text = out.toString().replace('\u00a0', ' ');
    assertTrue(text.startsWith("Replacing cells 5, 12 by cells of 250 Ah:"), text);
    assertTrue(text.contains("0.94"), text);
  }

  @Test
  void saysWhatIsNotKnown() throws IOException {
    results(InventedResult.withoutCurrent());
    assertEquals(0, swap("--cell", "12"));
    assertTrue(out.toString().contains("energy    not known: "), out.toString());
  }

  @ParameterizedTest
  @CsvSource({
    "--cell 17, 2, --cell is 17; expected a number from 1 to 16.",
    "--cell 0, 2, --cell is 0; expected a number from 1 to 16.",
    "--cell 3 --spare-ah 0, 2, --spare-ah is 0.0; expected ampere-hours",
    "--cell 3 --spare-ah NaN, 2, --spare-ah is NaN; expected ampere-hours",
    "--cell 3 --spare-mohm -1, 2, --spare-mohm is -1.0; expected milliohms",
    "--cell 3 --bank left, 2, expected one of",
  })
  void nonsenseGetsOneSentence(String args, int code, String sentence) {
    assertEquals(code, swap(args.split(" ", -1)), err.toString());
    assertTrue(err.toString().contains(sentence), err.toString());
    assertEquals("", out.toString());
  }

  @Test
  void asksWhichBankAndRefusesWhatIsNoResult() throws IOException {
    results(InventedResult.twoBanks());
    assertEquals(2, swap("--cell", "3"));
    assertTrue(err.toString().contains("\"north, south\""), err.toString());
    assertEquals(0, swap("--cell", "3", "--bank", "south"));
    Files.delete(folder.resolve("results.json"));
    assertEquals(3, swap("--cell", "3"));
    assertTrue(err.toString().contains("can't be read; name the folder"), err.toString());
    Files.writeString(folder.resolve("results.json"), "{}");
    assertEquals(3, swap("--cell", "3"));
    assertTrue(err.toString().contains("run check again"), err.toString());
  }
}
