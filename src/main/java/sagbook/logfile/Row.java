package sagbook.logfile;

import java.util.Arrays;

/** One row of a log in the project's units, before the sign of the current is settled. */
final class Row {
  final double[] values;
  double timeS = Double.NaN;

  /** Physical line in its file, from 1. */
  long line;

  /** Physical line on which it ends. */
  long lastLine;

  Row(Slots slots) {
    values = new double[slots.count()];
    clear();
  }

  void clear() {
    Arrays.fill(values, Double.NaN);
  }

  void copyFrom(Row other) {
    timeS = other.timeS;
    line = other.line;
    lastLine = other.lastLine;
    System.arraycopy(other.values, 0, values, 0, values.length);
  }

  /** Takes what this row lacks from another; true when there was something. */
  boolean fillFrom(Row other) {
    boolean added = false;
    for (int i = 0; i < values.length; i++) {
      if (Double.isNaN(values[i]) && !Double.isNaN(other.values[i])) {
        values[i] = other.values[i];
        added = true;
      }
    }
    return added;
  }
}
