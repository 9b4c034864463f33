package sagbook.estimate.resistance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Sixteen cells, thermometers off by half a kelvin (common practice, no source). */
class ShelfWarmthTest {
  private static final int CELLS = 16;
  private static final int SHELVES = 200;

  private static double squares(double[] of) {
    double mean = Arrays.stream(of).average().orElseThrow();
    return Arrays.stream(of).map(v -> (v - mean) * (v - mean)).average().orElseThrow();
  }

  /** Mean squares of what is wrong with the warmth found and with the readings, and of sd. */
  private static double[] errors(IntToDoubleFunction warmK) {
    SplittableRandom random = new SplittableRandom(8);
    double[] sums = new double[3];
    for (int k = 0; k < SHELVES; k++) {
      double[] offK = new double[CELLS];
      Arrays.setAll(offK, c -> 0.5 * random.nextGaussian());
      double[] readK = new double[CELLS];
      Arrays.setAll(readK, c -> warmK.applyAsDouble(c) + offK[c]);
      ShelfWarmth found = ShelfWarmth.of(readK, 0.5, 1);
      double[] wrongK = new double[CELLS];
      Arrays.setAll(wrongK, c -> found.warmK()[c] - warmK.applyAsDouble(c));
      sums[0] += squares(wrongK) / SHELVES;
      sums[1] += squares(offK) / SHELVES;
      sums[2] += Arrays.stream(found.sdK()).map(s -> s * s).sum() / CELLS / SHELVES;
    }
    return sums;
  }

  @Test
  void thermometersOfAnEvenlyWarmShelfAreTakenForWrong() {
    double[] errors = errors(c -> 0);
    assertTrue(errors[0] < 0.4 * errors[1], Arrays.toString(errors));
  }

  @Test
  void aWarmMiddleStaysAndIsToldBetterThanByEachThermometerAlone() {
    double[] errors = errors(c -> 2 * Math.sin(Math.PI * c / (CELLS - 1)));
    assertTrue(errors[0] < 0.8 * errors[1], Arrays.toString(errors));
    assertTrue(errors[0] < 2 * errors[2] && errors[2] < 2 * errors[0], Arrays.toString(errors));
  }

  @Test
  void aCellWithoutAThermometerIsAsWarmAsItsNeighboursAndLessSure() {
    double[] readK = IntStream.range(0, CELLS).mapToDouble(c -> 0.4 * c).toArray();
    readK[5] = Double.NaN;
    ShelfWarmth found = ShelfWarmth.of(readK, 0.5, 1);
    assertEquals((found.warmK()[4] + found.warmK()[6]) / 2, found.warmK()[5], 1e-6);
    assertTrue(found.sdK()[5] > found.sdK()[4]);
  }
}
