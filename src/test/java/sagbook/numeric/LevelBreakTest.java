package sagbook.numeric;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LevelBreakTest {

  /**
   * By hand: 1 ± 0.01 twice, then 3, 4, 5, 6 exactly on a line. The squares before it sum to 4e-4
   * over 8 - 3 free values.
   */
  @Test
  void aConstantThenALine() {
    LevelBreak found = LevelBreak.of(new double[] {1.01, 0.99, 1.01, 0.99, 3, 4, 5, 6});
    assertEquals(4, found.before());
    assertEquals(1, found.level(), 1e-12);
    assertEquals(3.5, found.step(), 1e-12);
    assertEquals(6, found.end(), 1e-12);
    double sd = Math.sqrt(4e-4 / 5);
    assertEquals(sd / 2, found.levelSd(), 1e-12);
    assertEquals(sd * Math.sqrt(0.5), found.stepSd(), 1e-12);
    assertEquals(sd * Math.sqrt(0.25 + 1.5 * 1.5 / 5), found.endSd(), 1e-12);
  }

  @Test
  void aBreakAtTheVeryEndHasNoLine() {
    LevelBreak found = LevelBreak.of(new double[] {1, 1, 1, 1, 1, 1, 2, 2});
    assertEquals(6, found.before());
    assertEquals(2, found.end(), 1e-12);
  }

  @Test
  void tooFewValuesAreRefused() {
    assertThrows(IllegalArgumentException.class, () -> LevelBreak.of(new double[6]));
  }

  /**
   * Step, slope and noise drawn anew; the 95 % interval of the end holds it as often as it says.
   */
  @ParameterizedTest
  @ValueSource(ints = {5, 15, 25})
  void theEndIsHeldByItsInterval(int place) {
    SplittableRandom random = new SplittableRandom(place);
    int held = 0;
    int near = 0;
    int runs = 2000;
    for (int run = 0; run < runs; run++) {
      double slope = 0.02 * random.nextDouble();
      double[] y = new double[30];
      for (int i = 0; i < y.length; i++) {
        y[i] = (i < place ? 1 : 1.6 + slope * (i - place)) + 0.03 * random.nextGaussian();
      }
      LevelBreak found = LevelBreak.of(y);
      double truth = 1.6 + slope * (29 - place);
      held += Math.abs(found.end() - truth) < 1.96 * found.endSd() ? 1 : 0;
      near += found.before() == place ? 1 : 0;
    }
    assertTrue(held > 0.92 * runs && held < 0.97 * runs, "held " + held);
    assertTrue(near > 0.99 * runs, "near " + near);
  }
}
