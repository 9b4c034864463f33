package sagbook.report.chart;

import java.util.ArrayList;
import java.util.List;
import sagbook.report.words.Numbers;

/**
 * One axis of a plot.
 *
 * @param title what it measures, with its unit
 * @param low value at the left or lower end
 * @param high value at the right or upper end
 * @param ticks marks with labels
 * @param signed whether numbers on it have a sign; without, it counts away from zero
 */
record Axis(String title, double low, double high, List<Tick> ticks, boolean signed) {

  /**
   * A mark.
   *
   * @param at value
   * @param label text beside it
   */
  record Tick(double at, String label) {}

  Axis {
    if (!(low < high)) {
      throw new IllegalArgumentException("an axis from " + low + " to " + high);
    }
    ticks = List.copyOf(ticks);
  }

  /** An axis around values, a little wider, with round marks. */
  static Axis around(String title, double low, double high, int ticks) {
    double span = high - low;
    double air = span > 0 ? span * 0.06 : Math.max(Math.abs(low) * 0.05, 1e-3);
    return between(title, low - air, high + air, ticks);
  }

  /** An axis with just these ends and round marks. */
  static Axis between(String title, double low, double high, int ticks) {
    return new Axis(title, low, high, marks(low, high, ticks, false), true);
  }

  /** As {@link #between}, for what is left until the end: labels without sign. */
  static Axis countdown(String title, double low, int ticks) {
    return new Axis(title, low, 0, marks(low, 0, ticks, true), false);
  }

  /** One mark a cell. */
  static Axis cells(String title, int cells) {
    List<Tick> ticks = new ArrayList<>();
    for (int cell = 1; cell <= cells; cell++) {
      ticks.add(new Tick(cell, Integer.toString(cell)));
    }
    return new Axis(title, 0.4, cells + 0.6, ticks, true);
  }

  /** The same with labels that count up both ways from zero. */
  Axis unsigned() {
    return new Axis(title, low, high, ticks.stream().map(Axis::withoutSign).toList(), false);
  }

  private static Tick withoutSign(Tick tick) {
    return tick.at() < 0 ? new Tick(tick.at(), tick.label().substring(1)) : tick;
  }

  /** Values as places on an axis of this length, for thinning. */
  double[] onPaper(double[] values, double length) {
    double[] places = new double[values.length];
    for (int i = 0; i < places.length; i++) {
      places[i] = (values[i] - low) / (high - low) * length;
    }
    return places;
  }

  private static List<Tick> marks(double low, double high, int most, boolean unsigned) {
    double rough = (high - low) / most;
    double power = Math.pow(10, Math.floor(Math.log10(rough)));
    double step = power * 10;
    for (double factor : new double[] {1, 2, 5}) {
      if (factor * power >= rough * (1 - 1e-9)) {
        step = factor * power;
        break;
      }
    }
    int decimals = (int) Math.max(0, -Math.floor(Math.log10(step) + 1e-9));
    List<Tick> ticks = new ArrayList<>();
    double slack = step * 1e-6;
    for (long i = (long) Math.ceil((low - slack) / step); i * step <= high + slack; i++) {
      double at = i * step;
      ticks.add(new Tick(at, Numbers.text(unsigned ? Math.abs(at) : at, decimals)));
    }
    return ticks;
  }
}
