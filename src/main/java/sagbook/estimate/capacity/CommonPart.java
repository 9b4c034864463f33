package sagbook.estimate.capacity;

import java.util.Arrays;
import sagbook.numeric.Robust;
import sagbook.numeric.WanderSmoother;

/**
 * What the cells of a string have in common at each row beyond their curve: a voltage, which every
 * cell shows alike (polarisation, the fine print of hysteresis), and an error of the charge axis,
 * which each shows by the slope of the curve where it stands.
 *
 * <p>The two are told apart by time. A counter's error wanders over days, so within one charge it
 * stays what it is while the string climbs the whole knee; a voltage in common comes and goes with
 * the load. Were each row free to have an error of its own, a knee of any steepness would fit, and
 * the differences between cells, which are read off that steepness, would mean nothing.
 */
final class CommonPart {
  /**
   * Voltage that the cells of a string show alike beyond the curve, one standard deviation, V; one
   * row of those that err alike is independent of the others.
   */
  private static final double VOLT_SD = 0.003;

  /**
   * Time over which the axis forgets its error, days: what wanders by one unit in a day and lies
   * {@code k} units out over the log does so for {@code 2 k²} days, k being 1.5 for a counted axis
   * that full charges hold at both ends ({@link CapacityEstimator}).
   */
  private static final double KEPT_DAYS = 4.5;

  /** An axis that is further out than this many standard deviations is left where it is. */
  private static final double MOST_SDS = 3;

  private final double axisSdAh;
  private final double[] day;
  private final double[] voltSd;
  private final double[] whole;
  private final double[] slope;
  private double[] errorAh;
  private final int cells;

  /**
   * Nothing in common yet.
   *
   * @param axisSdAh error of the charge axis, one standard deviation, Ah
   * @param rowsAlike how many neighbouring rows of the thinned record err alike
   * @param day time of each row, days, rising
   * @param rowsOf how many rows of the thinned record each is the mean of
   */
  CommonPart(double[] day, int[] rowsOf, int cells, double axisSdAh, double rowsAlike) {
    this.axisSdAh = axisSdAh;
    this.day = day.clone();
    this.voltSd =
        Arrays.stream(rowsOf).mapToDouble(n -> VOLT_SD * Math.sqrt(rowsAlike / n)).toArray();
    this.whole = new double[day.length];
    Arrays.fill(whole, Double.NaN);
    this.slope = new double[day.length];
    this.errorAh = new double[day.length];
    this.cells = cells;
  }

  /** What the cells show at a row; rows may be gathered in any order, and side by side. */
  Row row(int row) {
    return new Row(row);
  }

  /** The cells of one row. */
  final class Row {
    private final int row;
    private final double[] departures = new double[cells];
    private final double[] slopes = new double[cells];
    private int gathered;

    private Row(int row) {
      this.row = row;
    }

    /**
     * Gathers one cell.
     *
     * @param departure its voltage less what its curve says at the axis as known so far, V
     * @param slopeThere of its curve where it stands, V/Ah
     */
    void gather(double departure, double slopeThere) {
      departures[gathered] = departure;
      slopes[gathered++] = slopeThere;
    }

    /** Settles the row by the median cell; with fewer than two, nothing is known of it. */
    void settle() {
      if (gathered < 2) {
        whole[row] = Double.NaN;
        return;
      }
      slope[row] = median(slopes);
      whole[row] = median(departures) + slope[row] * errorAh[row];
    }

    private double median(double[] values) {
      return Robust.quantileInPlace(values, gathered, 0.5);
    }
  }

  /** Shares out what all rows show between the axis and the voltage, once they are settled. */
  void share() {
    double[] error = new WanderSmoother(axisSdAh, KEPT_DAYS).smooth(day, whole, slope, voltSd);
    double mostAh = MOST_SDS * axisSdAh;
    errorAh = Arrays.stream(error).map(e -> Math.max(-mostAh, Math.min(mostAh, e))).toArray();
  }

  boolean known(int row) {
    return !Double.isNaN(whole[row]);
  }

  /** Both parts as most cells show them, V. */
  double ofMost(int row) {
    return whole[row];
  }

  /** What every cell shows alike, V. */
  double volt(int row) {
    return whole[row] - slope[row] * errorAh[row];
  }

  /** What the charge axis reads too little at a row, Ah. */
  double axisErrorAh(int row) {
    return errorAh[row];
  }

  /** Both parts as a cell shows them that stands where the curve is so steep, V. */
  double at(int row, double slopeThere) {
    return volt(row) + slopeThere * errorAh[row];
  }
}
