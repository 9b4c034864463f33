package sagbook.numeric;

import java.util.Arrays;
import java.util.BitSet;
import java.util.Optional;

/**
 * Least squares of which some parameters can't be negative: the active set method of Lawson and
 * Hanson (Solving Least Squares Problems, 1974, chapter 23) on the normal equations (Bro and de
 * Jong, J. Chemometrics 11 (1997) 393). One parameter after another is let go from zero where that
 * helps; whatever would turn negative on the way is put back to zero.
 */
public final class NonNegative {
  /** A gain this small beside the greatest that one parameter alone brings is rounding. */
  private static final double ROUNDING = 1e-9;

  private final Ridge fit;
  private final BitSet free;

  /** Parameters that are not held at zero. */
  private final BitSet loose;

  private final double[] value;
  private final double least;

  private NonNegative(Ridge fit, BitSet free) {
    this.fit = fit;
    this.free = free;
    this.loose = (BitSet) free.clone();
    this.value = new double[fit.parameters()];
    this.least = ROUNDING * Arrays.stream(gains()).map(Math::abs).max().orElse(0);
  }

  /**
   * The parameters; empty when the observations don't fix those that are free.
   *
   * @param free parameters of either sign
   */
  public static Optional<double[]> solve(Ridge fit, BitSet free) {
    NonNegative search = new NonNegative(fit, free);
    return search.move() ? Optional.of(search.value) : Optional.empty();
  }

  private boolean move() {
    if (!settle()) {
      return false;
    }
    // Each parameter is seldom let go more than once; the bound only guards against rounding.
    for (int step = 0; step < 4 * value.length; step++) {
      int steepest = steepest();
      if (steepest < 0) {
        return true;
      }
      loose.set(steepest);
      if (!settle()) {
        loose.clear(steepest);
        return true;
      }
    }
    return true;
  }

  /** The held parameter that would help most, or -1. */
  private int steepest() {
    double[] gain = gains();
    int best = -1;
    for (int i = 0; i < gain.length; i++) {
      if (!loose.get(i) && gain[i] > (best < 0 ? least : gain[best])) {
        best = i;
      }
    }
    return best;
  }

  /** What each parameter would explain of what is left, were it alone. */
  private double[] gains() {
    double[] gain = fit.descent(value);
    for (int i = 0; i < gain.length; i++) {
      double size = Math.sqrt(fit.normalAt(i));
      gain[i] = size > 0 ? gain[i] / size : 0;
    }
    return gain;
  }

  /** Goes to the best place of the loose parameters, holding those that reach zero on the way. */
  private boolean settle() {
    while (!loose.isEmpty()) {
      int[] places = loose.stream().toArray();
      Ridge.Solution best = fit.part(places).solve();
      if (!best.determined()) {
        return false;
      }
      double way = 1;
      int first = -1;
      for (int k = 0; k < places.length; k++) {
        double from = value[places[k]];
        double to = best.value()[k];
        if (!free.get(places[k]) && to < 0 && from / (from - to) < way) {
          way = from / (from - to);
          first = places[k];
        }
      }
      for (int k = 0; k < places.length; k++) {
        value[places[k]] += way * (best.value()[k] - value[places[k]]);
      }
      if (first < 0) {
        return true;
      }
      value[first] = 0;
      loose.clear(first);
    }
    return true;
  }
}
