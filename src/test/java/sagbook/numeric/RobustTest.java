package sagbook.numeric;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RobustTest {
  @Test
  void medianOfAnEvenCountIsBetweenTheMiddleTwo() {
    assertEquals(2.5, Robust.median(new double[] {4, 1, 3, 2}));
    assertEquals(3, Robust.median(new double[] {9, 1, 3}));
  }

  @Test
  void valuesThatAreNotANumberAreLeftOut() {
    assertEquals(2, Robust.median(new double[] {Double.NaN, 1, 2, Double.NaN, 3}));
    assertEquals(Double.NaN, Robust.median(new double[] {Double.NaN}));
    assertEquals(Double.NaN, Robust.spread(new double[0]));
  }

  /** Place p (n - 1) between order statistics (Hyndman and Fan 1996, type 7), by hand. */
  @ParameterizedTest
  @CsvSource({"0, 10", "0.25, 17.5", "0.1, 13", "0.5, 25", "0.9, 37", "1, 40"})
  void quantilesAreInterpolated(double p, double expected) {
    assertEquals(expected, Robust.quantile(new double[] {40, 10, 30, 20}, p), 1e-12);
  }

  @Test
  void aQuantileOfOneValueIsThatValue() {
    assertEquals(7, Robust.quantile(new double[] {7}, 0.975));
  }

  @Test
  void onlyTheFirstOfASortedArrayCount() {
    assertEquals(2, Robust.quantileOfSorted(new double[] {1, 2, 3, 900}, 3, 0.5));
  }

  @Test
  void onlyTheFirstOfAnArrayCountForAQuantile() {
    double[] values = {5, 1, 3, 3, 2, 900};
    assertEquals(3, Robust.quantileInPlace(values, 5, 0.5));
    assertEquals(900, values[5]);
    assertEquals(Double.NaN, Robust.quantileInPlace(values, 0, 0.5));
  }

  @Test
  void spreadIsNotMovedByAWildValue() {
    // Median 3, deviations 2 1 0 1 997, their median 1.
    assertEquals(1.4826, Robust.spread(new double[] {1, 2, 3, 4, 1000}), 1e-12);
  }

  @Test
  void spreadOfEvenlyDrawnNormalValuesIsTheirStandardDeviation() {
    // Quartiles of the standard normal lie at 0.67449, whose inverse is 1.4826.
    double[] values = {-0.67449, 0.67449, 0, -0.67449, 0.67449};
    assertEquals(1, Robust.spread(values), 1e-4);
  }

  /**
   * Modified z of Iglewicz and Hoaglin (1993, from memory), 0.6745 (x - median) / MAD: 22.258 for
   * the last of eight resistances (worked out with NumPy). 1 / 1.4826 is 0.6745 to four digits.
   */
  @Test
  void aResistiveCellAmongEightStandsOutByTwentyTwoSpreads() {
    double[] milliohm = {0.250, 0.252, 0.249, 0.251, 0.250, 0.253, 0.248, 0.300};
    double z = (0.300 - Robust.median(milliohm)) / Robust.spread(milliohm);
    assertEquals(22.258, z, 0.001);
  }
}
