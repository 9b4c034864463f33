package sagbook.numeric;

/**
 * A smooth curve through points that never turns between them where they don't: cubic between the
 * points with the slopes of Fritsch and Butland (SIAM J. Sci. Stat. Comput. 5 (1984) 300), at the
 * ends those of the parabola through three points, held back where they would overshoot. Carried on
 * straight beyond the ends.
 */
public final class MonotoneCurve {
  private final double[] x;
  private final double[] y;
  private final double[] slope;

  /**
   * A curve through points.
   *
   * @param x places, strictly rising, at least two
   * @param y values, one a place
   */
  public MonotoneCurve(double[] x, double[] y) {
    if (x.length < 2 || x.length != y.length) {
      throw new IllegalArgumentException("a curve needs two points or more, a value a place");
    }
    for (int i = 1; i < x.length; i++) {
      if (!(x[i] > x[i - 1])) {
        throw new IllegalArgumentException("places must rise, not go from " + x[i - 1] + " on");
      }
    }
    this.x = x.clone();
    this.y = y.clone();
    this.slope = slopes();
  }

  private double[] slopes() {
    int n = x.length;
    double[] d = new double[n];
    if (n == 2) {
      d[0] = secant(0);
      d[1] = d[0];
      return d;
    }
    for (int i = 1; i < n - 1; i++) {
      double before = secant(i - 1);
      double after = secant(i);
      if (before * after > 0) {
        double w1 = 2 * width(i) + width(i - 1);
        double w2 = width(i) + 2 * width(i - 1);
        d[i] = (w1 + w2) / (w1 / before + w2 / after);
      }
    }
    d[0] = endSlope(width(0), width(1), secant(0), secant(1));
    d[n - 1] = endSlope(width(n - 2), width(n - 3), secant(n - 2), secant(n - 3));
    return d;
  }

  private double width(int i) {
    return x[i + 1] - x[i];
  }

  private double secant(int i) {
    return (y[i + 1] - y[i]) / width(i);
  }

  private static double endSlope(double near, double next, double secant, double nextSecant) {
    double d = ((2 * near + next) * secant - near * nextSecant) / (near + next);
    if (Math.signum(d) != Math.signum(secant)) {
      return 0;
    }
    boolean turns = Math.signum(secant) != Math.signum(nextSecant);
    return turns && Math.abs(d) > Math.abs(3 * secant) ? 3 * secant : d;
  }

  /** Value at a place. */
  public double at(double place) {
    int last = x.length - 1;
    if (place <= x[0]) {
      return y[0] + slope[0] * (place - x[0]);
    }
    if (place >= x[last]) {
      return y[last] + slope[last] * (place - x[last]);
    }
    int low = 0;
    int high = last;
    while (high - low > 1) {
      int middle = (low + high) / 2;
      if (x[middle] <= place) {
        low = middle;
      } else {
        high = middle;
      }
    }
    double h = width(low);
    double t = (place - x[low]) / h;
    double u = 1 - t;
    return y[low] * u * u * (1 + 2 * t)
        + y[high] * t * t * (3 - 2 * t)
        + h * t * u * (slope[low] * u - slope[high] * t);
  }
}
