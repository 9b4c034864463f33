package sagbook.numeric;

import java.util.Arrays;
import java.util.Optional;
import org.hipparchus.exception.MathRuntimeException;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.DecompositionSolver;

/**
 * Weighted linear least squares by normal equations, with independent normal priors on the
 * parameters: minimises {@code sum w (y - x·b)² + sum (b - m)²/s²}. With a weight of one over the
 * variance of y, the covariance of the result is the inverse of the normal matrix (Gauss–Markov,
 * and Bayes' rule for normal distributions).
 */
public final class Ridge {
  /** Lower triangle, row by row. */
  private final double[] normal;

  private final double[] right;

  public Ridge(int parameters) {
    normal = new double[place(parameters, 0)];
    right = new double[parameters];
  }

  public int parameters() {
    return right.length;
  }

  /** Takes one observation {@code y ~ x·b}. */
  public void observe(double[] x, double y, double weight) {
    int row = 0;
    for (int i = 0; i < right.length; i++) {
      double wx = weight * x[i];
      if (wx != 0) {
        right[i] += wx * y;
        for (int j = 0; j <= i; j++) {
          normal[row + j] += wx * x[j];
        }
      }
      row += i + 1;
    }
  }

  private static int place(int i, int j) {
    return i * (i + 1) / 2 + j;
  }

  /** Adds to the normal matrix (both triangles) at a place. */
  public void addNormal(int i, int j, double value) {
    normal[place(Math.max(i, j), Math.min(i, j))] += value;
  }

  /** Adds all the sums of another fit of the same parameters. */
  public void add(Ridge other) {
    addNormalOf(other);
    for (int i = 0; i < right.length; i++) {
      right[i] += other.right[i];
    }
  }

  /**
   * Adds all the sums of a fit of some of the parameters.
   *
   * @param places which parameter each of the other's is
   */
  public void add(Ridge other, int[] places) {
    for (int i = 0; i < places.length; i++) {
      right[places[i]] += other.right[i];
      for (int j = 0; j <= i; j++) {
        addNormal(places[i], places[j], other.normal[place(i, j)]);
      }
    }
  }

  /** Adds the normal matrix of another fit, but not its right-hand side. */
  public void addNormalOf(Ridge other) {
    for (int k = 0; k < normal.length; k++) {
      normal[k] += other.normal[k];
    }
  }

  /**
   * The fit of some of the parameters, the others being zero.
   *
   * @param places which parameters, rising
   */
  public Ridge part(int[] places) {
    Ridge part = new Ridge(places.length);
    for (int i = 0; i < places.length; i++) {
      part.right[i] = right[places[i]];
      for (int j = 0; j <= i; j++) {
        part.addNormal(i, j, normal[place(places[i], places[j])]);
      }
    }
    return part;
  }

  /** How steeply half of the sum that is minimised falls with each parameter at a place. */
  public double[] descent(double[] at) {
    double[] descent = right.clone();
    for (int i = 0; i < right.length; i++) {
      for (int j = 0; j < right.length; j++) {
        descent[i] -= normal[place(Math.max(i, j), Math.min(i, j))] * at[j];
      }
    }
    return descent;
  }

  /** By how much a step away from the best solution raises the sum that is minimised. */
  public double squares(double[] step) {
    double sum = 0;
    for (int i = 0; i < right.length; i++) {
      for (int j = 0; j < right.length; j++) {
        sum += step[i] * step[j] * normal[place(Math.max(i, j), Math.min(i, j))];
      }
    }
    return sum;
  }

  /** A diagonal entry of the normal matrix. */
  public double normalAt(int i) {
    return normal[place(i, i)];
  }

  /** Multiplies all sums so far, which weights all observations so far. */
  public void scale(double factor) {
    for (int i = 0; i < right.length; i++) {
      right[i] *= factor;
    }
    for (int k = 0; k < normal.length; k++) {
      normal[k] *= factor;
    }
  }

  /** Adds to the right-hand side. */
  public void addRight(int i, double value) {
    right[i] += value;
  }

  /** Says that a parameter is {@code mean} give or take {@code sd} before any data. */
  public void prior(int parameter, double mean, double sd) {
    double w = 1 / (sd * sd);
    addNormal(parameter, parameter, w);
    right[parameter] += w * mean;
  }

  /** Says that two parameters differ by nothing, give or take {@code sd}. */
  public void tie(int a, int b, double sd) {
    double w = 1 / (sd * sd);
    addNormal(a, a, w);
    addNormal(b, b, w);
    addNormal(a, b, -w);
  }

  /** Solution and what is known of its uncertainty. */
  public Solution solve() {
    int n = right.length;
    // Scaling to a unit diagonal keeps parameters of very different size apart from rounding.
    double[] scale = new double[n];
    for (int i = 0; i < n; i++) {
      double d = normalAt(i);
      if (!(d > 0)) {
        return Solution.undetermined(n);
      }
      scale[i] = 1 / Math.sqrt(d);
    }
    double[][] scaled = new double[n][n];
    double[] b = new double[n];
    int place = 0;
    for (int i = 0; i < n; i++) {
      for (int j = 0; j <= i; j++) {
        scaled[i][j] = normal[place++] * scale[i] * scale[j];
        scaled[j][i] = scaled[i][j];
      }
      scaled[i][i] += 1e-12;
      b[i] = right[i] * scale[i];
    }
    try {
      DecompositionSolver solver =
          new CholeskyDecomposition(new Array2DRowRealMatrix(scaled, false), 1e-9, 1e-14)
              .getSolver();
      return new Solution(times(solve(solver, b), scale), scale, Optional.of(solver));
    } catch (MathRuntimeException notPositive) {
      return Solution.undetermined(n);
    }
  }

  private static double[] solve(DecompositionSolver solver, double[] b) {
    return solver.solve(new ArrayRealVector(b, false)).toArray();
  }

  private static double[] times(double[] a, double[] b) {
    double[] product = new double[a.length];
    Arrays.setAll(product, i -> a[i] * b[i]);
    return product;
  }

  /** What came out. Covariances are those given unit variance of a weighted residual. */
  public static final class Solution {
    private final double[] value;
    private final double[] scale;

    /** Of the normal matrix, scaled; empty when the observations don't fix the parameters. */
    private final Optional<DecompositionSolver> solver;

    private Solution(double[] value, double[] scale, Optional<DecompositionSolver> solver) {
      this.value = value;
      this.scale = scale;
      this.solver = solver;
    }

    private static Solution undetermined(int parameters) {
      return new Solution(new double[parameters], new double[parameters], Optional.empty());
    }

    /** Parameters; zeros without a meaning when they are not determined. */
    public double[] value() {
      return value;
    }

    /** Whether the observations fix the parameters. */
    public boolean determined() {
      return solver.isPresent();
    }

    /** Standard deviation of one parameter. */
    public double sd(int i) {
      double[] c = new double[value.length];
      c[i] = 1;
      return combinedSd(c);
    }

    /** Value of the combination {@code c·b}. */
    public double combined(double[] c) {
      double sum = 0;
      for (int i = 0; i < c.length; i++) {
        sum += c[i] * value[i];
      }
      return sum;
    }

    /** Standard deviation of the combination {@code c·b}. */
    public double combinedSd(double[] c) {
      double variance = 0;
      if (solver.isPresent()) {
        double[] scaled = times(c, scale);
        double[] covariance = solve(solver.get(), scaled);
        for (int i = 0; i < c.length; i++) {
          variance += scaled[i] * covariance[i];
        }
      }
      return Math.sqrt(Math.max(0, variance));
    }
  }
}
