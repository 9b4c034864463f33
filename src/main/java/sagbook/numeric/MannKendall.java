package sagbook.numeric;

import java.util.Arrays;
import org.hipparchus.distribution.continuous.NormalDistribution;

/**
 * Mann–Kendall test for a monotone trend.
 *
 * <p>S = sum of sgn(y[j] − y[i]) over i &lt; j; Var S = [n(n−1)(2n+5) − sum t(t−1)(2t+5)]/18 over
 * the groups of t equal values; Z = (S ∓ 1)/√Var. The probability is exact for up to {@value
 * #MOST_EXACT} values without ties, else normal. Holds for independent values; positive
 * autocorrelation makes it too eager.
 *
 * <p>Special results: fewer than two values, or none that differ, give S = 0, Z = 0, p = 1.
 *
 * <p>Source: Mann 1945, Econometrica 13, 245; Kendall 1975, Rank Correlation Methods; seasonal:
 * Hirsch, Slack and Smith 1982, Water Resources Research 18, 107 (S and Var S summed over seasons).
 *
 * @param s pairs that rise less pairs that fall
 * @param variance of S under no trend
 * @param z standard normal under no trend, with continuity correction
 * @param p probability of an S this far from zero, either way, under no trend
 */
public record MannKendall(long s, double variance, double z, double p) {
  private static final int MOST_EXACT = 12;
  private static final NormalDistribution NORMAL = new NormalDistribution();

  /** The test of values in time order. */
  public static MannKendall of(double[] y) {
    return y.length <= MOST_EXACT && ties(y) == 0 ? exact(y) : normal(score(y), variance(y));
  }

  /**
   * The test within seasons: only values of the same season are compared.
   *
   * @param season one a value, any numbers
   * @param y values in time order
   */
  public static MannKendall seasonal(int[] season, double[] y) {
    long s = 0;
    double variance = 0;
    for (int label : Arrays.stream(season).distinct().toArray()) {
      double[] own = ofSeason(season, y, label);
      s += score(own);
      variance += variance(own);
    }
    return normal(s, variance);
  }

  static double[] ofSeason(int[] season, double[] values, int label) {
    double[] own = new double[values.length];
    int n = 0;
    for (int i = 0; i < values.length; i++) {
      if (season[i] == label) {
        own[n++] = values[i];
      }
    }
    return Arrays.copyOf(own, n);
  }

  private static MannKendall normal(long s, double variance) {
    double z = variance > 0 ? (s - Long.signum(s)) / Math.sqrt(variance) : 0;
    return new MannKendall(s, variance, z, 2 * NORMAL.cumulativeProbability(-Math.abs(z)));
  }

  private static MannKendall exact(double[] y) {
    MannKendall normal = normal(score(y), variance(y));
    return new MannKendall(
        normal.s(), normal.variance(), normal.z(), exactP(y.length, Math.abs(normal.s())));
  }

  /**
   * Two-sided probability of |S| of at least {@code s}. The count of orders of n values with k
   * inversions follows from that of n − 1 values: the new one may stand before 0 to n − 1 others.
   */
  private static double exactP(int n, long s) {
    int pairs = n * (n - 1) / 2;
    double[] share = new double[pairs + 1];
    share[0] = 1;
    for (int m = 2; m <= n; m++) {
      double[] next = new double[pairs + 1];
      for (int k = 0; k <= pairs; k++) {
        for (int before = 0; before < m && before <= k; before++) {
          next[k] += share[k - before] / m;
        }
      }
      share = next;
    }
    double tail = 0;
    for (int inversions = 0; inversions <= (pairs - s) / 2; inversions++) {
      tail += share[inversions];
    }
    return Math.min(1, 2 * tail);
  }

  private static long score(double[] y) {
    long s = 0;
    for (int i = 0; i < y.length; i++) {
      for (int j = i + 1; j < y.length; j++) {
        s += (long) Math.signum(y[j] - y[i]);
      }
    }
    return s;
  }

  private static double variance(double[] y) {
    double n = y.length;
    return (n * (n - 1) * (2 * n + 5) - ties(y)) / 18;
  }

  /** Sum of t(t−1)(2t+5) over groups of equal values. */
  private static double ties(double[] y) {
    double[] sorted = y.clone();
    Arrays.sort(sorted);
    double sum = 0;
    int from = 0;
    for (int i = 1; i <= sorted.length; i++) {
      if (i == sorted.length || sorted[i] != sorted[from]) {
        double t = i - from;
        sum += t * (t - 1) * (2 * t + 5);
        from = i;
      }
    }
    return sum;
  }
}
