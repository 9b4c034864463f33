package sagbook.estimate.capacity;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import sagbook.evidence.ThinnedRecord;

/** Two cells, a row a minute. */
class RowGroupsTest {
  private static final int ROWS = 24;
  private static final double MOST_AH = 0.5;

  private final double[] chargeAh = new double[ROWS];
  private final int[] segment = new int[ROWS];
  private final float[][] voltageV = new float[2][ROWS];

  RowGroupsTest() {
    for (float[] cell : voltageV) {
      Arrays.fill(cell, 3.3f);
    }
  }

  private RowGroups groups() {
    ThinnedRecord record =
        new ThinnedRecord(
            new double[ROWS],
            new float[ROWS],
            segment,
            new float[ROWS],
            chargeAh,
            voltageV,
            new float[0][],
            new float[0][]);
    return RowGroups.of(record, chargeAh, MOST_AH);
  }

  @Test
  void rowsAtRestAreTakenTogetherTenAtATime() {
    assertArrayEquals(new int[] {10, 10, 4}, groups().rows());
  }

  @Test
  void rowsBetweenWhichMuchChargeFlowsStayAlone() {
    Arrays.setAll(chargeAh, r -> 0.6 * r);
    assertEquals(ROWS, groups().rows().length);
  }

  @Test
  void aGroupSpansNoMoreChargeThanAllowed() {
    Arrays.setAll(chargeAh, r -> -0.2 * r);
    assertArrayEquals(new int[] {3, 3, 3, 3, 3, 3, 3, 3}, groups().rows());
  }

  @Test
  void aGroupSpansNoMoreChargeThanAllowedWhenTheChargeTurns() {
    Arrays.fill(chargeAh, -0.4);
    chargeAh[0] = 0;
    chargeAh[1] = 0.4;
    assertArrayEquals(new int[] {2, 10, 10, 2}, groups().rows());
  }

  @Test
  void noGroupReachesOverAGap() {
    Arrays.fill(segment, 7, ROWS, 1);
    assertArrayEquals(new int[] {7, 10, 7}, groups().rows());
  }

  @Test
  void noGroupMixesRowsWithAndWithoutACell() {
    Arrays.fill(voltageV[1], 4, 6, Float.NaN);
    assertArrayEquals(new int[] {4, 2, 10, 8}, groups().rows());
  }

  @Test
  void aRowWithoutAPlaceOnTheAxisStaysAlone() {
    chargeAh[0] = Double.NaN;
    chargeAh[5] = Double.NaN;
    assertArrayEquals(new int[] {1, 4, 1, 10, 8}, groups().rows());
  }

  @Test
  void aGroupIsItsMean() {
    double[] minutes = new double[ROWS];
    Arrays.setAll(minutes, r -> r);
    for (int r = 0; r < ROWS; r++) {
      voltageV[0][r] = 3 + r / 100f;
    }
    assertArrayEquals(new double[] {4.5, 14.5, 21.5}, groups().means(minutes), 1e-12);
    assertArrayEquals(new float[] {3.045f, 3.145f, 3.215f}, groups().means(voltageV)[0], 1e-6f);
  }
}
