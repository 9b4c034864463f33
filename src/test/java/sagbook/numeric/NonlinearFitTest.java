package sagbook.numeric;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NonlinearFitTest {
  /** NIST StRD, Misra1a (https://www.itl.nist.gov/div898/strd/nls/data/misra1a.shtml): x, y. */
  private static final double[][] MISRA1A = {
    {77.6, 10.07}, {114.9, 14.73}, {141.1, 17.94}, {190.8, 23.93}, {239.9, 29.61}, {289.0, 35.18},
    {332.8, 40.02}, {378.4, 44.82}, {434.8, 50.76}, {477.3, 55.05}, {536.8, 61.01}, {593.1, 66.40},
    {689.1, 75.47}, {760.0, 81.78}
  };

  /** NIST StRD, BoxBOD: x, y. */
  private static final double[][] BOX_BOD = {
    {1, 109}, {2, 149}, {3, 149}, {5, 191}, {7, 213}, {10, 224}
  };

  /** NIST StRD, DanWood: x, y. */
  private static final double[][] DAN_WOOD = {
    {1.309, 2.138}, {1.471, 3.421}, {1.490, 3.597}, {1.565, 4.340}, {1.611, 4.882}, {1.680, 5.660}
  };

  /** Pearson's data (Phil. Mag. 2 (1901) 559) with York's weights: x, y, weight of x, of y. */
  private static final double[][] PEARSON_YORK = {
    {0.0, 5.9, 1000, 1}, {0.9, 5.4, 1000, 1.8}, {1.8, 4.4, 500, 4}, {2.6, 4.6, 800, 8},
    {3.3, 3.5, 200, 20}, {4.4, 3.7, 80, 20}, {5.2, 2.8, 60, 70}, {6.1, 2.8, 20, 70},
    {6.5, 2.4, 1.8, 100}, {7.4, 1.5, 1, 500}
  };

  /** Changes of state of charge and counted ampere-hours of a 98 Ah cell. */
  private static final double[] SHARE = {0.40, -0.35, 0.52, -0.61, 0.30, -0.48};

  private static final double[] COUNTED = {39.1, -34.8, 50.7, -60.2, 28.6, -47.1};

  @ParameterizedTest
  @CsvSource({"500, 0.0001", "250, 0.0005"})
  void misra1aHasItsCertifiedParameters(double first, double second) {
    assertFit(
        MISRA1A,
        p -> each(MISRA1A, x -> p[0] * (1 - Math.exp(-p[1] * x))),
        new double[] {first, second},
        new double[] {238.94212918, 5.5015643181e-4},
        new double[] {2.7070075241, 7.2668688436e-6});
  }

  @Test
  void boxBodHasItsCertifiedParametersFromNearby() {
    assertFit(
        BOX_BOD,
        p -> each(BOX_BOD, x -> p[0] * (1 - Math.exp(-p[1] * x))),
        new double[] {100, 0.75},
        new double[] {213.80940889, 0.54723748542},
        new double[] {12.354515176, 0.10455993237});
  }

  @ParameterizedTest
  @CsvSource({"1, 5", "0.7, 4"})
  void danWoodHasItsCertifiedParameters(double first, double second) {
    assertFit(
        DAN_WOOD,
        p -> each(DAN_WOOD, x -> p[0] * Math.pow(x, p[1])),
        new double[] {first, second},
        new double[] {0.76886226176, 3.8604055871},
        new double[] {0.018281973860, 0.051726610913});
  }

  /** From NIST's far start of BoxBOD the sum of squares leads away to where nothing changes. */
  @Test
  void aStartThatLeadsNowhereLeavesNoFit() {
    assertTrue(
        NonlinearFit.of(
                p -> each(BOX_BOD, x -> p[0] * (1 - Math.exp(-p[1] * x))),
                new double[] {1, 1},
                new double[] {1e-6, 1e-6})
            .isEmpty());
  }

  private static double[] each(double[][] points, DoubleUnaryOperator curve) {
    return Arrays.stream(points).mapToDouble(p -> curve.applyAsDouble(p[0]) - p[1]).toArray();
  }

  private static void assertFit(
      double[][] points,
      UnaryOperator<double[]> residuals,
      double[] start,
      double[] certified,
      double[] certifiedSd) {
    double[] difference = Arrays.stream(start).map(s -> 1e-6 * Math.abs(s)).toArray();
    NonlinearFit fit = NonlinearFit.of(residuals, start, difference).orElseThrow();
    double squares = 0;
    for (double r : residuals.apply(fit.value())) {
      squares += r * r;
    }
    double residualSd = Math.sqrt(squares / (points.length - start.length));
    for (int k = 0; k < start.length; k++) {
      double[] gradient = new double[start.length];
      gradient[k] = 1;
      assertEquals(certified[k], fit.value()[k], 1e-6 * Math.abs(certified[k]));
      assertEquals(certifiedSd[k], residualSd * fit.sd(gradient), 1e-5 * certifiedSd[k]);
    }
  }

  /**
   * D. York, Can. J. Phys. 44 (1966) 1079; D. York et al., Am. J. Phys. 72 (2004) 367, whose
   * standard deviations are those of the derivatives of the residuals.
   */
  @Test
  void aLineWithErrorsInBothVariablesIsYorks() {
    NonlinearFit fit =
        NonlinearFit.of(
                p ->
                    Arrays.stream(PEARSON_YORK)
                        .mapToDouble(
                            d ->
                                (d[1] - p[0] - p[1] * d[0])
                                    / Math.sqrt(1 / d[3] + p[1] * p[1] / d[2]))
                        .toArray(),
                new double[] {6, -0.6},
                new double[] {1e-6, 1e-6})
            .orElseThrow();
    assertEquals(5.479910224, fit.value()[0], 1e-7);
    assertEquals(-0.480533407, fit.value()[1], 5e-8);
    assertEquals(0.294970735, fit.sd(new double[] {1, 0}), 1e-7);
    assertEquals(0.057985009, fit.sd(new double[] {0, 1}), 1e-8);
  }

  /**
   * Weighted total least squares for capacity, G. L. Plett, J. Power Sources 196 (2011) 2319: the
   * minimum of {@code sum (y - Q x)² / (Q² sx² + sy²)}. Values worked out apart from this program
   * by Newton's method.
   */
  @Test
  void capacityFromSharesAndAmpereHoursIsPlettsTotalLeastSquares() {
    double[] shareSd = {0.02, 0.02, 0.02, 0.02, 0.02, 0.02};
    double[] countedSd = {0.5, 0.5, 0.5, 0.5, 0.5, 0.5};
    assertCapacity(98.044785, 1.813418, capacity(shareSd, countedSd));
  }

  /** The same where every pair has its own errors. */
  @Test
  void pairsOfDifferentWorthAreWeighed() {
    double[] shareSd = {0.02, 0.02, 0.01, 0.03, 0.02, 0.01};
    double[] countedSd = {0.5, 0.4, 0.6, 0.5, 0.3, 0.6};
    assertCapacity(97.851925, 1.393282, capacity(shareSd, countedSd));
  }

  /** Without errors in x it is ordinary least squares, and four times as sure of itself. */
  @Test
  void withoutErrorsInXTotalLeastSquaresIsOrdinaryLeastSquares() {
    double[] countedSd = {0.5, 0.5, 0.5, 0.5, 0.5, 0.5};
    assertCapacity(98.035972, 0.448039, capacity(new double[6], countedSd));
  }

  private static void assertCapacity(double ampereHours, double sd, NonlinearFit fit) {
    assertEquals(ampereHours, fit.value()[0], 1e-5);
    assertEquals(sd, fit.sd(new double[] {1}), 2e-4 * sd);
  }

  private static NonlinearFit capacity(double[] shareSd, double[] countedSd) {
    return NonlinearFit.of(
            p -> {
              double[] r = new double[SHARE.length];
              for (int i = 0; i < r.length; i++) {
                r[i] = (COUNTED[i] - p[0] * SHARE[i]) / Math.hypot(p[0] * shareSd[i], countedSd[i]);
              }
              return r;
            },
            new double[] {100},
            new double[] {1e-4})
        .orElseThrow();
  }

  @Test
  void aParameterThatNothingFixesLeavesNoFit() {
    assertTrue(
        NonlinearFit.of(
                p -> new double[] {p[0] - 1, p[0] - 2}, new double[2], new double[] {1e-6, 1e-6})
            .isEmpty());
  }
}
