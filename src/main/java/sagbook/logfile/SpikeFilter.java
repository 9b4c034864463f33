package sagbook.logfile;

import java.io.IOException;
import java.util.Arrays;
import sagbook.issue.InputProblem;
import sagbook.issue.IssueStore;
import sagbook.issue.RowIssue;

/**
 * Takes out single values that jump away from their neighbours and back while the other cells stand
 * still, and the 85 °C that a sensor shows at power-up. The sizes are common practice, no source.
 */
final class SpikeFilter implements RowStream {
  private static final double LEAST_VOLT = 0.15;
  private static final double LEAST_CELSIUS = 8;
  private static final double OTHERS_STAND_STILL_VOLT = 0.02;
  private static final double POWER_UP_CELSIUS = 85;

  private final RowStream in;
  private final Slots slots;
  private final double mostStepS;
  private final IssueStore issues;
  private final String file;
  private final double[] moves;
  private Row before;
  private Row now;
  private Row after;
  private boolean started;
  private boolean hasNow;
  private boolean hasAfter;

  SpikeFilter(RowStream in, Slots slots, double cadenceS, IssueStore issues, String file) {
    this.in = in;
    this.slots = slots;
    this.mostStepS = Double.isNaN(cadenceS) ? 0 : 5 * cadenceS;
    this.issues = issues;
    this.file = file;
    this.moves = new double[slots.cells()];
    this.before = new Row(slots);
    this.now = new Row(slots);
    this.after = new Row(slots);
  }

  @Override
  public boolean next(Row row) throws InputProblem {
    if (!started) {
      started = true;
      hasNow = in.next(now);
      hasAfter = hasNow && in.next(after);
    }
    if (!hasNow) {
      return false;
    }
    powerUp();
    if (hasAfter && now.timeS - before.timeS <= mostStepS && after.timeS - now.timeS <= mostStepS) {
      clean();
    }
    row.copyFrom(now);
    Row free = before;
    before = now;
    now = after;
    after = free;
    hasNow = hasAfter;
    hasAfter = hasNow && in.next(after);
    return true;
  }

  private void powerUp() {
    for (int cell = 1; cell <= slots.cells(); cell++) {
      int slot = slots.temperature(cell);
      double last = before.values[slot];
      boolean far = !(last > POWER_UP_CELSIUS - LEAST_CELSIUS);
      if (now.values[slot] == POWER_UP_CELSIUS && far) {
        now.values[slot] = Double.NaN;
        issues.add(RowIssue.IMPLAUSIBLE_TEMPERATURE, file, now.line);
      }
    }
  }

  private void clean() {
    boolean still = othersStandStill();
    for (int cell = 1; cell <= slots.cells(); cell++) {
      if (still) {
        clean(slots.voltage(cell), LEAST_VOLT);
      }
      clean(slots.temperature(cell), LEAST_CELSIUS);
    }
  }

  private void clean(int slot, double least) {
    double there = now.values[slot] - before.values[slot];
    double back = now.values[slot] - after.values[slot];
    double apart = Math.abs(after.values[slot] - before.values[slot]);
    boolean jumps = Math.abs(there) > least && Math.abs(back) > least && there * back > 0;
    if (jumps && apart < Math.abs(there) / 3) {
      now.values[slot] = Double.NaN;
      issues.add(RowIssue.SPIKE, file, now.line);
    }
  }

  private boolean othersStandStill() {
    int count = 0;
    for (int cell = 1; cell <= slots.cells(); cell++) {
      int slot = slots.voltage(cell);
      double move = Math.abs(now.values[slot] - before.values[slot]);
      if (!Double.isNaN(move)) {
        moves[count++] = move;
      }
    }
    Arrays.sort(moves, 0, count);
    return count > 0 && moves[count / 2] < OTHERS_STAND_STILL_VOLT;
  }

  @Override
  public void close() throws IOException {
    in.close();
  }
}
