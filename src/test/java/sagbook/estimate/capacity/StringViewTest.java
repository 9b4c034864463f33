package sagbook.estimate.capacity;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import sagbook.evidence.ThinnedRecord;

/** Three cells at 3.3 V for an hour, the third bled through 3.3 ohm all the time: one ampere. */
class StringViewTest {
  private static final int ROWS = 60;

  private final float[][] voltageV = new float[3][ROWS];

  private float bledAtEndAh() {
    double[] timeS = new double[ROWS];
    float[] seconds = new float[ROWS];
    float[][] bleed = new float[3][ROWS];
    for (int r = 0; r < ROWS; r++) {
      timeS[r] = 60.0 * r;
      seconds[r] = 60;
      bleed[2][r] = 1;
    }
    ThinnedRecord record =
        new ThinnedRecord(
            timeS,
            seconds,
            new int[ROWS],
            new float[ROWS],
            new double[ROWS],
            voltageV,
            new float[0][],
            bleed);
    return StringView.of(record, new double[ROWS], 100, 3.3).bledAh()[2][ROWS - 1];
  }

  StringViewTest() {
    for (float[] cell : voltageV) {
      Arrays.fill(cell, 3.3f);
    }
  }

  @Test
  void whatIsBledIsCounted() {
    assertEquals(1, bledAtEndAh(), 1e-4);
  }

  @Test
  void itIsCountedWhereTheVoltageIsUnreadToo() {
    Arrays.fill(voltageV[2], 20, 40, Float.NaN);
    assertEquals(1, bledAtEndAh(), 1e-4);
  }
}
