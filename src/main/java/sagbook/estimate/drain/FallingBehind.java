package sagbook.estimate.drain;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.stream.IntStream;
import sagbook.estimate.curve.ElectrodePair;
import sagbook.evidence.ThinnedRecord;
import sagbook.model.Estimate;
import sagbook.model.PackDescription;
import sagbook.numeric.Robust;
import sagbook.wording.Words;

/**
 * A drain without a logged current. The cells of a string pass the same current, so one that falls
 * further behind its neighbours day by day loses charge by itself, whatever the current was. How
 * far behind it is shows where the curve is steep, near full and near empty; on the flat part the
 * range is wide, and nothing is made of it. No charge axis is needed, which without a current is
 * made up from voltages and warped.
 *
 * <p>Both voltages are put on published curves, alike displaced by what those and the load may be
 * wrong by, and against each other by what boards and resistances differ. A cell that falls out of
 * sight at the knee may have fallen any further, so what comes out is the least the drain may be.
 * On invented packs of a generator that shares no code with this project all four drains of 79 to
 * 114 mA were found, as 15 to 54 mA at least, and none in 570 other cells of 41 packs.
 */
public final class FallingBehind {
  private static final Words WORDS = Words.english();

  /** Shortest log in which a cell falls behind enough to be seen, days. */
  private static final double FEWEST_DAYS = 5;

  /** Rows of a day below which its ends aren't looked for. */
  private static final int FEWEST_ROWS = 60;

  /** Share of a day's rows that are its fullest, and its emptiest. Common practice, no source. */
  private static final double END_SHARE = 0.03;

  /** What a published curve may be off by, for all cells alike, V. Common practice, no source. */
  private static final double CURVE_V = 0.012;

  /** What a board may be off by, V. Common practice, no source. */
  private static final double BOARD_V = 0.004;

  /**
   * Share by which a published curve may stretch what a cell is behind, be it steeper there or
   * gentler than the cells' own. Common practice, no source.
   */
  private static final double CURVE_STRETCH = 0.25;

  /** Share of the drop over the resistance that is not known, for all cells alike. */
  private static final double UNKNOWN_DROP_SHARE = 0.5;

  /** The same by which cells differ, beyond what is constant. Common practice, no source. */
  private static final double OWN_DROP_SHARE = 0.1;

  /** A made-up current rings at the knees; loads of a house are below this, 1/h. */
  private static final double HIGHEST_RATE = 0.5;

  /** Parts of the common error that are tried, of its most. */
  private static final double[] PARTS = {-1, -0.5, 0, 0.5, 1};

  private final ThinnedRecord record;
  private final List<RestCharge> curves;
  private final double nominalAh;
  private final double slowOhm;
  private final double[] middleV;
  private final double days;

  private FallingBehind(ThinnedRecord record, PackDescription pack, double slowOhm) {
    this.record = record;
    this.curves = RestCharge.of(ElectrodePair.of(pack));
    this.nominalAh = pack.nominalCapacityAh();
    this.slowOhm = slowOhm;
    this.middleV = new double[record.rows()];
    double[] one = new double[record.cells()];
    for (int r = 0; r < middleV.length; r++) {
      for (int c = 0; c < one.length; c++) {
        one[c] = record.voltageV()[c][r];
      }
      middleV[r] = Robust.median(one);
    }
    this.days = middleV.length == 0 ? 0 : day(middleV.length - 1);
  }

