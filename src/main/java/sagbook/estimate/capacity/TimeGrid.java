package sagbook.estimate.capacity;

/**
 * Knots in time between which a cell's slow drift runs straight.
 *
 * @param knots number of knots, at least two
 * @param spanDays time from the first knot to the last, days
 */
record TimeGrid(int knots, double spanDays) {
  static TimeGrid over(double days) {
    int knots = (int) Math.max(2, Math.min(40, Math.round(days) + 1));
    return new TimeGrid(knots, Math.max(days, 1e-6));
  }

  /** Knot before a time; the next one is at +1. */
  int before(double day) {
    int k = (int) Math.floor(day / spanDays * (knots - 1));
    return Math.max(0, Math.min(k, knots - 2));
  }

  /** Share of the next knot at a time, 0 to 1. */
  double share(double day) {
    return Math.max(0, Math.min(1, day / spanDays * (knots - 1) - before(day)));
  }

  double dayOf(int knot) {
    return spanDays * knot / (knots - 1);
  }

  double at(double[] values, double day) {
    int k = before(day);
    double share = share(day);
    return values[k] * (1 - share) + values[k + 1] * share;
  }
}
