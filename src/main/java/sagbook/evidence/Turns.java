package sagbook.evidence;

import java.util.ArrayList;
import java.util.List;

/**
 * Finds where charging turns into discharging and back, by following the charge counter (or,
 * without one, the string's mean voltage) until it comes back by more than a given share of its
 * whole range.
 */
final class Turns {
  /** A reversal counts from this share of the range on. Common practice, no source. */
  private static final double SHARE_OF_RANGE = 0.12;

  private final ThinnedRecord record;
  private final double[] meanVoltage;

  private Turns(ThinnedRecord record) {
    this.record = record;
    this.meanVoltage = new double[record.rows()];
    for (int r = 0; r < record.rows(); r++) {
      double sum = 0;
      int n = 0;
      for (float[] cell : record.voltageV()) {
        if (!Float.isNaN(cell[r])) {
          sum += cell[r];
          n++;
        }
      }
      meanVoltage[r] = n == 0 ? Double.NaN : sum / n;
    }
  }

  static List<Turn> of(ThinnedRecord record) {
    Turns turns = new Turns(record);
    boolean counted = record.rows() > 0 && !Double.isNaN(record.chargeAh()[0]);
    return turns.find(counted ? record.chargeAh() : turns.meanVoltage);
  }

  private List<Turn> find(double[] path) {
    double least = Double.POSITIVE_INFINITY;
    double most = Double.NEGATIVE_INFINITY;
    for (double p : path) {
      if (!Double.isNaN(p)) {
        least = Math.min(least, p);
        most = Math.max(most, p);
      }
    }
    List<Turn> turns = new ArrayList<>();
    double reversal = SHARE_OF_RANGE * (most - least);
    if (!(reversal > 0)) {
      return turns;
    }
    int high = -1;
    int low = -1;
    int direction = 0;
    int from = 0;
    for (int r = 0; r < path.length; r++) {
      if (Double.isNaN(path[r])) {
        continue;
      }
      high = high < 0 || path[r] > path[high] ? r : high;
      low = low < 0 || path[r] < path[low] ? r : low;
      if (direction >= 0 && path[r] < path[high] - reversal) {
        if (direction > 0 || high > from) {
          turns.add(turn(true, from, high));
        }
        from = high;
        direction = -1;
        low = r;
      } else if (direction <= 0 && path[r] > path[low] + reversal) {
        if (direction < 0 || low > from) {
          turns.add(turn(false, from, low));
        }
        from = low;
        direction = 1;
        high = r;
      }
    }
    if (direction > 0) {
      turns.add(turn(true, from, high));
    } else if (direction < 0) {
      turns.add(turn(false, from, low));
    }
    return turns;
  }

  private Turn turn(boolean charge, int from, int to) {
    int end = to;
    for (int r = to; r >= from && r > to - 240; r--) {
      double better =
          charge ? meanVoltage[r] - meanVoltage[end] : meanVoltage[end] - meanVoltage[r];
      if (better > 0) {
        end = r;
      }
    }
    int extreme = 0;
    double value = charge ? Double.NEGATIVE_INFINITY : Double.POSITIVE_INFINITY;
    for (int c = 0; c < record.cells(); c++) {
      double v = record.voltageV()[c][end];
      if (charge ? v > value : v < value) {
        value = v;
        extreme = c;
      }
    }
    return new Turn(charge, from, end, meanVoltage[end], value, extreme + 1);
  }
}
