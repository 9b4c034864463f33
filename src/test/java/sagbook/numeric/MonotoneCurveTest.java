package sagbook.numeric;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class MonotoneCurveTest {
  @Test
  void neverFallsBetweenPointsThatDont() {
    MonotoneCurve curve =
        new MonotoneCurve(
            new double[] {0, 0.05, 0.1, 0.5, 0.9, 0.98, 1},
            new double[] {2.5, 3.1, 3.2, 3.29, 3.33, 3.34, 3.65});
    double last = 0;
    for (double z = -0.1; z <= 1.1; z += 0.001) {
      assertTrue(curve.at(z) >= last, "at " + z);
      last = curve.at(z);
    }
  }

  @Test
  void isCarriedOnStraightBeyondItsEnds() {
    MonotoneCurve curve = new MonotoneCurve(new double[] {0, 1, 3}, new double[] {0, 2, 3});
    assertEquals(2 * curve.at(-1), curve.at(-2), 1e-12);
    assertEquals(2 * curve.at(4) - curve.at(3), curve.at(5), 1e-12);
  }

  @Test
  void refusesPlacesThatDontRise() {
    double[] two = {1, 2};
    assertThrows(IllegalArgumentException.class, () -> new MonotoneCurve(new double[] {1, 1}, two));
    assertThrows(
        IllegalArgumentException.class, () -> new MonotoneCurve(new double[] {1, Double.NaN}, two));
    assertThrows(IllegalArgumentException.class, () -> new MonotoneCurve(new double[] {1}, two));
  }
}
