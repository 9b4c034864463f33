package sagbook.estimate.axis;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import sagbook.evidence.ThinnedRecord;
import sagbook.evidence.Turn;

/**
 * A flat cell with a knee, charged each noon to full or to a little below; the counter has an
 * offset, and the axis must take it out by the voltages passed.
 */
class AxisBuilderTest {
  private static final int ROWS_A_DAY = 1440;
  private static final int DAYS = 12;
  private static final double NOMINAL_AH = 100;
  private static final double OHM = 0.001;
  private static final double OFFSET_A = 0.3;

  private final double[] topAh = new double[DAYS];
  private final boolean[] unread = new boolean[DAYS * ROWS_A_DAY];
  private final boolean[] lost = new boolean[DAYS * ROWS_A_DAY];

  /** True charge at a minute, Ah; 0 is full. */
  private double trueAh(int minute) {
    double bottom = -0.8 * NOMINAL_AH;
    double swing = (1 - Math.cos(2 * Math.PI * minute / ROWS_A_DAY)) / 2;
    return bottom + (topAh[Math.min(DAYS - 1, minute / ROWS_A_DAY)] - bottom) * swing;
  }

  private static double restV(double ah) {
    return 3.33 + 2e-4 * ah + 0.2 * Math.exp(ah / 3);
  }

  private int[] minutes() {
    return IntStream.range(0, lost.length).filter(m -> !lost[m]).toArray();
  }

  private ThinnedRecord record(int[] minute) {
    int n = minute.length;
    double[] timeS = new double[n];
    float[] seconds = new float[n];
    int[] segment = new int[n];
    float[] currentA = new float[n];
    double[] counterAh = new double[n];
    float[] voltageV = new float[n];
    Arrays.fill(seconds, 60);
    for (int i = 0; i < n; i++) {
      timeS[i] = 60.0 * minute[i];
      double amp = (trueAh(minute[i] + 1) - trueAh(minute[i])) * 60;
      currentA[i] = (float) (amp + OFFSET_A);
      double v = restV(trueAh(minute[i])) + OHM * amp;
      voltageV[i] = unread[minute[i]] ? Float.NaN : (float) v;
      if (i > 0) {
        boolean gap = minute[i] != minute[i - 1] + 1;
        double moved = trueAh(minute[i]) - trueAh(minute[i - 1]) + OFFSET_A / 60;
        counterAh[i] = counterAh[i - 1] + (gap ? 0 : moved);
        segment[i] = segment[i - 1] + (gap ? 1 : 0);
      }
    }
    return new ThinnedRecord(
        timeS,
        seconds,
        segment,
        currentA,
        counterAh,
        new float[][] {voltageV},
        new float[0][],
        new float[0][]);
  }

  /** Worst error of the axis about its own mean, Ah; it must have a place everywhere. */
  private double worstAh() {
    int[] minute = minutes();
    List<Turn> turns = new ArrayList<>();
    for (int from = 0; from < minute.length; ) {
      int day = minute[from] / ROWS_A_DAY;
      int to = from;
      while (to + 1 < minute.length && minute[to + 1] < day * ROWS_A_DAY + 721) {
        to++;
      }
      turns.add(new Turn(true, from, to, 3.4, 3.4, 1));
      from = to + 1;
      while (from < minute.length && minute[from] / ROWS_A_DAY == day) {
        from++;
      }
    }
    ChargeAxis axis = AxisBuilder.build(record(minute), turns, NOMINAL_AH, OHM);
    assertTrue(axis.pinned());
    double mean = 0;
    for (int i = 0; i < minute.length; i++) {
      mean += (axis.chargeAh()[i] - trueAh(minute[i])) / minute.length;
    }
    double worst = 0;
    for (int i = 0; i < minute.length; i++) {
      worst = Math.max(worst, Math.abs(axis.chargeAh()[i] - trueAh(minute[i]) - mean));
    }
    assertEquals(OFFSET_A, axis.offsetA(), 0.01);
    return worst;
  }

  @Test
  void fullChargesTakeTheOffsetOut() {
    assertTrue(worstAh() < 0.1, "off by " + worstAh() + " Ah");
  }

  @Test
  void rowsThatWereNotReadDoNotHideTheFullChargesAroundThem() {
    for (int m = 0; m < unread.length; m += 7) {
      unread[m] = true;
    }
    assertTrue(worstAh() < 0.1, "off by " + worstAh() + " Ah");
  }

  @Test
  void chargesThatEndBelowTheBestVoltageAreHeldByTheSteepestTheyPass() {
    for (int day = 4; day < DAYS; day++) {
      topAh[day] = -3;
    }
    assertTrue(worstAh() < 0.2, "off by " + worstAh() + " Ah");
  }

  @Test
  void aStretchBetweenGapsWhoseChargesEndBelowTheBestVoltageHasItsPlace() {
    topAh[4] = -3;
    topAh[5] = -3;
    Arrays.fill(lost, 4 * ROWS_A_DAY - 200, 4 * ROWS_A_DAY + 100, true);
    Arrays.fill(lost, 6 * ROWS_A_DAY - 200, 6 * ROWS_A_DAY + 100, true);
    assertTrue(worstAh() < 0.2, "off by " + worstAh() + " Ah");
  }
}
