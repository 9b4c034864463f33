package sagbook.estimate.temperature;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import sagbook.evidence.ThinnedRecord;
import sagbook.numeric.Ridge;
import sagbook.numeric.Robust;

/**
 * Half-hourly means of a string's temperatures, beside what moves them all: the room, and the heat
 * of the load.
 *
 * @param departureK each cell's temperature less the string's median, [half hour][cell], K; NaN
 *     where none was read
 * @param driver what moves cells, [half hour][driver]: the string's median, the same over six
 *     hours, and the square of the current over one and a half and six hours
 * @param bleed how much each cell was bled over the last quarter of an hour, [half hour][cell], 0
 *     to 1; no arrays when not logged
 */
record HalfHours(double[][] departureK, double[][] driver, double[][] bleed) {
  private static final double MEAN_S = 1800;

  /**
   * Times over which a cell in a box forgets heat, s. Its own is some hours; two that lie about it
   * stand for any between. Common practice, no source.
   */
  private static final double SHORT_S = 5400;

  private static final double LONG_S = 21_600;

  /** A board forgets its own heat within minutes, s. Common practice, no source. */
  private static final double BOARD_S = 900;

  private static final int DRIVERS = 4;

  /** Width of a prior that leaves a share free, K for one of a driver's units. */
  static final double FREE_K = 100;

  static HalfHours of(ThinnedRecord record) {
    int cells = record.cells();
    List<double[]> departures = new ArrayList<>();
    List<double[]> drivers = new ArrayList<>();
    List<double[]> bleeds = new ArrayList<>();
    Sum departure = new Sum(cells);
    Sum bleed = new Sum(record.bleedFraction().length);
    double[] bled = new double[record.bleedFraction().length];
    Sum driver = new Sum(DRIVERS);
    double[] one = new double[cells];
    double[] now = new double[DRIVERS];
    Arrays.fill(now, Double.NaN);
    double startS = Double.NaN;
    for (int r = 0; r < record.rows(); r++) {
      if (!(record.timeS()[r] - startS < MEAN_S)) {
        if (r > 0) {
          departures.add(departure.close());
          drivers.add(driver.close());
          bleeds.add(bleed.close());
        }
        startS = record.timeS()[r];
      }
      for (int c = 0; c < cells; c++) {
        one[c] = record.temperatureC()[c][r];
      }
      double middle = Robust.median(one);
      for (int c = 0; c < cells; c++) {
        one[c] -= middle;
      }
      double elapsedS = r == 0 ? 0 : record.timeS()[r] - record.timeS()[r - 1];
      follow(now, middle, record.currentA()[r], elapsedS);
      for (int c = 0; c < bled.length; c++) {
        bled[c] = lowPass(bled[c], record.bleedFraction()[c][r], elapsedS, BOARD_S);
      }
      departure.add(one);
      driver.add(now);
      bleed.add(bled);
    }
    departures.add(departure.close());
    drivers.add(driver.close());
    bleeds.add(bleed.close());
    return new HalfHours(
        departures.toArray(new double[0][]),
        drivers.toArray(new double[0][]),
        record.hasBleed() ? bleeds.toArray(new double[0][]) : new double[0][]);
  }

  private static void follow(double[] now, double middle, double currentA, double elapsedS) {
    double heat = Double.isNaN(currentA) ? 0 : currentA * currentA;
    now[0] = middle;
    now[1] = lowPass(now[1], middle, elapsedS, LONG_S);
    now[2] = lowPass(now[2], heat, elapsedS, SHORT_S);
    now[3] = lowPass(now[3], heat, elapsedS, LONG_S);
  }

  private static double lowPass(double before, double now, double elapsedS, double forgetsS) {
    if (Double.isNaN(before) || Double.isNaN(now)) {
      return Double.isNaN(before) ? now : before;
    }
    return now + (before - now) * Math.exp(-elapsedS / forgetsS);
  }

  /** Mean departure of a cell, K; NaN when its temperature was never read. */
  double mean(int cell) {
    return Arrays.stream(departureK)
        .mapToDouble(d -> d[cell])
        .filter(Double::isFinite)
        .average()
        .orElse(Double.NaN);
  }

  /**
   * How much a cell's departure moves beyond what room and load explain, K, one standard deviation;
   * NaN when its temperature was read too seldom to tell. A cell at the end of a row is warmed less
   * than its neighbours by the same load, a resistive one more, and both forget it at their own
   * pace: least squares give each its own share of every driver.
   */
  double ownMovement(int cell) {
    Ridge fit = new Ridge(DRIVERS + 1);
    for (int d = 0; d <= DRIVERS; d++) {
      fit.prior(d, 0, FREE_K);
    }
    int[] seen = IntStream.range(0, driver.length).filter(h -> isSeen(h, cell)).toArray();
    for (int h : seen) {
      fit.observe(explaining(h), departureK[h][cell], 1);
    }
    Ridge.Solution share = fit.solve();
    double squares =
        Arrays.stream(seen)
            .mapToDouble(h -> departureK[h][cell] - share.combined(explaining(h)))
            .map(left -> left * left)
            .sum();
    int free = seen.length - DRIVERS - 1;
    return free > 0 ? Math.sqrt(squares / free) : Double.NaN;
  }

  /** All drivers, and one for what never moves. */
  double[] explaining(int halfHour) {
    double[] row = Arrays.copyOf(driver[halfHour], DRIVERS + 1);
    row[DRIVERS] = 1;
    return row;
  }

  boolean isSeen(int halfHour, int cell) {
    return Double.isFinite(departureK[halfHour][cell]) && Double.isFinite(driver[halfHour][0]);
  }

  /** Means of several quantities over the rows of one half hour. */
  private static final class Sum {
    private final double[] sum;
    private final int[] rows;

    Sum(int quantities) {
      sum = new double[quantities];
      rows = new int[quantities];
    }

    void add(double[] values) {
      for (int i = 0; i < sum.length; i++) {
        if (!Double.isNaN(values[i])) {
          sum[i] += values[i];
          rows[i]++;
        }
      }
    }

    double[] close() {
      double[] mean = new double[sum.length];
      for (int i = 0; i < sum.length; i++) {
        mean[i] = sum[i] / rows[i];
        sum[i] = 0;
        rows[i] = 0;
      }
      return mean;
    }
  }
}
