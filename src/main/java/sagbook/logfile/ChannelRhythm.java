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

  /** An interval that is short but not rare: this share of a channel's are shorter. */
  private static final double SHORT_SHARE = 0.1;

  private static final double MANY_PAUSES = 0.2;
  private static final long LEAST_VALUES = 50;

  /** Longer than this many times a channel's short interval is a pause. */
  private static final double PROMPT = 1.6;

  /** Values of one row are written within this share of the short time between two of a cell. */
  private static final double SWEEP_SHARE = 0.6;

  /** What changes at the same time is written within this time, s. Common practice, no source. */
  private static final double SAME_TIME_S = 2;

  /**
   * A row that is a whole round takes this share of it, so that no value of the next comes in.
   * Common practice, no source.
   */
  private static final double WHOLE_ROUND = 0.95;

  /** Intervals this many times as long or short are alike. Common practice, no source. */
  private static final double ALIKE = 1.2;

  /** Share of the prompt intervals that are alike in rounds. Common practice, no source. */
  private static final double MOSTLY = 0.7;

  /** Longer than this share of a round nothing comes only between rounds. */
  private static final double REST_SHARE = 0.4;

  private final Slots slots;
  private final double[] lastValue;
  private final double[] lastTimeS;
  private final long[] count;
  private final long[] leftOut;
  private final boolean[] wasPresent;
  private final IntervalCounts[] own;
  private final IntervalCounts betweenRows = new IntervalCounts();
  private final Thinned intervals = new Thinned();
  private final IntervalCounts cellIntervals = new IntervalCounts();
  private long rows;
  private double lastRowS = Double.NaN;
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
    this.leftOut = new long[slots.count()];
    this.wasPresent = new boolean[slots.count()];
    this.own = new IntervalCounts[slots.count()];
    Arrays.setAll(own, slot -> new IntervalCounts());
    Arrays.fill(lastValue, Double.NaN);
  }

  void add(Row row) {
    if (rows++ > 0) {
      betweenRows.add(row.timeS - lastRowS);
    }
    lastRowS = row.timeS;
    double[] now = row.values;
    for (int slot = 0; slot < now.length; slot++) {
      double value = now[slot];
      if (Double.isNaN(value)) {
        leftOut[slot] += wasPresent[slot] ? 1 : 0;
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
        own[slot].add(intervalS);
        if (value == lastValue[slot]) {
          repeats.add(intervalS);
        }
        if (cell) {
          intervals.add(intervalS);
          cellIntervals.add(intervalS);
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
    return Arrays.stream(leftOut).anyMatch(times -> times > OFTEN * rows) || pausesInTime();
  }

  /**
   * The same by time instead of by rows: in a log with a line and a time of its own for each value
   * every channel is absent from most rows. Gaps of the whole log don't count.
   */
  private boolean pausesInTime() {
    long rounds = Arrays.stream(count).max().orElse(0);
    return Arrays.stream(own).anyMatch(channel -> pauses(channel) > OFTEN * rounds);
  }

  private long pauses(IntervalCounts channel) {
    double promptS = PROMPT * channel.quantile(SHORT_SHARE);
    long gaps = betweenRows.total() - betweenRows.upTo(promptS);
    return channel.total() - channel.upTo(promptS) - gaps;
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
    return intervals.quantile(SHORT_SHARE);
  }

  /** Usual time between two values of one cell, s. */
  double usualIntervalS() {
    return intervals.median();
  }

  /**
   * Longest time from the first to the last value of one row, s. What is written only when it
   * changes may come at any time; then only what comes at about the same time is one row. But where
   * boards are read in rounds, a value is as old as its round, so a row is a round: what is newer
   * in it would pass for what answers later.
   */
  double sweepS() {
    double roundS = shortIntervalS();
    if (Double.isNaN(roundS)) {
      return 0;
    }
    double halfRoundS = SWEEP_SHARE * roundS;
    if (isChangeOnly() && !isInRounds(roundS)) {
      return Math.min(halfRoundS, SAME_TIME_S);
    }
    return restsBetweenRounds(roundS) ? halfRoundS : WHOLE_ROUND * roundS;
  }

  /** Whether the prompt intervals of cells are alike, and cells are passed over in some rounds. */
  private boolean isInRounds(double roundS) {
    long alike = cellIntervals.upTo(ALIKE * roundS) - cellIntervals.upTo(roundS / ALIKE);
    return pausesInTime() && alike > MOSTLY * cellIntervals.upTo(PROMPT * roundS);
  }

  /** Whether the boards are read close together, so that one round is clear of the next. */
  private boolean restsBetweenRounds(double roundS) {
    double withinS = betweenRows.secondsUpTo(REST_SHARE * roundS);
    return betweenRows.secondsUpTo(PROMPT * roundS) > 2 * withinS;
  }
}
