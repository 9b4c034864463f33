package sagbook.numeric;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.BitSet;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class NonNegativeTest {
  private static final BitSet NONE_FREE = new BitSet();

  private static Ridge fit(double[][] rows, double... y) {
    Ridge fit = new Ridge(rows[0].length);
    for (int r = 0; r < rows.length; r++) {
      fit.observe(rows[r], y[r], 1);
    }
    return fit;
  }

  /** Worked by hand: without the second parameter the first is (1·1 + 1·0) / 2. */
  @Test
  void aParameterThatWouldBeNegativeIsZeroAndTheOthersAreFittedWithoutIt() {
    Ridge fit = fit(new double[][] {{1, 0}, {1, 1}}, 1, 0);
    assertArrayEquals(new double[] {0.5, 0}, NonNegative.solve(fit, NONE_FREE).orElseThrow(), 1e-9);
  }

  @Test
  void aFreeParameterMayBeNegative() {
    BitSet second = new BitSet();
    second.set(1);
    Ridge fit = fit(new double[][] {{1, 0}, {1, 1}}, 1, 0);
    assertArrayEquals(new double[] {1, -1}, NonNegative.solve(fit, second).orElseThrow(), 1e-9);
  }

  /** Kuhn and Tucker's conditions hold at the best place and nowhere else (the sum is convex). */
  @Test
  void atTheBestPlaceNoParameterWantsToMove() {
    SplittableRandom random = new SplittableRandom(5);
    for (int trial = 0; trial < 200; trial++) {
      double[][] rows = new double[20][6];
      double[] y = new double[20];
      for (int r = 0; r < rows.length; r++) {
        for (int i = 0; i < 6; i++) {
          rows[r][i] = Math.exp(-r / (2.0 + 3 * i)) + 0.1 * random.nextGaussian();
        }
        y[r] = random.nextGaussian();
      }
      Ridge fit = fit(rows, y);
      double[] found = NonNegative.solve(fit, NONE_FREE).orElseThrow();
      double[] descent = fit.descent(found);
      for (int i = 0; i < found.length; i++) {
        assertTrue(found[i] >= 0);
        if (found[i] > 0) {
          assertEquals(0, descent[i], 1e-6);
        } else {
          assertTrue(descent[i] < 1e-6, "held " + i + " wants to rise by " + descent[i]);
        }
      }
    }
  }

  @Test
  void aFreeParameterThatNothingFixesGivesNoSolution() {
    BitSet second = new BitSet();
    second.set(1);
    assertTrue(NonNegative.solve(fit(new double[][] {{1, 0}}, 1), second).isEmpty());
  }
}
