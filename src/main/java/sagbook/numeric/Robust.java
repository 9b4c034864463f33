package sagbook.numeric;

import java.util.Arrays;

/**
 * Summaries that a few wild values don't move. NaN values are left out; of nothing but NaN the
 * result is NaN.
 */
public final class Robust {
  private Robust() {}

  /** Median; the mean of the two middle values for an even count. */
  public static double median(double[] values) {
    return quantile(values, 0.5);
  }

  /**
   * Quantile by linear interpolation between order statistics (Hyndman and Fan 1996, type 7).
   *
   * @param p 0 to 1
   */
  public static double quantile(double[] values, double p) {
    double[] numbers = new double[values.length];
    int n = 0;
    for (double value : values) {
      if (!Double.isNaN(value)) {
        numbers[n++] = value;
      }
    }
    return quantileInPlace(numbers, n, p);
  }

  /** As {@link #quantile}, of the first {@code n} values, all numbers, which it sorts. */
  public static double quantileInPlace(double[] values, int n, double p) {
    Arrays.sort(values, 0, n);
    return quantileOfSorted(values, n, p);
  }

  /** As {@link #quantile}, of the first {@code n} values of an array that is sorted already. */
  public static double quantileOfSorted(double[] sorted, int n, double p) {
    if (n == 0) {
      return Double.NaN;
    }
    double place = p * (n - 1);
    int below = (int) Math.floor(place);
    int above = Math.min(below + 1, n - 1);
    return sorted[below] + (place - below) * (sorted[above] - sorted[below]);
  }

  /**
   * Median absolute deviation from the median, times 1.4826 so that it estimates the standard
   * deviation of a normal sample (Rousseeuw and Croux 1993).
   */
  public static double spread(double[] values) {
    double middle = median(values);
    return 1.4826 * median(Arrays.stream(values).map(v -> Math.abs(v - middle)).toArray());
  }
}
