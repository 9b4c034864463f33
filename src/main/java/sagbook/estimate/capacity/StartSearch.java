package sagbook.estimate.capacity;

import java.util.stream.IntStream;
import sagbook.numeric.Robust;

/**
 * Finds where each cell's bottom and top lie to within a bin or two, by trying all places: the
 * steps of the curve are narrow, so a fit that starts far off would not find them.
 */
final class StartSearch {
  private static final int BINS = 260;

  /** Places tried on either side of the middle, each a hundredth of capacity from the next. */
  private static final int MOST_STEPS = 25;

  private static final double STEP_SHARE = 0.01;

  /** Rows of the thinned record in a bin below which it says nothing. */
  private static final double FEWEST_ROWS = 3;

  private final StringView view;
  private final CellCurve curve;
  private final double stepAh;
  private final int knots;
  private final double mostOffsetV;

  StartSearch(StringView view, CellCurve curve, double nominalAh, int knots, double mostOffsetV) {
    this.mostOffsetV = mostOffsetV;
    this.view = view;
    this.curve = curve;
    this.stepAh = STEP_SHARE * nominalAh;
    this.knots = knots;
  }

  void fill(CellState[] states) {
    double low = curve.visitedFromAh();
    double width = (curve.visitedToAh() - low) / BINS;
    int cells = states.length;
    double[][] sum = new double[cells][BINS];
    double[][] count = new double[cells][BINS];
    double[] one = new double[cells];
    for (int r = 0; r < view.rows(); r++) {
      double place = (view.chargeAh()[r] - low) / width;
      int bin = (int) place;
      if (!(place >= 0) || bin >= BINS) {
        continue;
      }
      for (int c = 0; c < cells; c++) {
        one[c] = view.voltage(c, r);
      }
      double middle = Robust.median(one);
      int rows = view.rowsOf()[r];
      for (int c = 0; c < cells; c++) {
        if (!Double.isNaN(one[c])) {
          sum[c][bin] += rows * (one[c] - middle);
          count[c][bin] += rows;
        }
      }
    }
    Curves curves = curves(low, width);
    IntStream.range(0, cells)
        .parallel()
        .forEach(c -> states[c] = search(means(sum[c], count[c]), curves));
  }

  private static double[] means(double[] sum, double[] count) {
    double[] mean = new double[BINS];
    for (int k = 0; k < BINS; k++) {
      mean[k] = count[k] < FEWEST_ROWS ? Double.NaN : sum[k] / count[k];
    }
    return mean;
  }

  /**
   * Both parts of the curve at every bin, less the curve of a cell in the middle, as a cell shows
   * them whose bottom or top lies so many steps apart; NaN beyond what was visited.
   */
  private record Curves(double[][] bottom, double[][] top) {}

  private Curves curves(double low, double width) {
    double[][] bottom = new double[2 * MOST_STEPS + 1][BINS];
    double[][] top = new double[2 * MOST_STEPS + 1][BINS];
    for (int i = -MOST_STEPS; i <= MOST_STEPS; i++) {
      for (int k = 0; k < BINS; k++) {
        double q = low + (k + 0.5) * width;
        double apart = q - i * stepAh;
        bottom[i + MOST_STEPS][k] =
            apart < curve.visitedFromAh()
                ? Double.NaN
                : curve.bottom().at(apart) - curve.bottom().at(q);
        top[i + MOST_STEPS][k] =
            apart > curve.visitedToAh() ? Double.NaN : curve.top().at(apart) - curve.top().at(q);
      }
    }
    return new Curves(bottom, top);
  }

  private CellState search(double[] mean, Curves curves) {
    double best = Double.POSITIVE_INFINITY;
    CellState found = CellState.reference(knots);
    int[] filled = IntStream.range(0, BINS).filter(k -> !Double.isNaN(mean[k])).toArray();
    double[] lessBottom = new double[filled.length];
    double[] residual = new double[filled.length];
    double[] few = new double[filled.length];
    for (int i = -MOST_STEPS; i <= MOST_STEPS; i++) {
      for (int f = 0; f < filled.length; f++) {
        lessBottom[f] = mean[filled[f]] - curves.bottom()[i + MOST_STEPS][filled[f]];
      }
      int from = curve.topVisited() ? -MOST_STEPS : i;
      int to = curve.topVisited() ? MOST_STEPS : i;
      for (int j = from; j <= to; j++) {
        double[] top = curves.top()[j + MOST_STEPS];
        int n = 0;
        for (int f = 0; f < filled.length; f++) {
          double e = lessBottom[f] - top[filled[f]];
          if (!Double.isNaN(e)) {
            residual[n++] = e;
          }
        }
        if (n < CellFit.LEAST_SEEN * filled.length) {
          continue;
        }
        double middle = middle(residual, n, few);
        double offset = Math.max(-mostOffsetV, Math.min(mostOffsetV, middle));
        // Of equals, the one that asks for the least.
        double handicap = 1 + 0.002 * (Math.abs(i) + Math.abs(i - j));
        double cost = handicap * cost(residual, n, offset, best / handicap);
        if (cost < best) {
          best = cost;
          found = CellState.at(i * stepAh, (i - j) * stepAh, offset, knots);
        }
      }
    }
    return found;
  }

  /** Median of every fourth: neighbouring bins differ little, and sorting takes the most time. */
  private static double middle(double[] residual, int n, double[] few) {
    int taken = 0;
    for (int k = 0; k < n; k += 4) {
      few[taken++] = residual[k];
    }
    return Robust.quantileInPlace(few, taken, 0.5);
  }

  /**
   * How badly a cell fits: mean absolute deviation from a constant, V; infinite where it comes out
   * higher than the best so far.
   */
  private static double cost(double[] residual, int n, double offsetV, double best) {
    double total = 1e-4 * n;
    for (int k = 0; k < n; k++) {
      double d = Math.min(0.05, Math.abs(residual[k] - offsetV));
      total += d + 20 * d * d;
      if (total > best * n) {
        return Double.POSITIVE_INFINITY;
      }
    }
    return total / n;
  }
}
