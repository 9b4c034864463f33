package sagbook.estimate.capacity;

import sagbook.numeric.Jackknife;
import sagbook.numeric.Ridge;

/**
 * Quantities read off a fitted cell, with the standard deviation of each by leaving out one stretch
 * of the log at a time (jackknife).
 *
 * @param lossAh charge lost between bottom and top, Ah
 * @param bottomAtEndAh place of its empty end at the end of the log, Ah
 * @param topAtEndAh place of its end of charge at the end of the log, Ah
 * @param driftAhPerDay steady drift of the shift, Ah a day
 * @param offsetV constant error of its voltage, V
 * @param misfit its residuals over the noise of a reading, at least 1
 * @param worn whether it was told by what its graphite shows ({@link WornCellFit})
 */
record CellReading(
    Figure lossAh,
    Figure bottomAtEndAh,
    Figure topAtEndAh,
    Figure driftAhPerDay,
    Figure offsetV,
    double misfit,
    boolean worn) {
  private static final int STRETCHES = 10;
  private static final int QUANTITIES = 5;

  /**
   * One quantity.
   *
   * @param value best value
   * @param sd its standard deviation
   */
  record Figure(double value, double sd) {}

  /**
   * Levers by which a cell's size moves its full and its empty place.
   *
   * @param topAh full place less the one about which the positive electrode stretches, Ah
   * @param bottomAh empty place less the one about which the graphite stretches, Ah
   */
  record Lever(double topAh, double bottomAh) {}

  /**
   * Reads one cell off.
   *
   * @param misfit its residuals over the noise of a reading, at least 1
   * @param lever how far full and empty lie from the places about which a cell's size stretches it
   */
  static CellReading of(
      StringFit string, StringView view, TimeGrid grid, int cell, double misfit, Lever lever) {
    Ridge[] stretches = string.stretches(cell, STRETCHES);
    CellState state = string.states()[cell];
    double[][] weights = weights(grid, string.fit(cell).parameters(), lever);
    double[] base = base(state, grid, lever, view.bledAh()[cell][view.rows() - 1]);
    double[] all = solve(string.fit(cell), stretches, -1, state, weights);
    double[][] left = new double[STRETCHES][];
    for (int k = 0; k < STRETCHES; k++) {
      left[k] = solve(string.fit(cell), stretches, k, state, weights);
    }
    Figure[] figures = new Figure[QUANTITIES];
    for (int q = 0; q < QUANTITIES; q++) {
      double sd = Math.hypot(Jackknife.sd(left, q), all[QUANTITIES + q]);
      figures[q] = new Figure(base[q] + all[q], misfit * sd);
    }
    return new CellReading(
        figures[0], figures[1], figures[2], figures[3], figures[4], misfit, false);
  }

  /** The quantities at the state itself, in the order of the record. */
  private static double[] base(CellState s, TimeGrid grid, Lever lever, double bledAtEndAh) {
    int last = grid.knots() - 1;
    double slope = 0;
    double[] w = slopeWeights(grid);
    for (int k = 0; k <= last; k++) {
      slope += w[k] * s.driftAh()[k];
    }
    double atEndAh = s.shiftAh() + s.driftAh()[last] + bledAtEndAh;
    return new double[] {
      s.lossAh() - s.stretch() * (lever.topAh() - lever.bottomAh()),
      atEndAh + s.stretch() * lever.bottomAh(),
      atEndAh - s.lossAh() + s.stretch() * lever.topAh(),
      slope,
      s.offsetV()
    };
  }

  /** What each quantity is made of, in the order of the record. */
  private static double[][] weights(TimeGrid grid, int parameters, Lever lever) {
    double[][] w = new double[QUANTITIES][parameters];
    w[0][CellFit.LOSS] = 1;
    w[0][CellFit.STRETCH] = lever.bottomAh() - lever.topAh();
    w[1][CellFit.SHIFT] = 1;
    w[1][CellFit.STRETCH] = lever.bottomAh();
    w[1][CellFit.DRIFT + grid.knots() - 1] = 1;
    w[2][CellFit.SHIFT] = 1;
    w[2][CellFit.LOSS] = -1;
    w[2][CellFit.STRETCH] = lever.topAh();
    w[2][CellFit.DRIFT + grid.knots() - 1] = 1;
    double[] slope = slopeWeights(grid);
    System.arraycopy(slope, 0, w[3], CellFit.DRIFT, slope.length);
    w[4][CellFit.OFFSET] = 1;
    return w;
  }

  /** Weights of the least-squares slope over the knots, per day. */
  private static double[] slopeWeights(TimeGrid grid) {
    int n = grid.knots();
    double middle = grid.spanDays() / 2;
    double squares = 0;
    double[] w = new double[n];
    for (int k = 0; k < n; k++) {
      w[k] = grid.dayOf(k) - middle;
      squares += w[k] * w[k];
    }
    for (int k = 0; k < n; k++) {
      w[k] /= squares;
    }
    return w;
  }

  /** Steps of the quantities from the state, then their formal standard deviations. */
  private static double[] solve(
      CellFit fit, Ridge[] stretches, int leftOut, CellState state, double[][] weights) {
    Ridge sums = new Ridge(fit.parameters());
    for (int k = 0; k < stretches.length; k++) {
      if (k != leftOut) {
        sums.add(stretches[k]);
      }
    }
    fit.observePriors(state, sums);
    Ridge.Solution solution = sums.solve();
    int n = weights.length;
    double[] out = new double[2 * n];
    for (int q = 0; q < n; q++) {
      out[q] = solution.combined(weights[q]);
      out[n + q] = solution.combinedSd(weights[q]);
    }
    return out;
  }
}
