package sagbook.logfile;

import java.util.Arrays;

/** One row of a log in the project's units, before the sign of the current is settled. */
final class Row {
  final double[] values;
  double timeS = Double.NaN;

  /** Physical line in its file, from 1. */
  long line;

  Row(Slots slots) {
    values = new double[slots.count()];
    clear();
  }

  void clear() {
    Arrays.fill(values, Double.NaN);
  }
}
