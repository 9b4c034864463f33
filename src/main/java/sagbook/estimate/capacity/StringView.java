package sagbook.estimate.capacity;

import java.util.Arrays;
import sagbook.evidence.ThinnedRecord;

/**
 * The thinned record as the charge estimators need it: charge axis, currents, hysteresis state and
 * counted bleeding at every row.
 *
 * @param voltageV mean voltage, [cell][row]; NaN when no sample was valid
 * @param rowsOf how many rows of the thinned record each row is the mean of
 * @param chargeAh charge axis, Ah
 * @param day days since the first row
 * @param currentA current, A
 * @param slowCurrentA current through a low-pass of ten minutes, A
 * @param hysteresis state of hysteresis, -1 (long discharged) to 1 (long charged)
 * @param bledAh charge bled so far from each cell beyond the string's median, [cell][row], Ah
 * @param bleedKnown whether bleeding was logged
 * @param nominalAh nominal capacity, Ah
 */
record StringView(
    float[][] voltageV,
    int[] rowsOf,
    double[] chargeAh,
    double[] day,
    double[] currentA,
    double[] slowCurrentA,
    double[] hysteresis,
    float[][] bledAh,
    boolean bleedKnown,
    double nominalAh) {
  private static final double SLOW_S = 600;

  /**
   * Share of capacity over which hysteresis turns round. Common practice, no source; published
   * curves reverse within a few per cent of charge.
   */
  private static final double HYSTERESIS_SHARE = 0.03;

  static StringView of(
      ThinnedRecord record, double[] chargeAh, double nominalAh, double bleedResistorOhm) {
    int rows = record.rows();
    double[] day = new double[rows];
    double[] current = new double[rows];
    double[] slow = new double[rows];
    double[] hysteresis = new double[rows];
    for (int r = 0; r < rows; r++) {
      day[r] = (record.timeS()[r] - record.timeS()[0]) / 86_400;
      current[r] = Float.isNaN(record.currentA()[r]) ? 0 : record.currentA()[r];
      boolean follows = r > 0 && record.segment()[r] == record.segment()[r - 1];
      double dt = follows ? record.timeS()[r] - record.timeS()[r - 1] : record.seconds()[r];
      double keep = Math.exp(-dt / SLOW_S);
      slow[r] = r == 0 ? current[r] : slow[r - 1] * keep + current[r] * (1 - keep);
      double moved = Math.abs(current[r]) * dt / 3600 / (HYSTERESIS_SHARE * nominalAh);
      double before = r == 0 ? Math.signum(current[r]) : hysteresis[r - 1];
      hysteresis[r] = before + (Math.signum(current[r]) - before) * (1 - Math.exp(-moved));
    }
    int[] one = new int[rows];
    Arrays.fill(one, 1);
    return new StringView(
        record.voltageV(),
        one,
        chargeAh,
        day,
        current,
        slow,
        hysteresis,
        bled(record, bleedResistorOhm),
        record.hasBleed(),
        nominalAh);
  }

  /** The same with one row a group of rows. */
  StringView of(RowGroups groups) {
    return new StringView(
        groups.means(voltageV),
        groups.rows(),
        groups.means(chargeAh),
        groups.means(day),
        groups.means(currentA),
        groups.means(slowCurrentA),
        groups.means(hysteresis),
        groups.means(bledAh),
        bleedKnown,
        nominalAh);
  }

  private static float[][] bled(ThinnedRecord record, double resistorOhm) {
    int cells = record.cells();
    float[][] bled = new float[cells][record.rows()];
    if (!record.hasBleed()) {
      return bled;
    }
    double[] sum = new double[cells];
    double[] lastV = new double[cells];
    double[] sorted = new double[cells];
    for (int r = 0; r < record.rows(); r++) {
      for (int c = 0; c < cells; c++) {
        double level = record.bleedFraction()[c][r];
        double v = record.voltageV()[c][r];
        lastV[c] = v > 0 ? v : lastV[c];
        if (level > 0) {
          sum[c] += level * lastV[c] / resistorOhm * record.seconds()[r] / 3600;
        }
        sorted[c] = sum[c];
      }
      Arrays.sort(sorted);
      double middle = (sorted[(cells - 1) / 2] + sorted[cells / 2]) / 2;
      for (int c = 0; c < cells; c++) {
        bled[c][r] = (float) (sum[c] - middle);
      }
    }
    return bled;
  }

  /**
   * Mean size of the current while it flows (above a fiftieth of the highest), over capacity, 1/h.
   */
  double usualRate() {
    double most = 0;
    for (double a : currentA) {
      most = Math.max(most, Math.abs(a));
    }
    double sum = 0;
    int n = 0;
    for (double a : currentA) {
      if (Math.abs(a) > most / 50) {
        sum += Math.abs(a);
        n++;
      }
    }
    return n == 0 ? 0 : sum / n / nominalAh;
  }

  int rows() {
    return day.length;
  }

  int cells() {
    return voltageV.length;
  }

  double voltage(int cell, int row) {
    return voltageV[cell][row];
  }

  double days() {
    return day.length == 0 ? 0 : day[day.length - 1];
  }
}
