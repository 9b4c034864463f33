package sagbook.numeric;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/**
 * Against the certified values of NIST's Statistical Reference Datasets, linear regression
 * (https://www.itl.nist.gov/div898/strd/lls/lls.shtml). The solver adds 1e-12 of the diagonal to
 * stay regular, which is seen in the eleventh digit or so.
 */
class RidgeTest {
  private static final double[][] NORRIS = {
    {0.2, 0.1}, {337.4, 338.8}, {118.2, 118.1}, {884.6, 888.0}, {10.1, 9.2}, {226.5, 228.1},
    {666.3, 668.5}, {996.3, 998.5}, {448.6, 449.1}, {777.0, 778.9}, {558.2, 559.2}, {0.4, 0.3},
    {0.6, 0.1}, {775.5, 778.1}, {666.9, 668.8}, {338.0, 339.3}, {447.5, 448.9}, {11.6, 10.8},
    {556.0, 557.7}, {228.1, 228.3}, {995.8, 998.0}, {887.6, 888.8}, {120.2, 119.6}, {0.3, 0.3},
    {0.3, 0.6}, {556.8, 557.6}, {339.1, 339.3}, {887.2, 888.0}, {999.0, 998.5}, {779.0, 778.9},
    {11.1, 10.2}, {118.3, 117.6}, {229.2, 228.9}, {669.1, 668.4}, {448.9, 449.2}, {0.5, 0.2}
  };

  private static Ridge line(double[][] points, double weight) {
    Ridge fit = new Ridge(2);
    for (double[] p : points) {
      fit.observe(new double[] {1, p[0]}, p[1], weight);
    }
    return fit;
  }

  private static double residualSd(double[][] points, Ridge.Solution line) {
    double squares = 0;
    for (double[] p : points) {
      double e = p[1] - line.combined(new double[] {1, p[0]});
      squares += e * e;
    }
    return Math.sqrt(squares / (points.length - 2));
  }

  @Test
  void norrisHasItsCertifiedLine() {
    Ridge.Solution line = line(NORRIS, 1).solve();
    double sd = residualSd(NORRIS, line);
    assertEquals(-0.262323073774029, line.value()[0], 1e-8);
    assertEquals(1.00211681802045, line.value()[1], 1e-10);
    assertEquals(0.884796396144373, sd, 1e-9);
    assertEquals(0.232818234301152, sd * line.sd(0), 1e-8);
    assertEquals(0.000429796848199937, sd * line.sd(1), 1e-11);
  }

  @Test
  void aLineThroughTheOriginHasItsCertifiedSlope() {
    Ridge first = new Ridge(1);
    double[] firstX = new double[11];
    double[] firstY = new double[11];
    for (int i = 0; i < 11; i++) {
      firstX[i] = 60 + i;
      firstY[i] = 130 + i;
      first.observe(new double[] {firstX[i]}, firstY[i], 1);
    }
    assertSlope(first, firstX, firstY, 2.07438016528926, 0.0165289256198347);

    Ridge second = new Ridge(1);
    double[] secondX = {4, 5, 6};
    double[] secondY = {3, 4, 4};
    for (int i = 0; i < 3; i++) {
      second.observe(new double[] {secondX[i]}, secondY[i], 1);
    }
    assertSlope(second, secondX, secondY, 0.727272727272727, 0.0420827318078432);
  }

  private static void assertSlope(Ridge fit, double[] x, double[] y, double slope, double error) {
    Ridge.Solution s = fit.solve();
    double squares = 0;
    for (int i = 0; i < x.length; i++) {
      squares += Math.pow(y[i] - s.value()[0] * x[i], 2);
    }
    assertEquals(slope, s.value()[0], 1e-10);
    assertEquals(error, Math.sqrt(squares / (x.length - 1)) * s.sd(0), 1e-10);
  }

  @Test
  void aWeightOfThreeIsTheSameAsSeeingAPointThreeTimes() {
    Ridge weighted = line(NORRIS, 1);
    Ridge repeated = line(NORRIS, 1);
    double[] x = {1, 1200};
    weighted.observe(x, 1210, 3);
    for (int i = 0; i < 3; i++) {
      repeated.observe(x, 1210, 1);
    }
    assertEquals(repeated.solve().value()[1], weighted.solve().value()[1], 1e-12);
    assertEquals(repeated.solve().sd(0), weighted.solve().sd(0), 1e-12);
  }

  @Test
  void aWeightedMeanHasTheInverseOfTheSummedWeightsAsVariance() {
    Ridge mean = new Ridge(1);
    mean.observe(new double[] {1}, 10, 1 / 4.0);
    mean.observe(new double[] {1}, 20, 1.0);
    Ridge.Solution s = mean.solve();
    // (10/4 + 20) / (1/4 + 1) and 1 / (1/4 + 1), by definition.
    assertEquals(18, s.value()[0], 1e-9);
    assertEquals(Math.sqrt(0.8), s.sd(0), 1e-9);
  }

  @Test
  void aPriorCountsAsOneObservationOfTheParameter() {
    Ridge prior = line(NORRIS, 1);
    prior.prior(1, 1.1, 0.002);
    Ridge observed = line(NORRIS, 1);
    observed.observe(new double[] {0, 1}, 1.1, 1 / (0.002 * 0.002));
    assertEquals(observed.solve().value()[0], prior.solve().value()[0], 1e-9);
    assertEquals(observed.solve().value()[1], prior.solve().value()[1], 1e-12);
    assertTrue(prior.solve().value()[1] > 1.003);
  }

  @Test
  void tiedParametersMeetInTheMiddle() {
    Ridge fit = new Ridge(2);
    fit.observe(new double[] {1, 0}, 1, 1);
    fit.observe(new double[] {0, 1}, 3, 1);
    fit.tie(0, 1, 1);
    // Minimum of (a-1)² + (b-3)² + (a-b)²: a = 5/3, b = 7/3.
    assertEquals(5 / 3.0, fit.solve().value()[0], 1e-9);
    assertEquals(7 / 3.0, fit.solve().value()[1], 1e-9);
  }

  @Test
  void partsAddedUpAreTheWhole() {
    Ridge sum = new Ridge(2);
    for (double[] p : NORRIS) {
      sum.add(line(new double[][] {p}, 1));
    }
    sum.scale(4);
    Ridge.Solution whole = line(NORRIS, 4).solve();
    assertEquals(whole.value()[0], sum.solve().value()[0], 1e-9);
    assertEquals(whole.sd(1), sum.solve().sd(1), 1e-12);
  }

  @Test
  void aParameterThatNothingFixesComesWithoutAnyCertainty() {
    Ridge fit = new Ridge(2);
    fit.observe(new double[] {1, 0}, 1, 1);
    assertFalse(fit.solve().determined());
  }

  @Test
  void sumsOverSomeParametersAddUpToThoseOverAll() {
    double[][] x = {{1, 0, 2, -1}, {0.5, 0, -1, 3}, {2, 0, 1, 1}};
    double[] y = {1, -2, 0.5};
    Ridge all = new Ridge(4);
    Ridge some = new Ridge(3);
    for (int r = 0; r < y.length; r++) {
      all.observe(x[r], y[r], 2);
      some.observe(new double[] {x[r][3], x[r][0], x[r][2]}, y[r], 2);
    }
    Ridge sum = new Ridge(4);
    sum.add(some, new int[] {3, 0, 2});
    for (Ridge fit : new Ridge[] {all, sum}) {
      fit.prior(1, 0.25, 1);
    }
    assertArrayEquals(all.solve().value(), sum.solve().value(), 1e-9);
  }
}
