package sagbook.estimate.axis;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import sagbook.evidence.ThinnedRecord;

/**
 * The string's charge at every thinned row, Ah, common to all cells because one current flows
 * through them all. Zero is the end of a full charge when {@code pinned}, else the start of the
 * log.
 *
 * @param chargeAh one a thinned row
 * @param pinned whether full charges fix the zero
 * @param fullCharges number of full charges that were used
 * @param offsetA the current sensor's offset that was taken out, A
 */
public record ChargeAxis(double[] chargeAh, boolean pinned, int fullCharges, double offsetA) {

  /**
   * Charge 0 to 1 of the string at a time (s since 1970), NaN outside the record or when not
   * pinned.
   *
   * @param fullAh place of the full string on the axis, Ah
   * @param capacityAh capacity that makes up the whole, Ah
   */
  public DoubleUnaryOperator share(ThinnedRecord record, double fullAh, double capacityAh) {
    return timeS -> {
      if (!pinned) {
        return Double.NaN;
      }
      int at = Arrays.binarySearch(record.timeS(), timeS);
      int row = at >= 0 ? at : Math.min(record.rows() - 1, -at - 1);
      return row < 0 ? Double.NaN : 1 + (chargeAh[row] - fullAh) / capacityAh;
    };
  }

  /** Charge axis of a record by moving the counter so that every anchor reads zero. */
  static ChargeAxis pinnedAt(ThinnedRecord record, int[] anchorRow, double[] anchorAh) {
    int rows = record.rows();
    double[] corrected = new double[rows];
    int anchors = anchorRow.length;
    double rate = drift(record, anchorRow, anchorAh);
    int next = 0;
    for (int r = 0; r < rows; r++) {
      while (next < anchors && anchorRow[next] <= r) {
        next++;
      }
      double shift;
      double t = record.timeS()[r];
      if (next == 0) {
        shift = anchorAh[0] - rate * (record.timeS()[anchorRow[0]] - t);
      } else if (next == anchors) {
        int last = anchors - 1;
        shift = anchorAh[last] + rate * (t - record.timeS()[anchorRow[last]]);
      } else {
        double from = record.timeS()[anchorRow[next - 1]];
        double to = record.timeS()[anchorRow[next]];
        double share = (t - from) / (to - from);
        shift = anchorAh[next - 1] + share * (anchorAh[next] - anchorAh[next - 1]);
      }
      corrected[r] = record.chargeAh()[r] - shift;
    }
    return new ChargeAxis(corrected, true, anchors, rate * 3600);
  }

  /** Mean rate at which the counter runs away between the first and the last anchor, Ah/s. */
  private static double drift(ThinnedRecord record, int[] row, double[] ah) {
    int last = row.length - 1;
    double seconds = record.timeS()[row[last]] - record.timeS()[row[0]];
    return seconds > 43_200 ? (ah[last] - ah[0]) / seconds : 0;
  }
}
