package sagbook.estimate.resistance;

import java.util.Arrays;
import java.util.stream.IntStream;
import sagbook.numeric.Ridge;

/**
 * How warm the cells of a shelf are. Neighbours are about alike, while each board's thermometer is
 * off by an amount of its own: the warmth is taken as a walk from cell to cell, whose step is
 * learned from the readings (a random walk seen through noise; expectation and maximisation in
 * turns, Dempster, Laird and Rubin, J. R. Stat. Soc. B 39 (1977) 1). A gradient along the shelf
 * stays, what jumps from board to board mostly goes.
 *
 * @param warmK how much warmer each cell is, K, beyond a constant
 * @param sdK its standard deviation against the mean of all, K
 */
record ShelfWarmth(double[] warmK, double[] sdK) {
  private static final int PASSES = 30;

  /**
   * The cells of a string, taken to stand in the order of their numbers.
   *
   * @param readK how much warmer each is read than the median, K; NaN where unknown, two or more
   *     known
   * @param boardK how far a thermometer is off, one standard deviation, K
   * @param apartK how far neighbours are likely apart before the readings speak, K
   */
  static ShelfWarmth of(double[] readK, double boardK, double apartK) {
    int cells = readK.length;
    double[][] step = contrasts(cells);
    double stepK = apartK;
    Ridge.Solution shelf = solve(readK, boardK, stepK);
    for (int pass = 0; pass < PASSES; pass++) {
      double squares = 0;
      for (double[] s : step) {
        squares += Math.pow(shelf.combined(s), 2) + Math.pow(shelf.combinedSd(s), 2);
      }
      stepK = Math.sqrt(squares / step.length);
      shelf = solve(readK, boardK, stepK);
    }
    Ridge.Solution found = shelf;
    double[] sdK =
        IntStream.range(0, cells).mapToDouble(c -> found.combinedSd(lessMean(cells, c))).toArray();
    return new ShelfWarmth(found.value(), sdK);
  }

  private static Ridge.Solution solve(double[] readK, double boardK, double stepK) {
    Ridge fit = new Ridge(readK.length);
    for (int c = 0; c < readK.length; c++) {
      if (!Double.isNaN(readK[c])) {
        fit.prior(c, readK[c], boardK);
      }
      if (c > 0) {
        fit.tie(c - 1, c, stepK);
      }
    }
    return fit.solve();
  }

  /** Each cell less the one before. */
  private static double[][] contrasts(int cells) {
    double[][] all = new double[cells - 1][cells];
    for (int c = 1; c < cells; c++) {
      all[c - 1][c] = 1;
      all[c - 1][c - 1] = -1;
    }
    return all;
  }

  /** One cell less the mean of all. */
  private static double[] lessMean(int cells, int cell) {
    double[] all = new double[cells];
    Arrays.fill(all, -1.0 / cells);
    all[cell] += 1;
    return all;
  }
}
