package sagbook.logfile;

/**
 * What one channel's values show, gathered in one pass and bounded memory.
 *
 * <p>Resolution is the smallest difference seen between neighbouring values. Noise is taken from
 * how the channel moves against the mean of its like from row to row while that mean stands still:
 * the root of half the mean square, since both rows of a difference are noisy.
 */
final class ChannelStatistics {
  /** While the others move less than this from row to row it is quiet, as a share of a move. */
  private static final double QUIET = 0.1;

  private static final int LEAST_QUIET_ROWS = 30;

  private final double moves;
  private final double leastStep;
  private final double lagS;
  private long rows;
  private long valid;
  private double resolution = Double.NaN;
  private double last = Double.NaN;
  private double lastOthers = Double.NaN;
  private double sinceS = Double.NaN;
  private double othersAtChange = Double.NaN;
  private double lastS = Double.NaN;
  private boolean away;
  private double awayS;
  private double stuckS;
  private double stuckFromS = Double.NaN;
  private double squares;
  private long quietRows;

  /**
   * Statistics of a channel.
   *
   * @param moves how far the others must have moved for a still value to be stuck, and ten times
   *     what they may move in quiet times
   * @param leastStep smaller differences come from rounding
   * @param lagS how long it may lag behind the others without being stuck, s
   */
  ChannelStatistics(double moves, double leastStep, double lagS) {
    this.moves = moves;
    this.leastStep = leastStep;
    this.lagS = lagS;
  }

  /** Takes the channel's value in a row and the mean of its like; NaN when missing. */
  void add(double timeS, double value, double others) {
    rows++;
    if (Double.isNaN(value)) {
      return;
    }
    valid++;
    double step = Math.abs(value - last);
    double against = value - last - (others - lastOthers);
    if (Math.abs(others - lastOthers) < QUIET * moves && Math.abs(against) < moves) {
      squares += against * against;
      quietRows++;
    }
    if (step >= leastStep && !(step >= resolution)) {
      resolution = step;
    }
    if (!(step < leastStep)) {
      sinceS = timeS;
      othersAtChange = others;
      away = false;
      awayS = 0;
    } else {
      // A still value hides up to one step of its own.
      double hidden = Double.isNaN(resolution) ? 0 : resolution;
      standStill(timeS, Math.abs(others - othersAtChange) > moves + hidden);
    }
    last = value;
    lastOthers = others;
    lastS = timeS;
  }

  /** A quiet night is no standstill: what counts is how long the others were gone meanwhile. */
  private void standStill(double timeS, boolean othersAway) {
    awayS += away && othersAway ? timeS - lastS : 0;
    away = othersAway;
    if (othersAway && awayS >= lagS && timeS - sinceS > stuckS) {
      stuckS = timeS - sinceS;
      stuckFromS = sinceS;
    }
  }

  boolean isPresent() {
    return valid > 0;
  }

  double validShare() {
    return rows == 0 ? 0 : (double) valid / rows;
  }

  /** NaN when the value never changed. */
  double resolution() {
    return resolution;
  }

  /** Standard deviation of a reading; NaN when there were too few quiet rows. */
  double noise() {
    return quietRows < LEAST_QUIET_ROWS ? Double.NaN : Math.sqrt(squares / quietRows / 2);
  }

  /** Longest time without any change while the others moved, s. */
  double stuckS() {
    return stuckS;
  }

  double stuckFromS() {
    return stuckFromS;
  }
}
