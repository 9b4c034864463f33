package sagbook.numeric;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** Trend tests against worked examples from handbooks and against SciPy. */
class TrendStatisticsTest {
  /** EPA Unified Guidance 2009, example 17-6: sulfate, as in the R package EnvStats. */
  private static final double[] SULFATE_TIME = {
    89.6, 89.8, 90.1, 90.3, 90.6, 90.8, 91.1, 91.3, 91.6, 91.8, 92.1, 92.6, 93.1, 93.6, 94.1, 94.6,
    95.1, 95.6, 95.8, 96.1, 96.3, 96.6, 96.8
  };

  private static final double[] SULFATE = {
    480, 450, 490, 520, 485, 510, 510, 530, 510, 560, 560, 540, 590, 550, 600, 700, 570, 610, 650,
    620, 830, 720, 590
  };

  /** EPA Unified Guidance 2009, example 14-10: rows 1983, 1984, 1985, January to December. */
  private static final double[] MONTHLY = {
    1.99, 2.10, 2.12, 2.12, 2.11, 2.15, 2.19, 2.18, 2.16, 2.08, 2.05, 2.08, //
    2.01, 2.10, 2.17, 2.13, 2.13, 2.18, 2.25, 2.24, 2.22, 2.13, 2.08, 2.16, //
    2.15, 2.17, 2.27, 2.23, 2.24, 2.26, 2.31, 2.32, 2.28, 2.22, 2.19, 2.22
  };

  private static final double[] NILE = {
    1120, 1160, 963, 1210, 1160, 1160, 813, 1230, 1370, 1140, 995, 935, 1110, 994, 1020, 960, 1180,
    799, 958, 1140, 1100, 1210, 1150, 1250, 1260, 1220, 1030, 1100, 774, 840, 874, 694, 940, 833,
    701, 916, 692, 1020, 1050, 969, 831, 726, 456, 824, 702, 1120, 1100, 832, 764, 821, 768, 845,
    864, 862, 698, 845, 744, 796, 1040, 759, 781, 865, 845, 944, 984, 897, 822, 1010, 771, 676, 649,
    846, 812, 742, 801, 1040, 860, 874, 848, 890, 744, 749, 838, 1050, 918, 986, 797, 923, 975, 815,
    1020, 906, 901, 1170, 912, 746, 919, 718, 714, 740
  };

  private static double[] count(int n) {
    double[] t = new double[n];
    Arrays.setAll(t, i -> i);
    return t;
  }

  private static int[] monthOfYear() {
    int[] month = new int[MONTHLY.length];
    Arrays.setAll(month, i -> i % 12);
    return month;
  }

  /** J. Little, Holy Cross: a series worked by hand. */
  @Test
  void aClassroomExampleRises() {
    double[] y = {
      12.9, 14.8, 13.2, 15.7, 13.8, 15.6, 12.9, 11.0, 17.3, 15.9, 19.0, 18.3, 20.1, 21.7
    };
    MannKendall test = MannKendall.of(y);
    assertEquals(54, test.s());
    assertEquals(332.667, test.variance(), 1e-3);
    assertEquals(2.9058, test.z(), 1e-4);
    assertEquals(0.56667, TheilSen.of(count(14), y, 0.95).slope(), 1e-5);
  }

  /** EPA QA/G-9S, page 109: ties of four and of two. */
  @Test
  void tiesLessenTheVariance() {
    MannKendall test = MannKendall.of(new double[] {10, 10, 10, 5, 10, 20, 18, 17, 15, 24, 15});
    assertEquals(22, test.s());
    assertEquals(155.333, test.variance(), 1e-3);
    assertEquals(1.68495, test.z(), 1e-5);
    assertEquals(0.0920, test.p(), 1e-4);
  }

  /** Values of EnvStats kendallTrendTest, which follows Gilbert 1987. */
  @Test
  void sulfateHasItsPublishedSlopeAndInterval() {
    MannKendall test = MannKendall.of(SULFATE);
    assertEquals(194, test.s());
    assertEquals(1428, test.variance(), 1e-9);
    assertEquals(5.107322, test.z(), 1e-6);
    assertEquals(3.2676e-7, test.p(), 1e-11);
    TheilSen line = TheilSen.of(SULFATE_TIME, SULFATE, 0.95);
    assertEquals(26.66667, line.slope(), 1e-5);
    assertEquals(-1909.3333, line.intercept(), 1e-3);
    assertEquals(20.0, line.low(), 1e-6);
    assertEquals(35.71182, line.high(), 1e-5);
  }

  /** EPA Unified Guidance 2009, example 17-7: sodium. */
  @Test
  void sodiumHasItsPublishedSlope() {
    double[] t = {89.6, 90.1, 90.8, 91.1, 92.1, 93.1, 94.1, 95.6, 96.1, 96.3};
    double[] y = {56, 53, 51, 55, 52, 60, 62, 59, 61, 63};
    assertEquals(1.33333, TheilSen.of(t, y, 0.95).slope(), 1e-5);
    MannKendall test = MannKendall.of(y);
    assertEquals(25, test.s());
    assertEquals(2.146625, test.z(), 1e-6);
  }

