package sagbook.numeric;

/**
 * A function given by its values on an even grid: linear between the points, carried on straight
 * beyond the ends.
 *
 * @param start place of the first value
 * @param step distance between values, above 0
 * @param values at least two
 */
public record EvenTable(double start, double step, double[] values) {
  public EvenTable {
    if (!(step > 0) || values.length < 2) {
      throw new IllegalArgumentException("a table needs a step above 0 and two values");
    }
  }

  public double end() {
    return start + step * (values.length - 1);
  }

  /** Value at a place. */
  public double at(double place) {
    int i = cell(place);
    double t = (place - start) / step - i;
    return values[i] + t * (values[i + 1] - values[i]);
  }

  /** Slope around a place, over one step to either side. */
  public double slopeAt(double place) {
    int i = cell(place);
    if (i == 0 || i == values.length - 2) {
      return (at(place + step) - at(place - step)) / (2 * step);
    }
    double t = (place - start) / step - i;
    double before = values[i + 1] - values[i - 1];
    double behind = values[i + 2] - values[i];
    return (before + t * (behind - before)) / (2 * step);
  }

  private int cell(double place) {
    return Math.max(0, Math.min((int) ((place - start) / step), values.length - 2));
  }
}
