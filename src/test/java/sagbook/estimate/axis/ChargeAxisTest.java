package sagbook.estimate.axis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import sagbook.evidence.ThinnedRecord;

/** A battery cycled once a day, whose counter has an offset and whose log has gaps. */
class ChargeAxisTest {
  private static final int ROWS_A_DAY = 1440;
  private static final double SWING_AH = 100;
  private static final double OFFSET_A = 0.25;

  private final int rows;
  private final boolean[] logged;

  ChargeAxisTest() {
    rows = 8 * ROWS_A_DAY;
    logged = new boolean[rows];
    Arrays.fill(logged, true);
  }

  /** True charge at a minute, Ah; 0 is full, reached at noon of every day. */
  private static double trueAh(int minute) {
    return SWING_AH / 2 * (Math.cos(2 * Math.PI * (minute - 720) / ROWS_A_DAY) - 1);
  }

  private static double trueA(int minute) {
    return (trueAh(minute + 1) - trueAh(minute - 1)) / 2 * 60;
  }

  private int[] minutes() {
    int[] kept = new int[rows];
    int n = 0;
    for (int m = 0; m < rows; m++) {
      if (logged[m]) {
        kept[n++] = m;
      }
    }
    return Arrays.copyOf(kept, n);
  }

  /** The record that a logger would leave; the counter stands still over a gap. */
  private ThinnedRecord record() {
    int[] minute = minutes();
    int n = minute.length;
    double[] timeS = new double[n];
    float[] seconds = new float[n];
    int[] segment = new int[n];
    float[] currentA = new float[n];
    double[] counterAh = new double[n];
    for (int i = 0; i < n; i++) {
      timeS[i] = 60.0 * minute[i];
      seconds[i] = 60;
      currentA[i] = (float) (trueA(minute[i]) + OFFSET_A);
      boolean gap = i > 0 && minute[i] != minute[i - 1] + 1;
      segment[i] = i == 0 ? 0 : segment[i - 1] + (gap ? 1 : 0);
      if (i > 0) {
        double moved = trueAh(minute[i]) - trueAh(minute[i - 1]) + OFFSET_A / 60;
        counterAh[i] = counterAh[i - 1] + (gap ? 0 : moved);
      }
    }
    return new ThinnedRecord(
        timeS,
        seconds,
        segment,
        currentA,
        counterAh,
        new float[1][n],
        new float[0][],
        new float[0][]);
  }

  private ChargeAxis pinned(ThinnedRecord record) {
    int[] minute = minutes();
    int[] anchors = new int[8];
    int n = 0;
    for (int i = 0; i < minute.length; i++) {
      if (minute[i] % ROWS_A_DAY == 720) {
        anchors[n++] = i;
      }
    }
    int[] rowsOfAnchors = Arrays.copyOf(anchors, n);
    Counter counter = Counter.of(record);
    double[] ah = Arrays.stream(rowsOfAnchors).mapToDouble(r -> counter.ah()[r]).toArray();
    return ChargeAxis.pinnedAt(counter, rowsOfAnchors, ah);
  }

  private double worstAh(ChargeAxis axis) {
    int[] minute = minutes();
    double worst = 0;
    for (int i = 0; i < minute.length; i++) {
      double off = Math.abs(axis.chargeAh()[i] - trueAh(minute[i]));
      worst = off > worst ? off : worst;
    }
    return worst;
  }

  private void lose(int fromMinute, int toMinute) {
    Arrays.fill(logged, fromMinute, toMinute, false);
  }

  @Test
  void anOffsetIsTakenOut() {
    ChargeAxis axis = pinned(record());
    assertEquals(OFFSET_A, axis.offsetA(), 1e-6);
    assertTrue(worstAh(axis) < 1e-6, "off by " + worstAh(axis) + " Ah");
  }

  @Test
  void chargeMissedInALongGapIsNeitherTakenForAnOffsetNorSmearedOverTheDays() {
    lose(2 * ROWS_A_DAY + 400, 3 * ROWS_A_DAY + 900);
    ChargeAxis axis = pinned(record());
    assertEquals(OFFSET_A, axis.offsetA(), 1e-6);
    assertTrue(worstAh(axis) < 1e-6, "off by " + worstAh(axis) + " Ah");
  }

  @Test
  void aShortGapIsBridgedByTheCurrentAroundIt() {
    lose(4 * ROWS_A_DAY + 300, 4 * ROWS_A_DAY + 310);
    assertTrue(worstAh(pinned(record())) < 0.05);
  }

  @Test
  void aSectionWithoutAnAnchorHasNoPlaceOnTheAxis() {
    lose(2 * ROWS_A_DAY + 800, 3 * ROWS_A_DAY + 100);
    lose(3 * ROWS_A_DAY + 600, 4 * ROWS_A_DAY + 100);
    ChargeAxis axis = pinned(record());
    int[] minute = minutes();
    for (int i = 0; i < minute.length; i++) {
      boolean between = minute[i] > 3 * ROWS_A_DAY && minute[i] < 3 * ROWS_A_DAY + 600;
      assertEquals(between, Double.isNaN(axis.chargeAh()[i]), "minute " + minute[i]);
    }
    assertTrue(worstAh(axis) < 1e-6);
  }
}
