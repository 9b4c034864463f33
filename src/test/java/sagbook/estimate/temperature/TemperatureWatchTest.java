package sagbook.estimate.temperature;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import sagbook.estimate.TemperatureFault;
import sagbook.evidence.ThinnedRecord;

/**
 * Twelve cells in a row for twenty days. Each stores 5 kJ/K, passes 1 W/K to each neighbour and 0.2
 * W/K to the room, the outer two 0.6 W/K more; it is warmed by the square of the current times 0.8
 * mΩ. The room swings by 4 K a day (its own numbers, no source).
 */
class TemperatureWatchTest {
  private static final int CELLS = 12;
  private static final int DAYS = 20;
  private static final int ROWS = DAYS * 1440;
  private static final int OUTER = 0;
  private static final int INNER = 6;

  private final double[] resistance = new double[CELLS];
  private final float[] currentA = new float[ROWS];
  private final float[][] celsius = new float[CELLS][ROWS];

  TemperatureWatchTest() {
    Arrays.fill(resistance, 0.0008);
    for (int r = 0; r < ROWS; r++) {
      int minute = r % 1440;
      boolean charging = minute > 600 && minute < 840;
      boolean discharging = minute > 1080 && minute < 1320;
      currentA[r] = charging ? 80 : discharging ? -120 : -5;
    }
  }

  /** Lets the cells warm and cool, and reads them in steps of a degree's part. */
  private void live(double stepK) {
    double[] now = new double[CELLS];
    Arrays.fill(now, 12);
    for (int r = 0; r < ROWS; r++) {
      double room = 12 + 4 * Math.sin(2 * Math.PI * (r - 500) / 1440);
      double[] before = now.clone();
      for (int c = 0; c < CELLS; c++) {
        double watt = currentA[r] * currentA[r] * resistance[c];
        watt += (c == OUTER || c == CELLS - 1 ? 0.8 : 0.2) * (room - before[c]);
        watt += c > 0 ? before[c - 1] - before[c] : 0;
        watt += c < CELLS - 1 ? before[c + 1] - before[c] : 0;
        now[c] += watt * 60 / 5000;
        celsius[c][r] = (float) (stepK * Math.rint((now[c] + 0.07 * c) / stepK));
      }
    }
  }

  private List<TemperatureFault> judged() {
    double[] timeS = IntStream.range(0, ROWS).mapToDouble(r -> 60.0 * r).toArray();
    float[] seconds = new float[ROWS];
    Arrays.fill(seconds, 60);
    return TemperatureWatch.of(
        new ThinnedRecord(
            timeS,
            seconds,
            new int[ROWS],
            currentA,
            new double[ROWS],
            new float[CELLS][ROWS],
            celsius,
            new float[0][]),
        new double[CELLS]);
  }

  private void assertNothingSeen() {
    for (TemperatureFault fault : judged()) {
      assertEquals(new TemperatureFault.None(), fault);
    }
  }

  @Test
  void outerCellsThatStayColderUnderLoadAreNoFault() {
    live(0.1);
    double[] colder =
        IntStream.range(0, ROWS).mapToDouble(r -> celsius[INNER][r] - celsius[OUTER][r]).toArray();
    assertTrue(Arrays.stream(colder).max().orElse(0) > 3);
    assertTrue(Arrays.stream(colder).min().orElse(0) < 1);
    assertNothingSeen();
  }

  @Test
  void cellThatWarmsUnderLoadBecauseItIsResistiveIsNoFault() {
    resistance[INNER] *= 1.7;
    live(0.1);
    assertNothingSeen();
  }

  @Test
  void boardsThatRoundToWholeDegreesAreNoFault() {
    live(1);
    assertNothingSeen();
  }

  @Test
  void thermometerThatItsBoardWarmsWhileItBleedsIsSeen() {
    live(0.1);
    for (int r = 0; r < ROWS; r++) {
      // Every other day the board bleeds for an hour and a half, at a time of its own.
      if (r / 1440 % 2 == 0 && r % 1440 > 840 && r % 1440 < 930) {
        celsius[INNER][r] += 4;
      }
    }
    List<TemperatureFault> faults = judged();
    assertInstanceOf(TemperatureFault.Seen.class, faults.get(INNER));
    assertEquals(1, faults.stream().filter(TemperatureFault.Seen.class::isInstance).count());
  }

  @Test
  void thermometerThatReadsEightDegreesTooMuchIsSeen() {
    live(0.1);
    for (int r = 0; r < ROWS; r++) {
      celsius[INNER][r] += 8;
    }
    assertInstanceOf(TemperatureFault.Seen.class, judged().get(INNER));
  }

  @Test
  void thermometerThatWasNeverReadIsNotLogged() {
    live(0.1);
    Arrays.fill(celsius[INNER], Float.NaN);
    assertEquals(new TemperatureFault.NotLogged(), judged().get(INNER));
  }
}
