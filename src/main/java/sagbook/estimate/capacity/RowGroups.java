package sagbook.estimate.capacity;

import java.util.Arrays;
import sagbook.evidence.ThinnedRecord;

/**
 * Neighbouring rows of a record that say the same, taken together: hardly any charge flows from the
 * first to the last of them, so that all that a cell's voltage is made of runs straight between
 * them and their mean tells what they tell.
 */
final class RowGroups {
  /** Rows in a group at most. Common practice, no source. */
  private static final int MOST_ROWS = 10;

  /** First row of each group, and one past the last row of all. */
  private final int[] from;

  private RowGroups(int[] from) {
    this.from = from;
  }

  /**
   * Groups of a record's rows; none reaches over a gap, or over a moment from which on a cell was
   * read or was not.
   *
   * @param chargeAh charge axis, Ah
   * @param mostAh charge between the lowest and the highest row of a group, at most
   */
  static RowGroups of(ThinnedRecord record, double[] chargeAh, double mostAh) {
    int[] from = new int[chargeAh.length + 1];
    int groups = 0;
    double low = 0;
    double high = 0;
    for (int r = 0; r < chargeAh.length; r++) {
      int first = groups == 0 ? r : from[groups - 1];
      boolean together =
          groups > 0
              && r - first < MOST_ROWS
              && Math.max(high, chargeAh[r]) - Math.min(low, chargeAh[r]) <= mostAh
              && record.segment()[r] == record.segment()[first]
              && sameCellsRead(record.voltageV(), r - 1, r);
      if (!together) {
        from[groups++] = r;
      }
      low = together ? Math.min(low, chargeAh[r]) : chargeAh[r];
      high = together ? Math.max(high, chargeAh[r]) : chargeAh[r];
    }
    from[groups] = chargeAh.length;
    return new RowGroups(Arrays.copyOf(from, groups + 1));
  }

  private static boolean sameCellsRead(float[][] voltageV, int one, int other) {
    for (float[] cell : voltageV) {
      if (Float.isNaN(cell[one]) != Float.isNaN(cell[other])) {
        return false;
      }
    }
    return true;
  }

  private int count() {
    return from.length - 1;
  }

  /** How many rows each group has. */
  int[] rows() {
    int[] rows = new int[count()];
    Arrays.setAll(rows, g -> from[g + 1] - from[g]);
    return rows;
  }

  /** Each group's mean. */
  double[] means(double[] ofRows) {
    double[] means = new double[count()];
    for (int g = 0; g < means.length; g++) {
      double sum = 0;
      for (int r = from[g]; r < from[g + 1]; r++) {
        sum += ofRows[r];
      }
      means[g] = sum / (from[g + 1] - from[g]);
    }
    return means;
  }

  /** Each group's mean of every series. */
  float[][] means(float[][] ofRows) {
    float[][] means = new float[ofRows.length][count()];
    for (int c = 0; c < ofRows.length; c++) {
      for (int g = 0; g < count(); g++) {
        double sum = 0;
        for (int r = from[g]; r < from[g + 1]; r++) {
          sum += ofRows[c][r];
        }
        means[c][g] = (float) (sum / (from[g + 1] - from[g]));
      }
    }
    return means;
  }
}
