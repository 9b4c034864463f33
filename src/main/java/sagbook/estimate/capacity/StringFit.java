package sagbook.estimate.capacity;

import java.util.Arrays;
import sagbook.numeric.EvenTable;
import sagbook.numeric.Ridge;
import sagbook.numeric.Robust;

/**
 * Fits all cells of a string and its curve in turns: cells against the curve, then the curve from
 * the cells, until both stand.
 */
final class StringFit {
  private static final int ROUNDS = 6;

  private final StringView view;
  private final TimeGrid grid;
  private final CurveLearner learner;
  private final CellFit fit;
  private final CellFit.Priors priors;
  private final double nominalAh;
  private final double splitAh;
  private CellCurve curve;
  private final CellState[] states;
  private final float[] common;

  StringFit(
      StringView view,
      TimeGrid grid,
      CurveLearner learner,
      CellFit.Priors priors,
      CellCurve curve,
      double splitAh,
      double nominalAh) {
    this.view = view;
    this.grid = grid;
    this.learner = learner;
    this.priors = priors;
    this.fit = new CellFit(view, grid, learner, priors);
    this.curve = curve;
    this.splitAh = splitAh;
    this.nominalAh = nominalAh;
    this.states = new CellState[view.cells()];
    this.common = new float[view.rows()];
  }

  CellCurve curve() {
    return curve;
  }

  CellState[] states() {
    return states;
  }

  void run() {
    new StartSearch(view, curve, nominalAh, grid.knots()).fill(states);
    for (int round = 0; round < ROUNDS; round++) {
      updateCommon();
      for (int pass = 0; pass < 2; pass++) {
        for (int c = 0; c < states.length; c++) {
          Ridge sums = new Ridge(fit.parameters());
          fit.observe(curve, states[c], c, common, 0, view.rows(), sums);
          fit.observePriors(states[c], priors.lossAh(), sums);
          states[c] = fit.stepped(states[c], sums.solve(), 0.02 * nominalAh);
        }
      }
      recentre();
      if (round < ROUNDS - 1) {
        curve = learner.pooled(curve, states, splitAh);
      }
    }
    updateCommon();
  }

  /** The string's median departure from the curve at each row. */
  private void updateCommon() {
    double[] one = new double[states.length];
    for (int r = 0; r < view.rows(); r++) {
      int n = 0;
      for (int c = 0; c < states.length; c++) {
        if (fit.inSight(curve, states[c], c, r)) {
          one[n++] = view.voltage(c, r) - fit.predicted(curve, states[c], c, r);
        }
      }
      Arrays.sort(one, 0, n);
      common[r] = n < 2 ? Float.NaN : (float) Robust.quantileOfSorted(one, n, 0.5);
    }
  }

  /** Keeps the reference cell in the middle of the string. */
  private void recentre() {
    double shift = middle(CellState::shiftAh);
    double loss = middle(CellState::lossAh);
    double offset = middle(CellState::offsetV);
    double ohm = middle(CellState::ohm);
    double slow = middle(CellState::slowOhm);
    double stretch = middle(CellState::stretch);
    int n = grid.knots();
    double[] drift = new double[n];
    for (int k = 0; k < n; k++) {
      int knot = k;
      drift[k] = middle(s -> s.driftAh()[knot]);
    }
    for (int c = 0; c < states.length; c++) {
      CellState s = states[c];
      double[] own = s.driftAh().clone();
      for (int k = 0; k < n; k++) {
        own[k] -= drift[k];
      }
      states[c] =
          new CellState(
              s.shiftAh() - shift,
              s.lossAh() - loss,
              s.stretch() - stretch,
              s.offsetV() - offset,
              s.ohm() - ohm,
              s.slowOhm() - slow,
              own);
    }
  }

  private double middle(java.util.function.ToDoubleFunction<CellState> of) {
    return Robust.median(Arrays.stream(states).mapToDouble(of).toArray());
  }

  /**
   * Sums of one cell's observations in equal stretches of the log, about its present state, for the
   * uncertainty.
   */
  Ridge[] stretches(int c, int count) {
    Ridge[] sums = new Ridge[count];
    for (int k = 0; k < count; k++) {
      sums[k] = new Ridge(fit.parameters());
      int from = (int) ((long) view.rows() * k / count);
      int to = (int) ((long) view.rows() * (k + 1) / count);
      fit.observe(curve, states[c], c, common, from, to, sums[k]);
    }
    return sums;
  }

  CellFit fit() {
    return fit;
  }

  /**
   * Place between the last step of the curve and the knee at the end of charge, where the curve is
   * flattest, Ah.
   *
   * @param topAh where the knee is steep, Ah
   */
  static double split(EvenTable curve, double topAh, double nominalAh) {
    double best = topAh - 0.06 * nominalAh;
    double least = Double.POSITIVE_INFINITY;
    double width = 0.015 * nominalAh;
    for (double q = topAh - 0.14 * nominalAh; q <= topAh - 0.03 * nominalAh; q += curve.step()) {
      double slope = (curve.at(q + width) - curve.at(q - width)) / (2 * width);
      if (slope < least) {
        least = slope;
        best = q;
      }
    }
    return best;
  }
}
