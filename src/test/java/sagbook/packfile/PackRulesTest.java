package sagbook.packfile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sagbook.issue.InputProblem;
import sagbook.model.PackDescription;
import sagbook.model.Threshold;

class PackRulesTest {
  private static final String PACK =
      "[pack]\nname = \"Mill\"\nchemistry = \"lfp\"\nseries_cells = 16\n";

  private static PackDescription parsed(String more) throws InputProblem {
    return PackFile.parse("pack.toml", PACK + more);
  }

  @Test
  void whatTheKeeperSetsIsKeptAndTheRestIsUsual() throws InputProblem {
    assertEquals(Map.of(), parsed("").rules());
    assertEquals(
        Map.of(Threshold.CAPACITY, 5.0, Threshold.DRAIN, 20.0),
        parsed("[rules]\ncapacity_percent = 5\ndrain_ma = 20\n").rules());
  }

  @Test
  void aCapacityThatNobodyToldIsKnownAsSuch() throws InputProblem {
    assertFalse(parsed("").isCapacityTold());
    assertTrue(parsed("nominal_capacity_ah = 100\n").isCapacityTold());
  }

  @ParameterizedTest
  @CsvSource({
    "capacity_percent = 0, a number from 0.5 to 50",
    "capacity_percent = 60, a number from 0.5 to 50",
    "capacity_percent = nan, a number from 0.5 to 50",
    "capacity_percent = \"three\", a number from 0.5 to 50",
    "capacity_percnt = 3, did you mean capacity_percent",
    "capacity_percent = 20, to be no more than replace_percent",
    "replace_percent = 2, to be no more than replace_percent",
    "drain_stop_ma = 5, a number from 20 to 100000",
  })
  void nonsenseGetsOneSentence(String line, String expected) {
    InputProblem problem =
        assertThrows(InputProblem.class, () -> parsed("[rules]\n" + line + "\n"));
    assertEquals(InputProblem.Kind.USAGE, problem.kind());
    assertTrue(problem.sentence().contains(expected), problem.sentence());
    assertTrue(problem.sentence().startsWith("\"pack.toml\", line 6"), problem.sentence());
  }
}
