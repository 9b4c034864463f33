package sagbook.estimate.capacity;

import java.util.Optional;
import sagbook.model.Limits;

/**
 * How the electrodes of a cell lie otherwise than those of the string's usual cell (Dubarry,
 * Truchot and Liaw, J. Power Sources 219 (2012) 204); charges as shares of nominal capacity.
 *
 * @param shift how much later its graphite begins
 * @param loss how much less charge lies between its graphite's begin and its positive's end, were
 *     both as large as usual
 * @param positive size of its positive electrode over the usual, less one, about where the string
 *     is full
 * @param negative size of its graphite over the usual, less one, about where that begins
 * @param offsetV constant error of its voltage reading, V
 */
record Slippage(double shift, double loss, double positive, double negative, double offsetV) {
  static final Slippage NONE = new Slippage(0, 0, 0, 0, 0);

  /** How finely the ends are looked for. */
  private static final double STEP = 0.001;

  /** How far from the middle they are looked for. */
  private static final double FURTHEST = 1.6;

  /** Where full and empty lie. */
  record Ends(double full, double empty) {}

  /** Place of the usual cell's positive electrode when the string stands somewhere. */
  double top(double place, double full) {
    return full + (place - shift + loss - full) / (1 + positive);
  }

  /** The same of its graphite. */
  double bottom(double place, LaidGraphite graphite) {
    return graphite.begin() + (place - shift - graphite.begin()) / (1 + negative);
  }

  private double rest(double place, PositiveCurve electrode, double full) {
    return electrode.volt(top(place, full))
        - electrode.graphite().volt(bottom(place, electrode.graphite()));
  }

  /**
   * Where a cell rests at the voltages of full and empty; nothing where it does not.
   *
   * @param electrode the usual cell's electrodes
   * @param full about where that is full
   */
  Optional<Ends> ends(PositiveCurve electrode, double full, Limits limits) {
    double middle = (electrode.from() + electrode.to()) / 2;
    double top = middle;
    while (top < middle + FURTHEST && rest(top, electrode, full) < limits.cellFullVoltage()) {
      top += STEP;
    }
    double bottom = top;
    while (bottom > top - FURTHEST && rest(bottom, electrode, full) > limits.cellEmptyVoltage()) {
      bottom -= STEP;
    }
    if (top >= middle + FURTHEST || bottom <= top - FURTHEST) {
      return Optional.empty();
    }
    return Optional.of(
        new Ends(
            passed(top - STEP, limits.cellFullVoltage(), electrode, full),
            passed(bottom, limits.cellEmptyVoltage(), electrode, full)));
  }

  /** Where a voltage is passed within a step above a place. */
  private double passed(double place, double volt, PositiveCurve electrode, double full) {
    double below = rest(place, electrode, full);
    double above = rest(place + STEP, electrode, full);
    return place + STEP * (volt - below) / (above - below);
  }
}
