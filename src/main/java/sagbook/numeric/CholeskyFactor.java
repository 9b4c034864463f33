package sagbook.numeric;

import java.util.Optional;

/**
 * The lower triangle L of a symmetric, positive definite matrix {@code A = L L'} (Cholesky), row by
 * row. Neither A nor its inverse is ever written out: {@code c' A⁻¹ c} is the square of {@code L⁻¹
 * c}.
 */
final class CholeskyFactor {
  /** Below this a pivot is taken for zero; the matrix is expected to have ones on its diagonal. */
  private static final double LEAST_PIVOT = 1e-14;

  private final double[] lower;
  private final int size;

  private CholeskyFactor(double[] lower, int size) {
    this.lower = lower;
    this.size = size;
  }

  /**
   * Factor of a matrix; empty when it is singular.
   *
   * @param triangle its lower triangle, row by row; overwritten
   */
  static Optional<CholeskyFactor> of(double[] triangle, int size) {
    int row = 0;
    for (int i = 0; i < size; i++) {
      int other = 0;
      for (int j = 0; j <= i; j++) {
        double rest = triangle[row + j];
        for (int k = 0; k < j; k++) {
          rest -= triangle[row + k] * triangle[other + k];
        }
        if (j < i) {
          triangle[row + j] = rest / triangle[other + j];
        } else if (rest > LEAST_PIVOT) {
          triangle[row + i] = Math.sqrt(rest);
        } else {
          return Optional.empty();
        }
        other += j + 1;
      }
      row += i + 1;
    }
    return Optional.of(new CholeskyFactor(triangle, size));
  }

  /** {@code L⁻¹ b}. */
  double[] forward(double[] b) {
    double[] x = new double[size];
    int row = 0;
    for (int i = 0; i < size; i++) {
      double rest = b[i];
      for (int k = 0; k < i; k++) {
        rest -= lower[row + k] * x[k];
      }
      x[i] = rest / lower[row + i];
      row += i + 1;
    }
    return x;
  }

  /** {@code A⁻¹ b}. */
  double[] solve(double[] b) {
    double[] x = forward(b);
    int row = lower.length;
    for (int i = size - 1; i >= 0; i--) {
      row -= i + 1;
      x[i] /= lower[row + i];
      for (int k = 0; k < i; k++) {
        x[k] -= lower[row + k] * x[i];
      }
    }
    return x;
  }
}
