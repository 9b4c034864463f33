package sagbook.logfile;

import java.io.IOException;
import java.util.Arrays;
import sagbook.issue.InputProblem;

/**
 * Makes whole rows where a log writes the cells one after another, or only what changed. Values
 * that come within one sweep are one row, at their mean time; a sweep ends when a channel comes
 * again. In a log that writes only what changed, a value holds until the next, but no longer than a
 * given age.
 */
final class SweepGatherer implements RowStream {
  /** Common practice, no source. */
  private static final int FEWEST_LAGS = 100;

  private final RowStream in;
  private final double sweepS;
  private final double holdS;
  private final Row ahead;
  private final double[] heldValue;
  private final double[] heldSinceS;
  private final Slots slots;
  private final double[] writtenS;
  private final double[] lagSumS;
  private final long[] lags;
  private boolean hasAhead;

  /**
   * Gathers a log.
   *
   * @param sweepS longest time from the first to the last value of a sweep, s
   * @param holdS how long a value holds, s; with 0, every cell comes in every sweep
   */
  SweepGatherer(RowStream in, Slots slots, double sweepS, double holdS) {
    this.in = in;
    this.sweepS = sweepS;
    this.holdS = holdS;
    this.ahead = new Row(slots);
    this.heldValue = new double[slots.count()];
    this.heldSinceS = new double[slots.count()];
    this.slots = slots;
    this.writtenS = new double[slots.count()];
    this.lagSumS = new double[slots.cells()];
    this.lags = new long[slots.cells()];
    Arrays.fill(heldValue, Double.NaN);
  }

  @Override
  public boolean next(Row row) throws InputProblem {
    if (!hasAhead && !in.next(ahead)) {
      return false;
    }
    row.copyFrom(ahead);
    hasAhead = false;
    double firstS = row.timeS;
    int valued = valued(row);
    Arrays.fill(writtenS, Double.NaN);
    stamp(row);
    double delay = 0;
    while (in.next(ahead)) {
      if (ahead.timeS - firstS > sweepS || clashes(row)) {
        hasAhead = true;
        break;
      }
      int added = valued(ahead);
      stamp(ahead);
      row.fillFrom(ahead);
      delay += added * (ahead.timeS - firstS);
      valued += added;
    }
    row.timeS = valued == 0 ? firstS : firstS + delay / valued;
    noteLags();
    hold(row);
    return true;
  }

  private void stamp(Row written) {
    for (int i = 0; i < writtenS.length; i++) {
      if (!Double.isNaN(written.values[i])) {
        writtenS[i] = written.timeS;
      }
    }
  }

  private void noteLags() {
    for (int cell = 0; cell < lags.length; cell++) {
      double lagS = writtenS[slots.voltage(cell + 1)] - writtenS[slots.current()];
      if (!Double.isNaN(lagS)) {
        lagSumS[cell] += lagS;
        lags[cell]++;
      }
    }
  }

  /**
   * How long after the current each cell is written, on average over the sweeps in which both are,
   * s; empty where a cell hardly ever comes with a current.
   */
  double[] lagS() {
    if (Arrays.stream(lags).anyMatch(n -> n < FEWEST_LAGS)) {
      return new double[0];
    }
    double[] mean = new double[lags.length];
    Arrays.setAll(mean, cell -> lagSumS[cell] / lags[cell]);
    return mean;
  }

  private static int valued(Row row) {
    int count = 0;
    for (double value : row.values) {
      count += Double.isNaN(value) ? 0 : 1;
    }
    return count;
  }

  private boolean clashes(Row row) {
    for (int i = 0; i < row.values.length; i++) {
      if (!Double.isNaN(row.values[i]) && !Double.isNaN(ahead.values[i])) {
        return true;
      }
    }
    return false;
  }

  private void hold(Row row) {
    if (holdS <= 0) {
      return;
    }
    for (int i = 0; i < row.values.length; i++) {
      if (!Double.isNaN(row.values[i])) {
        heldValue[i] = row.values[i];
        heldSinceS[i] = row.timeS;
      } else if (row.timeS - heldSinceS[i] <= holdS) {
        row.values[i] = heldValue[i];
      }
    }
  }

  @Override
  public void close() throws IOException {
    in.close();
  }
}
