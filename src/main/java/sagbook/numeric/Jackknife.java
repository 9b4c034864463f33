package sagbook.numeric;

/** Uncertainty from leaving out one part of the data at a time (Quenouille 1956, Tukey 1958). */
public final class Jackknife {
  private Jackknife() {}

  /**
   * Standard deviation of an estimate from its values with one part left out: {@code sqrt((n-1)/n
   * sum (x_k - mean)^2)}.
   *
   * @param left one row a part left out
   * @param column which estimate of a row
   */
  public static double sd(double[][] left, int column) {
    int n = left.length;
    double mean = 0;
    for (double[] one : left) {
      mean += one[column] / n;
    }
    double sum = 0;
    for (double[] one : left) {
      sum += (one[column] - mean) * (one[column] - mean);
    }
    return Math.sqrt((n - 1.0) / n * sum);
  }

  /**
   * The same with its degrees of freedom, one fewer than there are parts; at least two parts.
   *
   * @param left one row a part left out
   * @param column which estimate of a row
   */
  public static Uncertainty of(double[][] left, int column) {
    return new Uncertainty(sd(left, column), left.length - 1);
  }
}
