package sagbook.estimate.capacity;

import sagbook.numeric.Robust;

/**
 * Finds where each cell's bottom and top lie to within a bin or two, by trying all places: the
 * steps of the curve are narrow, so a fit that starts far off would not find them.
 */
final class StartSearch {
  private static final int BINS = 260;

  private final StringView view;
  private final CellCurve curve;
  private final double nominalAh;
  private final int knots;
  private final double mostOffsetV;

  StartSearch(StringView view, CellCurve curve, double nominalAh, int knots, double mostOffsetV) {
    this.mostOffsetV = mostOffsetV;
    this.view = view;
    this.curve = curve;
    this.nominalAh = nominalAh;
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
      for (int c = 0; c < cells; c++) {
        if (!Double.isNaN(one[c])) {
          sum[c][bin] += one[c] - middle;
          count[c][bin]++;
        }
      }
    }
    for (int c = 0; c < cells; c++) {
      states[c] = search(sum[c], count[c], low, width);
    }
  }

  private CellState search(double[] sum, double[] count, double low, double width) {
    double best = Double.POSITIVE_INFINITY;
    CellState found = CellState.reference(knots);
    double step = 0.01 * nominalAh;
    for (int i = -25; i <= 25; i++) {
      for (int j = curve.topVisited() ? -25 : i; j <= (curve.topVisited() ? 25 : i); j++) {
        double shift = i * step;
        double top = j * step;
        double[] cost = cost(sum, count, low, width, shift, top);
        // Of equals, the one that asks for the least.
        double total = cost[0] * (1 + 0.002 * (Math.abs(i) + Math.abs(i - j)));
        if (total < best) {
          best = total;
          found = CellState.at(shift, shift - top, cost[1], knots);
        }
      }
    }
    return found;
  }

  /** Mean absolute deviation beyond a constant, and that constant. */
  private double[] cost(
      double[] sum, double[] count, double low, double width, double shift, double top) {
    double[] residual = new double[BINS];
    int n = 0;
    int filled = 0;
    for (int k = 0; k < BINS; k++) {
      filled += count[k] < 3 ? 0 : 1;
      double q = low + (k + 0.5) * width;
      if (count[k] < 3 || q - shift < curve.visitedFromAh() || q - top > curve.visitedToAh()) {
        continue;
      }
      double expected = curve.at(q - top, q - shift) - curve.at(q, q);
      residual[n++] = sum[k] / count[k] - expected;
    }
    if (n < CellFit.LEAST_SEEN * filled) {
      return new double[] {Double.POSITIVE_INFINITY, 0};
    }
    double[] kept = java.util.Arrays.copyOf(residual, n);
    double offset = Math.max(-mostOffsetV, Math.min(mostOffsetV, Robust.median(kept)));
    double total = 0;
    for (double e : kept) {
      double d = Math.min(0.05, Math.abs(e - offset));
      total += d + 20 * d * d;
    }
    return new double[] {(total + 1e-4 * n) / n, offset};
  }
}
