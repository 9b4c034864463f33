package sagbook.align;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ClockOffsetTest {
  private static final double DAY_S = 86_400;
  private static final double START_S = 1_773_475_200;

  /** Loads switched at random times of a month, seen by both loggers. */
  private static EdgeTrain switched(int steps, long seed) {
    Random random = new Random(seed);
    double[] times = random.doubles(steps, START_S, START_S + 30 * DAY_S).sorted().toArray();
    double[] sizes = new double[steps];
    Arrays.setAll(sizes, i -> (random.nextBoolean() ? 1 : -1) * (5 + 60 * random.nextDouble()));
    return new EdgeTrain(times, sizes);
  }

  /**
   * The same steps by a clock that is behind by {@code behindS} and drifts, in rows of a cadence.
   */
  private static EdgeTrain seen(
      EdgeTrain train, double behindS, double driftPerS, double cadenceS, double gain, long seed) {
    Random random = new Random(seed);
    double[] times = new double[train.size()];
    double[] sizes = new double[train.size()];
    for (int i = 0; i < times.length; i++) {
      double own = train.timeS()[i] - behindS - driftPerS * (train.timeS()[i] - START_S);
      times[i] = own + cadenceS * (random.nextDouble() - 0.5);
      sizes[i] = gain * train.step()[i];
    }
    return new EdgeTrain(times, sizes);
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, 7.5, -42, 3600, -7200, 50_000})
  void findsHowFarASecondClockIsBehind(double behindS) {
    EdgeTrain voltage = switched(300, 1);
    Optional<ClockOffset> offset =
        ClockOffset.between(voltage, seen(voltage, behindS, 0, 10, 30, 2), 10);

    assertTrue(offset.isPresent());
    assertEquals(behindS, offset.get().offsetS(), 3 * offset.get().halfWidthS() + 0.2);
    assertEquals(1, offset.get().sign());
    assertTrue(offset.get().halfWidthS() < 2, "half-width " + offset.get().halfWidthS());
  }

  @Test
  void aCurrentOfTheOtherSignIsToldByTheSameSteps() {
    EdgeTrain voltage = switched(300, 3);
    Optional<ClockOffset> offset =
        ClockOffset.between(voltage, seen(voltage, 60, 0, 10, -30, 4), 10);
    assertEquals(-1, offset.orElseThrow().sign());
    assertEquals(60, offset.orElseThrow().offsetS(), 2);
  }

  @Test
  void aClockThatDriftsIsFollowedFromEndToEnd() {
    EdgeTrain voltage = switched(600, 5);
    double drift = 15 / (30 * DAY_S);
    ClockOffset offset =
        ClockOffset.between(voltage, seen(voltage, 100, drift, 5, 30, 6), 5).orElseThrow();
    double lateS = START_S + 29 * DAY_S;
    assertEquals(100, offset.correction(START_S - 100), 1.5);
    assertEquals(100 + drift * 29 * DAY_S, offset.correction(lateS), 1.5);
  }

  @Test
  void stepsThatHaveNothingInCommonTellNothing() {
    for (int seed = 0; seed < 20; seed++) {
      EdgeTrain one = switched(300, 100 + seed);
      EdgeTrain other = switched(300, 200 + seed);
      assertEquals(Optional.empty(), ClockOffset.between(one, other, 10), "seed " + seed);
    }
  }

  @Test
  void aHandfulOfStepsTellsNothing() {
    EdgeTrain voltage = switched(6, 7);
    assertEquals(
        Optional.empty(), ClockOffset.between(voltage, seen(voltage, 60, 0, 10, 30, 8), 10));
  }
}
