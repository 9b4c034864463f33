package sagbook.evidence;

import sagbook.model.SampleBlock;

/** The last rows before the present one; row 0 is the latest, 1 the one before, and so on. */
final class StepHistory {
  private final int capacity;
  private final double[] drive;
  private final double[][] state;
  private final double[][] voltage;
  private long taken;

  StepHistory(int capacity, int cells, int stateSize) {
    this.capacity = capacity;
    drive = new double[capacity];
    state = new double[capacity][stateSize];
    voltage = new double[capacity][cells];
  }

  void clear() {
    taken = 0;
  }

  void push(double now, double[] stateNow, SampleBlock block, int r) {
    int at = (int) (taken % capacity);
    drive[at] = now;
    System.arraycopy(stateNow, 0, state[at], 0, stateNow.length);
    for (int c = 0; c < voltage[at].length; c++) {
      voltage[at][c] = block.voltageV()[c][r];
    }
    taken++;
  }

  int rows() {
    return (int) Math.min(taken, capacity);
  }

  private int at(int back) {
    return (int) ((taken - 1 - back) % capacity);
  }

  /** Change of the drive into a row. */
  double step(int back) {
    return drive[at(back)] - drive[at(back + 1)];
  }

  /** Into how many of these rows the drive changed by {@code quiet} or more. */
  int changes(int latest, int earliest, double quiet) {
    int changes = 0;
    for (int back = latest; back <= earliest; back++) {
      if (!(Math.abs(step(back)) < quiet)) {
        changes++;
      }
    }
    return changes;
  }

  /** Highest less lowest drive from one row to another. */
  double rangeBetween(int from, int to) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (int back = to; back <= from; back++) {
      double d = drive[at(back)];
      low = Math.min(low, d);
      high = Math.max(high, d);
    }
    return high - low;
  }

  void stateChange(int from, int to, double[] into, int size) {
    double[] a = state[at(from)];
    double[] b = state[at(to)];
    for (int i = 0; i < size; i++) {
      into[i] = b[i] - a[i];
    }
  }

  double voltageChange(int cell, int from, int to) {
    return voltage[at(to)][cell] - voltage[at(from)][cell];
  }
}