  /** Values of EnvStats kendallSeasonalTrendTest. */
  @Test
  void aSeasonalSeriesIsComparedWithinMonthsOnly() {
    MannKendall test = MannKendall.seasonal(monthOfYear(), MONTHLY);
    assertEquals(35, test.s());
    assertEquals(43, test.variance(), 1e-9);
    assertEquals(5.1849514, test.z(), 1e-7);
    assertEquals(2.1607e-7, test.p(), 1e-11);
    double[] year = new double[MONTHLY.length];
    Arrays.setAll(year, i -> Math.floor(i / 12.0));
    TheilSen line = TheilSen.seasonal(monthOfYear(), year, MONTHLY, 0.95);
    assertEquals(0.06, line.slope(), 1e-9);
    assertEquals(0.05786914, line.low(), 1e-8);
    assertEquals(0.07213086, line.high(), 1e-8);
  }

  /** One-sided table values (Kendall 1975), here two-sided. */
  @ParameterizedTest
  @CsvSource({
    "4, 6, .0417",
    "5, 8, .0417",
    "6, 9, .0681",
    "6, 11, .0278",
    "7, 11, .0681",
    "8, 14, .0543",
    "9, 16, .0597",
    "10, 19, .0542"
  })
  void smallSamplesHaveExactProbabilities(int n, int s, double oneSided) {
    MannKendall test = MannKendall.of(withScore(n, s));
    assertEquals(s, test.s());
    assertEquals(2 * oneSided, test.p(), 1.01e-4);
  }

  /** A rising series with just enough inversions. */
  private static double[] withScore(int n, int s) {
    double[] y = count(n);
    for (int inversions = (n * (n - 1) / 2 - s) / 2, i = 0; inversions > 0; inversions--) {
      while (y[i] > y[i + 1]) {
        i = (i + 1) % (n - 1);
      }
      double swap = y[i];
      y[i] = y[i + 1];
      y[i + 1] = swap;
      i = (i + 1) % (n - 1);
    }
    return y;
  }

  @Test
  void oneWildValueMovesTheLineLittle() {
    double[] t = {0, 30, 60, 90, 120, 150};
    double[] y = {.250, .252, .251, .255, .300, .258};
    assertEquals(0.0202917, TheilSen.of(t, y, 0.95).slope() * 365.25, 1e-6);
    assertEquals(11, MannKendall.of(y).s());
  }

  @Test
  void tooFewPointsLeaveTheIntervalOpen() {
    TheilSen line = TheilSen.of(new double[] {0, 1, 2}, new double[] {0, 1, 2.5}, 0.95);
    assertEquals(1.25, line.slope());
    assertEquals(Double.NEGATIVE_INFINITY, line.low());
    assertEquals(Double.POSITIVE_INFINITY, line.high());
    assertTrue(Double.isNaN(TheilSen.of(new double[] {1}, new double[] {1}, 0.95).slope()));
    assertEquals(1, MannKendall.of(new double[] {3}).p());
    assertEquals(1, Pettitt.of(new double[] {3}).p());
  }

  /** Pettitt 1979, Page's data. */
  @Test
  void pagesDataChangeAfterTheSeventeenth() {
    double[] y = {
      -1.05, .96, 1.22, .58, -.98, -.03, -1.54, -.71, -.35, .66, .44, .91, -.02, -1.42, 1.26, -1.02,
      -.81, 1.66, 1.05, .97, 2.14, 1.22, -.24, 1.60, .72, -.12, .44, .03, .66, .56, 1.37, 1.66, .10,
      .80, 1.29, .49, -.07, 1.18, 3.29, 1.84
    };
    Pettitt test = Pettitt.of(y);
    assertEquals(17, test.before());
    assertEquals(232, test.k(), 1e-9);
    assertEquals(0.014556, test.p(), 1e-6);
  }

  /** Flow of the Nile at Aswan, 1871 to 1970 (Cobb 1978, Biometrika 65, 243). */
  @Test
  void theNileChangedAfter1898() {
    Pettitt test = Pettitt.of(NILE);
    assertEquals(28, test.before());
    assertEquals(1617, test.k(), 1e-9);
    assertEquals(3.591e-7, test.p(), 1e-10);
  }

  /**
   * A row of trends-scipy.csv.
   *
   * @param t times
   * @param y values
   * @param slope of theilslopes
   * @param p of kendalltau, exact
   */
  record Reference(double[] t, double[] y, double slope, double p) {}

  static List<Reference> references() throws IOException {
    try (var in =
        Objects.requireNonNull(TrendStatisticsTest.class.getResourceAsStream("trends-scipy.csv"))) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8)
          .lines()
          .filter(line -> !line.startsWith("#"))
          .map(line -> line.split(","))
          .map(
              f ->
                  new Reference(
                      numbers(f[0]),
                      numbers(f[1]),
                      Double.parseDouble(f[2]),
                      Double.parseDouble(f[3])))
          .toList();
    }
  }

  private static double[] numbers(String text) {
    return Arrays.stream(text.split(" ")).mapToDouble(Double::parseDouble).toArray();
  }

  /** SciPy 1.17.1; made by trends-scipy.py beside the table. */
  @ParameterizedTest
  @MethodSource("references")
  void agreesWithScipy(Reference reference) {
    double slope = TheilSen.of(reference.t(), reference.y(), 0.95).slope();
    assertEquals(reference.slope(), slope, 1e-12 * Math.max(1, Math.abs(slope)));
    assertEquals(reference.p(), MannKendall.of(reference.y()).p(), 1e-12);
  }
}
