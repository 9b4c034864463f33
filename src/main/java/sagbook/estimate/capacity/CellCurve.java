package sagbook.estimate.capacity;

import sagbook.numeric.EvenTable;

/**
 * The string's rest voltage along the charge axis, split in two parts that can move apart: {@code
 * top}, which belongs to the positive electrode (the knee at the end of charge), and {@code
 * bottom}, which belongs to the graphite (knee at the end of discharge and steps in between). A
 * cell that lost cyclable lithium has its top moved against its bottom; one that is out of balance
 * has both moved alike.
 *
 * @param bottom V along the axis of the reference cell
 * @param top V along the axis of the reference cell
 * @param visitedFromAh lowest charge at which the reference curve was learned
 * @param sharedFromAh lowest charge at which several cells taught it: below that a cell would be
 *     held against its own voltage, which agrees with any place it is given
 * @param visitedToAh highest charge at which it was learned
 * @param topVisited whether the knee at the end of charge was learned
 * @param hysteresisV half the gap between charge and discharge, V
 */
record CellCurve(
    EvenTable bottom,
    EvenTable top,
    double visitedFromAh,
    double sharedFromAh,
    double visitedToAh,
    boolean topVisited,
    double hysteresisV) {
  private static final double STEEPNESS_STEP_V = 0.005;

  /** Both parts of the reference cell together, V along its axis. */
  EvenTable whole() {
    double[] v = new double[bottom.values().length];
    for (int i = 0; i < v.length; i++) {
      double q = bottom.start() + i * bottom.step();
      v[i] = at(q, q);
    }
    return new EvenTable(bottom.start(), bottom.step(), v);
  }

  double at(double topAh, double bottomAh) {
    return top.at(topAh) + bottom.at(bottomAh);
  }

  /**
   * How steep the curve is, V/Ah, where it takes a voltage: what an error of the charge axis does
   * to a cell that reads it, whatever is held of that cell.
   */
  EvenTable steepness() {
    int n = (int) Math.ceil((visitedToAh - visitedFromAh) / bottom.step());
    double lowV = at(visitedFromAh, visitedFromAh);
    double highV = Math.max(lowV, at(visitedToAh, visitedToAh)) + 2 * STEEPNESS_STEP_V;
    double[] steepest = new double[2 + (int) Math.ceil((highV - lowV) / STEEPNESS_STEP_V)];
    for (int k = 0; k <= n; k++) {
      double q = visitedFromAh + k * bottom.step();
      int i = (int) Math.round((at(q, q) - lowV) / STEEPNESS_STEP_V);
      if (i >= 0 && i < steepest.length) {
        steepest[i] = Math.max(steepest[i], top.slopeAt(q) + bottom.slopeAt(q));
      }
    }
    for (int i = 1; i < steepest.length; i++) {
      steepest[i] = steepest[i] > 0 ? steepest[i] : steepest[i - 1];
    }
    return new EvenTable(lowV, STEEPNESS_STEP_V, steepest);
  }
}
