package sagbook.numeric;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class BoundedNormalTest {
  /** Median of the half-normal distribution and tails of the normal one, from published tables. */
  @Test
  void quantilesAgreeWithPublishedTables() {
    BoundedNormal half = new BoundedNormal(0, 1, 0);
    assertEquals(0.67449, half.quantile(0.5), 1e-5);
    assertEquals(2.24140, half.quantile(0.975), 1e-5);
    BoundedNormal whole = new BoundedNormal(3, 2, Double.NEGATIVE_INFINITY);
    assertEquals(3, whole.quantile(0.5), 1e-9);
    assertEquals(3 - 2 * 1.959964, whole.quantile(0.025), 1e-5);
  }

  @Test
  void boundFarBelowChangesNothing() {
    assertEquals(
        new BoundedNormal(5, 1, Double.NEGATIVE_INFINITY).quantile(0.025),
        new BoundedNormal(5, 1, -5).quantile(0.025),
        1e-6);
  }

  @Test
  void nothingLiesBelowTheBoundHoweverFarOutItIs() {
    for (double least = -6; least < 40; least += 0.5) {
      BoundedNormal bounded = new BoundedNormal(0, 1, least);
      assertTrue(bounded.quantile(0.025) >= least, "" + least);
      assertTrue(bounded.quantile(0.025) <= bounded.quantile(0.5), "" + least);
      assertTrue(bounded.quantile(0.5) <= bounded.quantile(0.975), "" + least);
    }
  }

  /** Robert 1995, Statistics and Computing 5, 121: far out it is nearly exponential. */
  @Test
  void farBeyondTheMeanItFallsOffExponentially() {
    assertEquals(6 + Math.log(2) / 6, new BoundedNormal(0, 1, 6).quantile(0.5), 0.01);
  }
}
