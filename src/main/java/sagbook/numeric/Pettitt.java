package sagbook.numeric;

import java.util.Arrays;

/**
 * Pettitt's test for one change of level at an unknown place.
 *
 * <p>U(t) = 2 · (sum of the first t ranks) − t (n + 1), ties at their mean rank; K = max |U|; the
 * change lies after the t of the maximum; p ≈ 2 exp(−6K² / (n³ + n²)), at most 1, good below 0.5. A
 * steady trend also gives a large K: look at a trend's residuals where there is one.
 *
 * <p>Special result: fewer than two values give K = 0 and p = 1.
 *
 * <p>Source: Pettitt 1979, Applied Statistics 28, 126.
 *
 * @param before values before the change
 * @param k the statistic
 * @param p probability of a K this large without a change
 */
public record Pettitt(int before, double k, double p) {

  /** The test of values in time order. */
  public static Pettitt of(double[] y) {
    int n = y.length;
    double[] sorted = y.clone();
    Arrays.sort(sorted);
    int before = 0;
    double k = 0;
    double ranks = 0;
    for (int t = 1; t < n; t++) {
      ranks += rank(sorted, y[t - 1]);
      double u = Math.abs(2 * ranks - t * (n + 1.0));
      if (u > k) {
        k = u;
        before = t;
      }
    }
    double cube = Math.pow(n, 3) + Math.pow(n, 2);
    return new Pettitt(before, k, k == 0 ? 1 : Math.min(1, 2 * Math.exp(-6 * k * k / cube)));
  }

  private static double rank(double[] sorted, double value) {
    int below = 0;
    int same = 0;
    for (double other : sorted) {
      below += other < value ? 1 : 0;
      same += other == value ? 1 : 0;
    }
    return below + (same + 1) / 2.0;
  }
}
