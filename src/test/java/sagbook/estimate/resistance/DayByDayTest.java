package sagbook.estimate.resistance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import sagbook.numeric.LevelBreak;

class DayByDayTest {
  private static final int DAYS = 30;
  private static final int CELLS = 16;

  /** Cells that answer the weather each in their own way, with noise from day to day. */
  private static double[][] weathered(SplittableRandom random, double noise) {
    double[][] relative = new double[CELLS][DAYS];
    double weather = 0;
    double[] own = random.doubles(CELLS, -0.03, 0.03).toArray();
    for (int d = 0; d < DAYS; d++) {
      weather = 0.9 * weather + 0.4 * random.nextGaussian();
      for (int c = 0; c < CELLS; c++) {
        relative[c][d] = 1 + own[c] * weather + noise * random.nextGaussian();
      }
    }
    return relative;
  }

  private static DayByDay days(double[][] relative) {
    return days(relative, new double[relative[0].length]);
  }

  private static DayByDay days(double[][] relative, double[] cold) {
    double[] start = new double[relative[0].length];
    for (int d = 0; d < start.length; d++) {
      start[d] = 86_400.0 * d;
    }
    return new DayByDay(start, cold, relative);
  }

  @Test
  void weatherIsNoBreak() {
    SplittableRandom random = new SplittableRandom(5);
    int alarms = 0;
    for (int month = 0; month < 200; month++) {
      DayByDay days = days(weathered(random, 0.03));
      for (int c = 0; c < CELLS; c++) {
        alarms += days.breakOf(c).isPresent() ? 1 : 0;
      }
    }
    assertEquals(0, alarms);
  }

  @Test
  void aStepIsFoundWithItsDayAndLeavesTheOthersAlone() {
    double[][] relative = weathered(new SplittableRandom(6), 0.03);
    for (int d = 12; d < DAYS; d++) {
      relative[6][d] += 0.4;
    }
    DayByDay days = days(relative);
    LevelBreak found = days.breakOf(6).orElseThrow();
    assertEquals(12, found.before());
    assertTrue(days.breakOf(5).isEmpty());
  }

  @Test
  void aStepWithinTheRulesIsNotTold() {
    double[][] relative = weathered(new SplittableRandom(7), 0.001);
    for (int d = 12; d < DAYS; d++) {
      relative[6][d] += 0.06;
    }
    assertFalse(days(relative).breakOf(6).isPresent());
  }

  /**
   * A joint that adds 60 % at 25 °C adds 38 % where the cold makes all cells 1.6 times as large.
   */
  @Test
  void aJointThatSeemsToGoAsTheColdComesIsNoBreak() {
    double[][] relative = weathered(new SplittableRandom(8), 0.003);
    double[] cold = new double[DAYS];
    for (int d = 0; d < DAYS; d++) {
      cold[d] = d < 12 ? 0 : Math.log(1.6);
      relative[6][d] += 0.6 * Math.exp(-cold[d]);
    }
    assertTrue(days(relative).breakOf(6).isPresent());
    assertFalse(days(relative, cold).breakOf(6).isPresent());
  }

  @Test
  void fewDaysHoldNoBreak() {
    assertFalse(days(new double[CELLS][6]).breakOf(0).isPresent());
  }
}
