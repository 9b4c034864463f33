package sagbook.estimate.capacity;

import java.util.Arrays;
import sagbook.numeric.Robust;

/**
 * What the cells of a string have in common at each row beyond their curve: a voltage, which every
 * cell shows alike (polarisation, the fine print of hysteresis), and an error of the charge axis,
 * which each shows by the slope of the curve where it stands. While most cells are on the steep
 * knee near full, their common departure is nearly all an error of the axis, and a cell that stands
 * on the flat part has none of it.
 *
 * <p>The median departure of the cells, at their median slope, is shared out between the two by how
 * large either is held likely.
 */
final class CommonPart {
  /** Voltage that the cells of a string show alike beyond the curve, one standard deviation, V. */
  private static final double VOLT_SD = 0.003;

  /** An axis that is further out than this many standard deviations is left where it is. */
  private static final double MOST_SDS = 3;

  private final double axisSdAh;
  private final float[] whole;
  private final float[] volt;
  private final float[] chargeAh;
  private final double[] departures;
  private final double[] slopes;
  private int cells;

  /**
   * Nothing in common yet.
   *
   * @param axisSdAh error of the charge axis, one standard deviation, Ah
   */
  CommonPart(int rows, int cells, double axisSdAh) {
    this.axisSdAh = axisSdAh;
    this.whole = new float[rows];
    this.volt = new float[rows];
    this.chargeAh = new float[rows];
    this.departures = new double[cells];
    this.slopes = new double[cells];
  }

  /** Forgets the cells gathered so far, for the next row. */
  void clear() {
    cells = 0;
  }

  /**
   * Gathers one cell at the present row.
   *
   * @param departure its voltage less what its curve says at the axis as known so far, V
   * @param slope of its curve there, V/Ah
   */
  void gather(double departure, double slope) {
    departures[cells] = departure;
    slopes[cells++] = slope;
  }

  /** Settles a row by the cells gathered; with fewer than two, nothing is known of it. */
  void settle(int row) {
    if (cells < 2) {
      volt[row] = Float.NaN;
      return;
    }
    double slope = median(slopes);
    double departure = median(departures) + slope * chargeAh[row];
    double perVolt = axisSdAh * axisSdAh / (VOLT_SD * VOLT_SD);
    double ofVolt = departure / (1 + slope * slope * perVolt);
    double mostAh = MOST_SDS * axisSdAh;
    double errorAh = Math.max(-mostAh, Math.min(mostAh, ofVolt * slope * perVolt));
    whole[row] = (float) departure;
    volt[row] = (float) (departure - slope * errorAh);
    chargeAh[row] = (float) errorAh;
  }

  private double median(double[] values) {
    Arrays.sort(values, 0, cells);
    return Robust.quantileOfSorted(values, cells, 0.5);
  }

  boolean known(int row) {
    return !Float.isNaN(volt[row]);
  }

  /** Both parts as most cells show them, V. */
  double ofMost(int row) {
    return whole[row];
  }

  /** What every cell shows alike, V. */
  double volt(int row) {
    return volt[row];
  }

  /** What the charge axis reads too little at a row, Ah. */
  double axisErrorAh(int row) {
    return chargeAh[row];
  }

  /** Both parts as a cell shows them that stands where the curve is so steep, V. */
  double at(int row, double slope) {
    return volt[row] + slope * chargeAh[row];
  }
}
