package sagbook.report.chart;

import java.util.Arrays;
import java.util.stream.DoubleStream;

/**
 * A line through points, in order.
 *
 * @param x horizontal values
 * @param y vertical values; NaN breaks the line
 */
record Course(double[] x, double[] y) {
  Course {
    if (x.length != y.length) {
      throw new IllegalArgumentException(x.length + " x for " + y.length + " y");
    }
  }

  boolean leaves(double low, double high) {
    return Arrays.stream(y).anyMatch(value -> value < low || value > high);
  }

  /** What of it lies between two heights: cut where it crosses them, broken where it is away. */
  Course within(double low, double high) {
    if (!leaves(low, high)) {
      return this;
    }
    DoubleStream.Builder across = DoubleStream.builder();
    DoubleStream.Builder up = DoubleStream.builder();
    for (int i = 0; i < x.length; i++) {
      boolean inside = y[i] >= low && y[i] <= high;
      across.add(x[i]);
      up.add(inside ? y[i] : Double.NaN);
      if (i + 1 < x.length && Double.isFinite(y[i]) && Double.isFinite(y[i + 1])) {
        for (double height :
            y[i] < y[i + 1] ? new double[] {low, high} : new double[] {high, low}) {
          double share = (height - y[i]) / (y[i + 1] - y[i]);
          if (share > 0 && share < 1) {
            across.add(x[i] + share * (x[i + 1] - x[i]));
            up.add(height);
          }
        }
      }
    }
    return new Course(across.build().toArray(), up.build().toArray());
  }
}