  /**
   * The least that each cell's drain may be, mA; unknown where it doesn't surely fall behind, or
   * where the capacity was not told, of which lags are shares.
   *
   * @param record with a made-up current
   * @param slowOhm resistance that goes with that current, ohm
   * @param bledAh what each board bled, Ah; NaN where that was not logged
   */
  public static List<Estimate> of(
      ThinnedRecord record, PackDescription pack, double slowOhm, double[] bledAh) {
    if (!pack.isCapacityTold()) {
      Estimate untold = Estimate.unknown(WORDS.say("unknown.no-current.drain.capacity"));
      return Collections.nCopies(record.cells(), untold);
    }
    FallingBehind string = new FallingBehind(record, pack, slowOhm);
    double usualBledAh = Robust.median(bledAh);
    return IntStream.range(0, record.cells())
        .parallel()
        .mapToObj(
            c -> {
              double bled = bledAh[c] - usualBledAh;
              return string.drain(c, Double.isNaN(bled) ? 0 : bled);
            })
        .toList();
  }

  private Estimate drain(int cell, double bledAh) {
    if (days < FEWEST_DAYS) {
      return Estimate.unknown(WORDS.say("unknown.five-days"));
    }
    LagTrend trend = LagTrend.of(lags(cell), days);
    double leastLag =
        Math.min((1 - CURVE_STRETCH) * trend.low(), (1 + CURVE_STRETCH) * trend.low());
    double low = milliamp(leastLag * nominalAh - bledAh / days);
    double best = milliamp(trend.best() * nominalAh - bledAh / days);
    // One that was ahead and is level now was bled rather than drained; a worn one is behind where
    // the string is empty all the same.
    double half = trend.best() * days / 2;
    boolean behind = trend.endLag() > half && trend.mostFullLag() > half;
    return low > 0 && behind
        ? new Estimate.Known(best, low, best).open()
        : Estimate.unknown(WORDS.say("unknown.no-current.drain"));
  }

  private static double milliamp(double ahADay) {
    return ahADay * 1000 / 24;
  }

  private double day(int row) {
    return (record.timeS()[row] - record.timeS()[0]) / 86_400;
  }

  private List<Lag> lags(int cell) {
    List<Lag> lags = new ArrayList<>();
    int from = 0;
    while (from < middleV.length) {
      int to = from;
      while (to < middleV.length && (int) day(to) == (int) day(from)) {
        to++;
      }
      int[] seen =
          IntStream.range(from, to)
              .filter(r -> !Double.isNaN(middleV[r] + record.voltageV()[cell][r]))
              .toArray();
      if (seen.length >= FEWEST_ROWS) {
        double[] middle = Arrays.stream(seen).mapToDouble(r -> middleV[r]).toArray();
        double fullV = Robust.quantile(middle, 1 - END_SHARE);
        double emptyV = Robust.quantile(middle, END_SHARE);
        lags.add(lag(cell, true, Arrays.stream(seen).filter(r -> middleV[r] >= fullV).toArray()));
        lags.add(lag(cell, false, Arrays.stream(seen).filter(r -> middleV[r] <= emptyV).toArray()));
      }
      from = to;
    }
    return lags;
  }

  private Lag lag(int cell, boolean full, int[] rows) {
    double[] low = new double[rows.length];
    double[] high = new double[rows.length];
    double day = 0;
    for (int k = 0; k < rows.length; k++) {
      int r = rows[k];
      double mostA = HIGHEST_RATE * nominalAh;
      double drop = slowOhm * Math.max(-mostA, Math.min(mostA, record.currentA()[r]));
      double alikeV = CURVE_V + UNKNOWN_DROP_SHARE * Math.abs(drop);
      double ownV = BOARD_V + OWN_DROP_SHARE * Math.abs(drop);
      low[k] = Double.POSITIVE_INFINITY;
      high[k] = Double.NEGATIVE_INFINITY;
      for (RestCharge curve : curves) {
        for (double part : PARTS) {
          double off = part * alikeV - drop;
          double middle = curve.at(middleV[r] + off);
          double own = record.voltageV()[cell][r] + off;
          low[k] = Math.min(low[k], middle - curve.at(own + ownV));
          high[k] = Math.max(high[k], middle - curve.at(own - ownV));
        }
      }
      day += day(r) / rows.length;
    }
    return new Lag(day, full, Robust.median(low), Robust.median(high));
  }
}
