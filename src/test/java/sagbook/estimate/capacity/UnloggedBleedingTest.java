package sagbook.estimate.capacity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import sagbook.evidence.ThinnedRecord;
import sagbook.issue.InputProblem;
import sagbook.model.PackDescription;
import sagbook.packfile.PackFile;

/** Three cells charged near full for an hour; the third reads 20 mV above the others. */
class UnloggedBleedingTest {
  private static final int ROWS = 60;
  private static final String PACK =
      """
      [pack]
      name = "bleeding"
      chemistry = "lfp"
      series_cells = 3
      timezone = "UTC"
      bleed_resistor_ohm = 3.5
      """;

  private static List<UnloggedBleeding> left(float volt, float ampere, float[][] bleed)
      throws InputProblem {
    PackDescription pack = PackFile.parse("pack.toml", PACK);
    double[] timeS = new double[ROWS];
    float[] seconds = new float[ROWS];
    float[] currentA = new float[ROWS];
    float[][] voltageV = new float[3][ROWS];
    Arrays.setAll(timeS, r -> 60.0 * r);
    Arrays.fill(seconds, 60);
    Arrays.fill(currentA, ampere);
    Arrays.fill(voltageV[0], volt);
    Arrays.fill(voltageV[1], volt);
    Arrays.fill(voltageV[2], volt + 0.02f);
    ThinnedRecord record =
        new ThinnedRecord(
            timeS,
            seconds,
            new int[ROWS],
            currentA,
            new double[ROWS],
            voltageV,
            new float[0][],
            bleed);
    return UnloggedBleeding.of(record, pack);
  }

  @Test
  void theCellThatReadsHighMayHaveBeenBledAllTheTime() throws InputProblem {
    List<UnloggedBleeding> left = left(3.5f, 10, new float[0][]);
    assertEquals(1, left.get(2).mostAh(), 0.01);
    assertEquals(0, left.get(2).leastAh(), 0.01);
    assertEquals(0, left.get(0).mostAh(), 0.01);
  }

  @Test
  void boardsDoNotBleedWhileTheStringDischargesOrFarFromFull() throws InputProblem {
    for (UnloggedBleeding cell : left(3.5f, -10, new float[0][])) {
      assertEquals(UnloggedBleeding.NONE, cell);
    }
    for (UnloggedBleeding cell : left(3.3f, 10, new float[0][])) {
      assertEquals(UnloggedBleeding.NONE, cell);
    }
  }

  @Test
  void whereBleedingIsLoggedNothingIsLeftOpen() throws InputProblem {
    List<UnloggedBleeding> left = left(3.5f, 10, new float[3][ROWS]);
    assertTrue(left.stream().allMatch(UnloggedBleeding.NONE::equals));
  }
}
