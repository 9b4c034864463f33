package sagbook.estimate.response;

import java.util.ArrayList;
import java.util.List;
import sagbook.evidence.Evidence;
import sagbook.evidence.StepWindow;

/**
 * A step window with the charge regressor projected out (Frisch and Waugh 1933), because the slope
 * of the open-circuit curve is another one in every window and none of the resistance's business.
 *
 * @param window the sums it comes from
 * @param gram X'X of what is left: immediate, slow parts
 * @param cross X'y of what is left, [cell][regressor], V
 * @param meanCross mean of {@code cross} over the cells
 * @param squares y'y of what is left, one a cell, V²
 * @param rows pairs of rows that are left: one fewer where the charge moved
 */
public record ReducedWindow(
    StepWindow window,
    double[][] gram,
    double[][] cross,
    double[] meanCross,
    double[] squares,
    int rows) {

  /** All windows of a bank in which every cell was heard in nine of ten rows. */
  public static List<ReducedWindow> of(Evidence evidence) {
    List<ReducedWindow> all = new ArrayList<>();
    int charge = evidence.basis().charge();
    for (StepWindow window : evidence.steps()) {
      int least = Integer.MAX_VALUE;
      for (int n : window.cellRows()) {
        least = Math.min(least, n);
      }
      if (least >= 0.9 * window.rows()) {
        all.add(reduce(window, charge));
      }
    }
    return all;
  }

  /**
   * One window.
   *
   * @param charge which regressor the charge is, the last
   */
  static ReducedWindow reduce(StepWindow window, int charge) {
    double pivot = at(window, charge, charge);
    boolean moved = pivot > 0;
    double[][] gram = new double[charge][charge];
    for (int i = 0; i < charge; i++) {
      for (int j = 0; j < charge; j++) {
        double shared = moved ? at(window, i, charge) * at(window, j, charge) / pivot : 0;
        gram[i][j] = at(window, i, j) - shared;
      }
    }
    int cells = window.cross().length;
    double[][] cross = new double[cells][charge];
    double[] mean = new double[charge];
    double[] squares = window.sumSquares().clone();
    for (int c = 0; c < cells; c++) {
      double along = window.cross()[c][charge];
      squares[c] -= moved ? along * along / pivot : 0;
      for (int i = 0; i < charge; i++) {
        double shared = moved ? at(window, i, charge) * window.cross()[c][charge] / pivot : 0;
        cross[c][i] = window.cross()[c][i] - shared;
        mean[i] += cross[c][i] / cells;
      }
    }
    return new ReducedWindow(window, gram, cross, mean, squares, window.rows() - (moved ? 1 : 0));
  }

  /**
   * Mean square of what a response of this shape leaves unexplained of a pair of rows, V², each
   * cell's answer being as large as suits it best; NaN where that leaves no freedom. The mean over
   * the cells, for with one freedom the median is half of what it is with many.
   */
  public double misfit(double[] shape) {
    if (rows < 2) {
      return Double.NaN;
    }
    double pull = product(shape, shape);
    double left = 0;
    for (int c = 0; c < cross.length; c++) {
      double along = product(shape, cross[c], shape.length);
      left += squares[c] - (pull > 0 ? along * along / pull : 0);
    }
    return Math.max(0, left) / cross.length / (rows - 1);
  }

  private static double at(StepWindow window, int i, int j) {
    int high = Math.max(i, j);
    int low = Math.min(i, j);
    return window.gram()[high * (high + 1) / 2 + low];
  }

  /** {@code a' X'X b}. */
  public double product(double[] a, double[] b) {
    double sum = 0;
    for (int i = 0; i < a.length; i++) {
      if (a[i] != 0) {
        for (int j = 0; j < b.length; j++) {
          sum += a[i] * gram[i][j] * b[j];
        }
      }
    }
    return sum;
  }

  /** {@code a' X'y}. */
  public static double product(double[] a, double[] cross, int length) {
    double sum = 0;
    for (int i = 0; i < length; i++) {
      sum += a[i] * cross[i];
    }
    return sum;
  }
}
