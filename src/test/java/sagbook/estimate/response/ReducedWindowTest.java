package sagbook.estimate.response;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import sagbook.evidence.StepWindow;

/** Windows of two parts of a response and the charge moved, with cells as each test asks. */
class ReducedWindowTest {
  private static final int CHARGE = 2;
  private static final double[] SHAPE = {2e-4, 1e-4};

  /** Steps of up to 80 A, a slow part of them, and the charge moved, Ah; one a row. */
  private static double[][] steps(int rows, boolean moved, SplittableRandom random) {
    double[][] x = new double[rows][];
    Arrays.setAll(
        x,
        r -> {
          double step = 160 * (random.nextDouble() - 0.5);
          return new double[] {step, step * random.nextDouble(), moved ? random.nextDouble() : 0};
        });
    return x;
  }

  private static double[] response(double[][] x) {
    return Arrays.stream(x).mapToDouble(row -> SHAPE[0] * row[0] + SHAPE[1] * row[1]).toArray();
  }

  private static double[] column(double[][] x, int i) {
    return Arrays.stream(x).mapToDouble(row -> row[i]).toArray();
  }

  private static double product(double[] a, double[] b) {
    double sum = 0;
    for (int r = 0; r < a.length; r++) {
      sum += a[r] * b[r];
    }
    return sum;
  }

  private static double[] sum(double a, double[] x, double b, double[] y) {
    double[] sum = new double[x.length];
    Arrays.setAll(sum, r -> a * x[r] + b * y[r]);
    return sum;
  }

  /** What is left of a column beside another one. */
  private static double[] beside(double[] column, double[] other) {
    double pull = product(other, other);
    return pull > 0 ? sum(1, column, -product(column, other) / pull, other) : column;
  }

  private static double misfit(double[][] x, double[]... cells) {
    double[] gram = new double[6];
    double[][] cross = new double[cells.length][CHARGE + 1];
    double[] squares = new double[cells.length];
    for (int i = 0; i <= CHARGE; i++) {
      for (int j = 0; j <= i; j++) {
        gram[i * (i + 1) / 2 + j] = product(column(x, i), column(x, j));
      }
      for (int c = 0; c < cells.length; c++) {
        cross[c][i] = product(column(x, i), cells[c]);
        squares[c] = product(cells[c], cells[c]);
      }
    }
    int[] heard = new int[cells.length];
    Arrays.fill(heard, x.length);
    StepWindow window =
        new StepWindow(
            0, 7200, x.length, new double[cells.length], 0, 0, 3.3, gram, cross, squares, heard);
    return ReducedWindow.reduce(window, CHARGE).misfit(SHAPE);
  }

  @ParameterizedTest
  @ValueSource(ints = {3, 40})
  void aCellThatAnswersMoreOnASlopeFits(int rows) {
    double[][] x = steps(rows, true, new SplittableRandom(1));
    double[] worn = sum(1.7, response(x), 3e-3, column(x, CHARGE));
    assertEquals(0, misfit(x, worn, response(x)), 1e-15 * product(worn, worn));
  }

  @ParameterizedTest
  @CsvSource({"3, true, 1", "40, true, 38", "3, false, 2", "40, false, 39"})
  void whatNeitherSizeNorChargeExplainsIsSharedOutOverTheFreedoms(
      int rows, boolean moved, int freedoms) {
    SplittableRandom random = new SplittableRandom(2);
    double[][] x = steps(rows, moved, random);
    double[] charge = column(x, CHARGE);
    double[] odd = random.doubles(rows, -1e-3, 1e-3).toArray();
    double[] left = beside(beside(odd, charge), beside(response(x), charge));
    double squares = product(left, left);
    double[] cell = sum(1.3, response(x), 1, left);
    assertEquals(squares / freedoms, misfit(x, cell), 1e-6 * squares);
  }

  @ParameterizedTest
  @ValueSource(ints = {3, 4, 40})
  void noiseIsToldAlikeByFewRowsAndByMany(int rows) {
    SplittableRandom random = new SplittableRandom(3);
    int windows = 4000;
    double mean = 0;
    for (int w = 0; w < windows; w++) {
      double[][] x = steps(rows, true, random);
      double[] noise = new double[rows];
      Arrays.setAll(noise, r -> 1e-3 * random.nextGaussian());
      mean += misfit(x, sum(1, response(x), 1, noise)) / windows;
    }
    // A mean square of one freedom scatters by a square root of two: 2.2 % after 4,000.
    assertEquals(1e-6, mean, 0.07e-6);
  }

  @Test
  void twoRowsHaveNoMisfit() {
    double[][] x = steps(2, true, new SplittableRandom(4));
    assertTrue(Double.isNaN(misfit(x, response(x))));
  }
}
