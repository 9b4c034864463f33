package sagbook.logfile;

import java.io.Closeable;
import java.io.IOException;
import java.util.Arrays;
import java.util.Optional;
import sagbook.align.ClockOffset;
import sagbook.issue.InputProblem;

/**
 * A log without cell voltages beside the one that has them: its values are brought to the rows of
 * that one. A log of about the same pace, or slower, gives its nearest row, but none further away
 * than one and a half of its usual steps; a faster one gives the mean of its rows since the last,
 * so that no charge is lost.
 */
final class Companion implements Closeable {
  private static final double MOST_STEPS_AWAY = 1.5;
  private static final double FASTER = 3;

  private final RowStream in;
  private final Optional<ClockOffset> offset;
  private final double reachS;
  private final boolean averages;
  private final double[] sums;
  private final int[] counts;
  private Row before;
  private Row after;
  private boolean hasBefore;
  private boolean hasAfter;
  private boolean started;

  Companion(RowStream in, Slots slots, Optional<ClockOffset> offset, double ownS, double leadingS) {
    this.in = in;
    this.offset = offset;
    this.averages = ownS * FASTER <= leadingS;
    this.reachS = MOST_STEPS_AWAY * Math.max(ownS, averages ? leadingS : ownS);
    this.sums = new double[slots.count()];
    this.counts = new int[slots.count()];
    this.before = new Row(slots);
    this.after = new Row(slots);
  }

  /** Fills what the row lacks from this log. */
  void fill(Row row) throws InputProblem {
    if (!started) {
      started = true;
      hasAfter = next(after);
    }
    boolean summed = false;
    Arrays.fill(sums, 0);
    Arrays.fill(counts, 0);
    while (hasAfter && after.timeS <= row.timeS) {
      if (averages && after.timeS > row.timeS - reachS) {
        add(after);
        summed = true;
      }
      Row free = before;
      before = after;
      after = free;
      hasBefore = true;
      hasAfter = next(after);
    }
    if (summed) {
      fillMeans(row);
    }
    boolean beforeNearer =
        hasBefore && (!hasAfter || row.timeS - before.timeS <= after.timeS - row.timeS);
    Row nearest = beforeNearer ? before : after;
    if ((beforeNearer || hasAfter) && Math.abs(nearest.timeS - row.timeS) <= reachS) {
      row.fillFrom(nearest);
    }
  }

  private void add(Row row) {
    for (int i = 0; i < sums.length; i++) {
      if (!Double.isNaN(row.values[i])) {
        sums[i] += row.values[i];
        counts[i]++;
      }
    }
  }

  private void fillMeans(Row row) {
    for (int i = 0; i < sums.length; i++) {
      if (counts[i] > 0 && Double.isNaN(row.values[i])) {
        row.values[i] = sums[i] / counts[i];
      }
    }
  }

  private boolean next(Row row) throws InputProblem {
    if (!in.next(row)) {
      return false;
    }
    row.timeS += offset.isPresent() ? offset.get().correction(row.timeS) : 0;
    return true;
  }

  @Override
  public void close() throws IOException {
    in.close();
  }
}
