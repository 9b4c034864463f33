package sagbook.packfile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sagbook.issue.InputProblem;
import sagbook.model.Chemistry;
import sagbook.model.CurrentSign;
import sagbook.model.Limits;
import sagbook.model.PackDescription;

class PackFileTest {
  private static final String SMALLEST =
      """
      [pack]
      name = "Boathouse"
      chemistry = "lfp"
      series_cells = 8
      """;

  @TempDir private Path folder;

  @Test
  void threeLinesAreEnoughAndTheRestHasDefaults() throws InputProblem {
    PackDescription pack = PackFile.parse("pack.toml", SMALLEST);

    assertEquals("Boathouse", pack.name());
    assertEquals(Chemistry.LFP, pack.chemistry());
    assertEquals(8, pack.seriesCells());
    assertEquals("Etc/UTC", pack.timezone().getId());
    assertEquals(Limits.of(Chemistry.LFP), pack.limits());
    assertEquals(Optional.empty(), pack.currentSign());
    assertEquals(List.of(), pack.banks());
  }

  /** Limits: data-sheet practice, no single source. */
  @ParameterizedTest
  @CsvSource({"lfp, 3.65, 2.5", "nmc, 4.2, 3.0", "nca, 4.2, 3.0", "lco, 4.2, 3.0"})
  void eachChemistryHasItsWordAndItsLimits(String word, double fullV, double emptyV)
      throws InputProblem {
    PackDescription pack =
        PackFile.parse("pack.toml", SMALLEST.replace("\"lfp\"", "\"" + word + "\""));
    assertEquals(word, pack.chemistry().key());
    assertEquals(fullV, pack.limits().cellFullVoltage());
    assertEquals(emptyV, pack.limits().cellEmptyVoltage());
  }

  @Test
  void everythingThatIsGivenIsTaken() throws InputProblem {
    PackDescription pack =
        PackFile.parse(
            "pack.toml",
            SMALLEST
                + """
                nominal_capacity_ah = 105
                timezone = "Europe/Lisbon"
                current_sign = "discharge positive"
                [limits]
                cell_full_v = 3.5
                charge_min_c = 2
                [[bank]]
                name = "port"
                files = ["port-*.csv", "port-*.gz"]
                [[bank]]
                name = "starboard"
                files = ["star-*.csv"]
                [[log]]
                files = "port-*.csv"
                [log.columns]
                "Z1" = "cell 1 voltage, mV"
                """);

    assertEquals(105, pack.nominalCapacityAh());
    assertEquals("Europe/Lisbon", pack.timezone().getId());
    assertEquals(Optional.of(CurrentSign.DISCHARGE_POSITIVE), pack.currentSign());
    assertEquals(3.5, pack.limits().cellFullVoltage());
    assertEquals(2, pack.limits().chargeMinTemperatureC());
    assertEquals(Limits.of(Chemistry.LFP).cellEmptyVoltage(), pack.limits().cellEmptyVoltage());
    assertEquals(List.of("port-*.csv", "port-*.gz"), pack.banks().get(0).filePatterns());
    assertEquals("starboard", pack.banks().get(1).name());
    assertEquals("cell 1 voltage, mV", pack.logs().get(0).columns().get("Z1"));
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          series_cells = 8              | series_cells = 1                   | series_cells
          series_cells = 8              | series_cells = 33                  | series_cells
          series_cells = 8              | series_cells = "eight"             | series_cells
          series_cells = 8              | cells = 8                          | cells
          chemistry = "lfp"             | chemistry = "lead"                 | "lfp"
          name = "Boathouse"            | name = 5                           | name
          series_cells = 8              | series_cells = 8; timezone = "Nowhere/At_all" | timezone
          series_cells = 8              | series_cells = 8; nominal_capacity_ah = -5    | nominal_capacity_ah
          series_cells = 8              | series_cells = 8; current_sign = "up"         | charge positive
          series_cells = 8              | series_cells = 8; colour = "red"   | colour
          """)
  void nonsenseIsAnsweredByOneSentenceThatNamesFileLineAndWhatWasExpected(
      String good, String bad, String part) {
    String text = SMALLEST.replace(good, bad.replace("; ", "\n"));
    InputProblem problem =
        assertThrows(InputProblem.class, () -> PackFile.parse("pack.toml", text));

    assertEquals(InputProblem.Kind.USAGE, problem.kind());
    assertTrue(problem.sentence().contains("pack.toml"), problem.sentence());
    assertTrue(problem.sentence().contains(part), problem.sentence());
    assertEquals(1, problem.sentence().lines().count(), problem.sentence());
  }

  @Test
  void textThatIsNoTomlIsAnsweredWithItsLine() {
    InputProblem problem =
        assertThrows(InputProblem.class, () -> PackFile.parse("pack.toml", SMALLEST + "name ="));
    assertTrue(problem.sentence().contains("line 5"), problem.sentence());
  }

  @Test
  void aMissingFileIsNamed() {
    InputProblem problem =
        assertThrows(InputProblem.class, () -> PackFile.read(folder.resolve("absent.toml")));
    assertTrue(problem.sentence().contains("absent.toml"), problem.sentence());
  }
}
