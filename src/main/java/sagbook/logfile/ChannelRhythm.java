package sagbook.logfile;

import java.util.Arrays;

/** How a file's values come in: all in one row, one after another, or only when they change. */
final class ChannelRhythm {
  private static final double WHOLE_ROWS = 0.8;
  private static final double OFTEN = 0.05;
  private static final double HARDLY = 0.01;
  private static final double FEW_REPEATS = 0.05;

  /**
   * Whatever the noise, as long as small changes are likelier than large ones, a value is met again
   * at least half as often as one a single step of its rounding away. Fewer than this share of them
   * means that repeats were left out.
   */
  private static final double REPEATS_FOR_STEPS = 0.4;

  private static final double MANY_PAUSES = 0.2;
  private static final long LEAST_VALUES = 50;

  /** Longer than this many times a channel's short interval is a pause. */
  private static final double PROMPT = 1.6;

  private final Slots slots;
  private final double[] lastValue;
  private final double[] lastTimeS;
  private final long[] count;
  private final long[] pauses;
  private final boolean[] wasPresent;
  private final Thinned intervals = new Thinned();
  private long rows;
  private final IntervalCounts all = new IntervalCounts();
  private final IntervalCounts repeats = new IntervalCounts();
  private final IntervalCounts voltageRepeats = new IntervalCounts();
  private IntervalCounts voltageSteps = new IntervalCounts();
  private double smallestStep = Double.POSITIVE_INFINITY;
  private int cellsSeen;

  ChannelRhythm(Slots slots) {
    this.slots = slots;
    this.lastValue = new double[slots.count()];
    this.lastTimeS = new double[slots.count()];
    this.count = new long[slots.count()];
    this.pauses = new long[slots.count()];
    this.wasPresent = new boolean[slots.count()];
    Arrays.fill(lastValue, Double.NaN);
  }

  void add(Row row) {
    rows++;
    double[] now = row.values;
    for (int slot = 0; slot < now.length; slot++) {
      double value = now[slot];
      if (Double.isNaN(value)) {
        pauses[slot] += wasPresent[slot] ? 1 : 0;
        wasPresent[slot] = false;
        continue;
      }
      wasPresent[slot] = true;
      count[slot]++;
      boolean cell = isVoltage(slot);
      if (Double.isNaN(lastValue[slot])) {
        cellsSeen += cell ? 1 : 0;
      } else {
        double intervalS = row.timeS - lastTimeS[slot];
        all.add(intervalS);
        if (value == lastValue[slot]) {
          repeats.add(intervalS);
        }
        if (cell) {
          intervals.add(intervalS);
          addStep(Math.abs(value - lastValue[slot]), intervalS);
        }
      }
      lastValue[slot] = value;
      lastTimeS[slot] = row.timeS;
    }
  }

  /** Counts a change of a voltage if it is none, or as small as any. */
  private void addStep(double change, double sinceS) {
    if (change == 0) {
      voltageRepeats.add(sinceS);
      return;
    }
    if (change < smallestStep / 1.5) {
      smallestStep = change;
      voltageSteps = new IntervalCounts();
    }
    if (change < smallestStep * 1.5) {
      voltageSteps.add(sinceS);
    }
  }

  private boolean isVoltage(int slot) {
    return slot >= slots.voltage(1) && slot <= slots.voltage(slots.cells());
  }

  /** Mean of the cells' latest voltages; NaN when there are none. */
  double meanVoltage() {
    double sum = 0;
    int cells = 0;
    for (int cell = 1; cell <= slots.cells(); cell++) {
      double value = lastValue[slots.voltage(cell)];
      if (!Double.isNaN(value)) {
        sum += value;
        cells++;
      }
    }
    return cells == 0 ? Double.NaN : sum / cells;
  }

  int cellsSeen() {
    return cellsSeen;
  }

  /** Values of each slot. */
  long[] counts() {
    return count.clone();
  }

  /** Whether a usual row holds only some of the cells, or nothing is written twice. */
  boolean isPartial() {
    long cells = 0;
    for (int cell = 1; cell <= slots.cells(); cell++) {
      cells += count[slots.voltage(cell)];
    }
    return (cellsSeen > 1 && cells < WHOLE_ROWS * rows * cellsSeen) || isChangeOnly();
  }

  /**
   * Whether a value is written only when it differs from the one before: hardly any value repeats,
   * or few after a short interval where long ones are common (rounding and a sign of life after a
   * pause repeat values); and some channel pauses again and again, not just once.
   */
  boolean isChangeOnly() {
    if (all.total() < LEAST_VALUES || !(hardlyRepeats() || fewRepeatPromptly())) {
      return false;
    }
    for (long each : pauses) {
      if (each > OFTEN * rows) {
        return true;
      }
    }
    return false;
  }

  private boolean hardlyRepeats() {
    return repeats.total() < HARDLY * all.total();
  }

  private boolean fewRepeatPromptly() {
    double promptS = PROMPT * shortIntervalS();
    long prompt = all.upTo(promptS);
    boolean few =
        repeats.upTo(promptS) < FEW_REPEATS * prompt
            || voltageRepeats.upTo(promptS) < REPEATS_FOR_STEPS * voltageSteps.upTo(promptS);
    return few && prompt < (1 - MANY_PAUSES) * all.total();
  }

  /** Short but not rare time between two values of one cell, s. */
  double shortIntervalS() {
    return intervals.quantile(0.1);
  }

  /** Usual time between two values of one cell, s. */
  double usualIntervalS() {
    return intervals.median();
  }
}
