package sagbook.estimate.capacity;

import java.util.Arrays;

/**
 * Knots in time between which a cell's slow drift runs straight, and where the rows of the log lie
 * between them.
 *
 * @param knots number of knots, at least two
 * @param spanDays time from the first knot to the last, days
 * @param before knot before each row; the next one is at +1
 * @param share share of the next knot at each row, 0 to 1
 */
record TimeGrid(int knots, double spanDays, int[] before, double[] share) {
  /** Knots about a day apart, 40 at most, for rows at these days, rising from 0. */
  static TimeGrid over(double[] day) {
    double days = day.length == 0 ? 0 : day[day.length - 1];
    int knots = (int) Math.max(2, Math.min(40, Math.round(days) + 1));
    double spanDays = Math.max(days, 1e-6);
    double[] place = Arrays.stream(day).map(d -> d / spanDays * (knots - 1)).toArray();
    int[] before = new int[place.length];
    double[] share = new double[place.length];
    for (int r = 0; r < place.length; r++) {
      before[r] = Math.max(0, Math.min((int) place[r], knots - 2));
      share[r] = Math.max(0, Math.min(1, place[r] - before[r]));
    }
    return new TimeGrid(knots, spanDays, before, share);
  }

  double dayOf(int knot) {
    return spanDays * knot / (knots - 1);
  }

  /** Value at a row of what is known at the knots. */
  double at(double[] values, int row) {
    int k = before[row];
    return values[k] * (1 - share[row]) + values[k + 1] * share[row];
  }
}
