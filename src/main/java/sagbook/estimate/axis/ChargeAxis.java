package sagbook.estimate.axis;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import sagbook.evidence.ThinnedRecord;

/**
 * The string's charge at every thinned row, Ah, common to all cells because one current flows
 * through them all. Zero is the end of a full charge when {@code pinned}, else the start of the
 * log.
 *
 * @param chargeAh one a thinned row; NaN where a gap in the log parts it from every anchor
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

  /**
   * Charge axis by moving the counter so that every anchor reads zero. Within a section, whose rows
   * no long gap parts, the counter runs away evenly; over a gap it may have missed any charge, so a
   * section without an anchor has no place on the axis (NaN).
   *
   * @param anchorRow rows of the anchors, rising
   * @param anchorAh what the counter reads there beyond the anchor's place on the axis, Ah
   */
  static ChargeAxis pinnedAt(Counter counter, int[] anchorRow, double[] anchorAh) {
    double rate = counter.drift(anchorRow, anchorAh);
    double[] corrected = new double[counter.ah().length];
    int next = 0;
    for (int r = 0; r < corrected.length; r++) {
      while (next < anchorRow.length && anchorRow[next] <= r) {
        next++;
      }
      int before = next > 0 && counter.together(anchorRow[next - 1], r) ? next - 1 : -1;
      int after = next < anchorRow.length && counter.together(r, anchorRow[next]) ? next : -1;
      corrected[r] = counter.ah()[r] - counter.runaway(r, before, after, anchorRow, anchorAh, rate);
    }
    return new ChargeAxis(corrected, true, anchorRow.length, rate * 3600);
  }
}
