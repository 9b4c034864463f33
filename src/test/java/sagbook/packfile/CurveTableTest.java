package sagbook.packfile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sagbook.issue.InputProblem;
import sagbook.model.OpenCircuitTable;

class CurveTableTest {
  private static final String CHARGE = "0, 0.02, 0.05, 0.1, 0.2, 0.3, 0.5, 0.7, 0.9, 1";
  private static final String VOLT = "2.5, 2.78, 3.0, 3.16, 3.22, 3.26, 3.29, 3.3, 3.33, 3.64";

  private static OpenCircuitTable read(String cell) throws InputProblem {
    String pack = "[pack]\nname = \"a\"\nchemistry = \"lfp\"\nseries_cells = 4\n";
    return PackFile.parse("pack.toml", pack + "[cell]\n" + cell).openCircuit().orElseThrow();
  }

  private static String cell(String charge, String volt) {
    return "charge_fraction = [" + charge + "]\nopen_circuit_v = [" + volt + "]\n";
  }

  @Test
  void readsBothArrays() throws InputProblem {
    OpenCircuitTable table = read(cell(CHARGE, VOLT));
    assertEquals(
        List.of(0.0, 0.02, 0.05, 0.1, 0.2, 0.3, 0.5, 0.7, 0.9, 1.0), table.chargeFraction());
    assertEquals(3.64, table.volt().get(9));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "0, 0.5, 1 | 2.5, 3.3, 3.65 | line 6, column 1: \"charge_fraction\" has 3 numbers; expected"
            + " 10 or more from empty to full.",
        "0, 0.02, 0.05, 0.1, 0.2, 0.3, 0.5, 0.7, 0.9, 0.98 | 2.5 | line 6, column 1:"
            + " \"charge_fraction\" runs from 0.0 to 0.98; expected 0 for the empty cell first and 1"
            + " for the full one last.",
        "0, 0.02, 0.05, 0.1, 0.2, 0.3, 0.5, 0.7, 0.9, 1 | 2.5, 3 | line 7, column 1:"
            + " \"open_circuit_v\" has 2 numbers; expected 10, as many as charge_fraction has.",
        "0, 0.02, 0.05, 0.1, 0.2, 0.2, 0.5, 0.7, 0.9, 1 | 2.5, 2.78, 3.0, 3.16, 3.22, 3.26, 3.29,"
            + " 3.3, 3.33, 3.65 | line 6, column 1: \"charge_fraction\" has 0.2 after 0.2; expected"
            + " every number above the one before.",
        "0, 0.02, 0.05, 0.1, 0.2, 0.3, 0.5, 0.7, 0.9, 1 | 2.5, 2.78, 3.0, 3.16, 3.22, 3.26, 3.25,"
            + " 3.3, 3.33, 3.65 | line 7, column 1: \"open_circuit_v\" has 3.25 after 3.26; expected"
            + " no number below the one before.",
        "0, 0.02, 0.05, 0.1, 0.2, 0.3, 0.5, 0.7, 0.9, 1 | 2.7, 2.78, 3.0, 3.16, 3.22, 3.26, 3.29,"
            + " 3.3, 3.33, 3.65 | line 7, column 1: \"open_circuit_v\" runs from 2.7 to 3.65 V;"
            + " expected rest voltages that reach from cell_empty_v, 2.5 V, to cell_full_v, 3.65 V"
            + " (measure further, or set those two in [limits]).",
        "0, 0.5, 1 | 2.5, 33, 3.65 | line 7, column 1: \"open_circuit_v\" is \"33\"; expected a list"
            + " of numbers from 0.5 to 6."
      })
  void refusesATableInOneSentence(String charge, String volt, String sentence) {
    InputProblem problem =
        assertThrows(InputProblem.class, () -> read(cell(charge, volt)), sentence);
    assertEquals("\"pack.toml\", " + sentence, problem.sentence());
    assertEquals(InputProblem.Kind.USAGE, problem.kind());
  }

  @Test
  void aTableNeedsBothArrays() {
    InputProblem problem =
        assertThrows(InputProblem.class, () -> read("charge_fraction = [" + CHARGE + "]\n"));
    assertEquals(
        "\"pack.toml\": open_circuit_v is missing in [cell]; add a line such as open_circuit_v ="
            + " [2.5, 3.1, ..., 3.65].",
        problem.sentence());
  }
}
