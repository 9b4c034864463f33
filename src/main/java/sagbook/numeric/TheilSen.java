package sagbook.numeric;

import java.util.stream.DoubleStream;
import org.hipparchus.distribution.continuous.NormalDistribution;

/**
 * A straight line through points, by the median of the slopes of all pairs; a few wild points don't
 * move it (up to 29 % of them).
 *
 * <p>Intercept = median(y) − slope · median(t) (Conover 1980). Interval: with C = z √(Var S) of
 * {@link MannKendall} and N slopes, the slopes of ranks (N − C)/2 and (N + C)/2 + 1, interpolated
 * (Gilbert 1987, Statistical Methods for Environmental Pollution Monitoring, section 16.5). Where
 * these ranks lie outside 1 to N there are too few points for that level and the end is infinite.
 *
 * <p>Special results: fewer than two different times give NaN.
 *
 * <p>Source: Theil 1950; Sen 1968, J. Am. Stat. Assoc. 63, 1379; seasonal: Hirsch, Slack and Smith
 * 1982 (only pairs within a season).
 *
 * @param slope y per unit of t
 * @param intercept y at t = 0
 * @param low lower end of the slope's interval
 * @param high upper end of the slope's interval
 */
public record TheilSen(double slope, double intercept, double low, double high) {
  private static final NormalDistribution NORMAL = new NormalDistribution();

  /**
   * The line.
   *
   * @param t times
   * @param y as many values
   * @param level of the interval, such as 0.95
   */
  public static TheilSen of(double[] t, double[] y, double level) {
    return seasonal(new int[t.length], t, y, level);
  }

  /**
   * The line from pairs of the same season only.
   *
   * @param season one a point, any numbers
   */
  public static TheilSen seasonal(int[] season, double[] t, double[] y, double level) {
    double[] slopes = slopes(season, t, y);
    double slope = Robust.median(slopes);
    double c =
        NORMAL.inverseCumulativeProbability((1 + level) / 2)
            * Math.sqrt(MannKendall.seasonal(season, y).variance());
    double n = slopes.length;
    return new TheilSen(
        slope,
        Robust.median(y) - slope * Robust.median(t),
        atRank(slopes, (n - c) / 2),
        atRank(slopes, (n + c) / 2 + 1));
  }

  /** All slopes within seasons, sorted. */
  private static double[] slopes(int[] season, double[] t, double[] y) {
    DoubleStream.Builder all = DoubleStream.builder();
    for (int i = 0; i < t.length; i++) {
      for (int j = i + 1; j < t.length; j++) {
        if (season[i] == season[j] && t[i] != t[j]) {
          all.add((y[j] - y[i]) / (t[j] - t[i]));
        }
      }
    }
    return all.build().sorted().toArray();
  }

  private static double atRank(double[] sorted, double rank) {
    if (rank < 1) {
      return Double.NEGATIVE_INFINITY;
    }
    if (rank > sorted.length) {
      return Double.POSITIVE_INFINITY;
    }
    int below = (int) Math.floor(rank);
    double share = rank - below;
    return share == 0
        ? sorted[below - 1]
        : sorted[below - 1] + share * (sorted[below] - sorted[below - 1]);
  }
}
