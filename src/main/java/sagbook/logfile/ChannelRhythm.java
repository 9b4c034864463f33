package sagbook.logfile;

import java.util.Arrays;

/**
 * How a file's cell voltages come in: all in one row, one after another, or only when they change.
 */
final class ChannelRhythm {
  private static final double WHOLE_ROWS = 0.8;
  private static final double FEW_REPEATS = 0.01;
  private static final long LEAST_VALUES = 50;

  private final Slots slots;
  private final double[] lastValue;
  private final double[] lastTimeS;
  private final Thinned intervals = new Thinned();
  private long rows;
  private long values;
  private long repeats;
  private int cellsSeen;

  ChannelRhythm(Slots slots) {
    this.slots = slots;
    this.lastValue = new double[slots.cells() + 1];
    this.lastTimeS = new double[slots.cells() + 1];
    Arrays.fill(lastValue, Double.NaN);
  }

  void add(Row row) {
    rows++;
    for (int cell = 1; cell <= slots.cells(); cell++) {
      double value = row.values[slots.voltage(cell)];
      if (Double.isNaN(value)) {
        continue;
      }
      values++;
      if (Double.isNaN(lastValue[cell])) {
        cellsSeen++;
      } else {
        intervals.add(row.timeS - lastTimeS[cell]);
        repeats += value == lastValue[cell] ? 1 : 0;
      }
      lastValue[cell] = value;
      lastTimeS[cell] = row.timeS;
    }
  }

  /** Mean of the cells' latest voltages; NaN when there are none. */
  double meanVoltage() {
    double sum = 0;
    int count = 0;
    for (int cell = 1; cell < lastValue.length; cell++) {
      if (!Double.isNaN(lastValue[cell])) {
        sum += lastValue[cell];
        count++;
      }
    }
    return count == 0 ? Double.NaN : sum / count;
  }

  int cellsSeen() {
    return cellsSeen;
  }

  /** Whether a usual row holds only some of the cells. */
  boolean isPartial() {
    return cellsSeen > 1 && values < WHOLE_ROWS * rows * cellsSeen;
  }

  /** Whether a value is written only when it differs from the one before. */
  boolean isChangeOnly() {
    return isPartial() && values > LEAST_VALUES && repeats < FEW_REPEATS * values;
  }

  /** Short but not rare time between two values of one cell, s. */
  double shortIntervalS() {
    return intervals.quantile(0.1);
  }

  /** Usual time between two values of one cell, s. */
  double usualIntervalS() {
    return intervals.median();
  }
}
