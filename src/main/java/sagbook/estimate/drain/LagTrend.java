package sagbook.estimate.drain;

import java.util.List;

/**
 * How much further behind a cell falls each day, from ranges of its lag. Full and empty each have a
 * lag of their own (a worn cell is level at full and behind at empty), but fall behind alike. Of
 * every rate that is tried, the violations of the ranges are added up, squared, each up to nine
 * variances, so that no odd day decides; what costs less than 3.84 more than the best is likely
 * (the 95 % point of chi squared for one parameter).
 *
 * @param low the lowest likely rate, share of capacity a day
 * @param best the lowest of those that fit best
 * @param endLag how far the cell was behind at the end, at full and at empty, whichever is more
 * @param mostFullLag how far it may have been behind at the end where the string is full
 */
record LagTrend(double low, double best, double endLag, double mostFullLag) {
  /** What a range of lag may be off by, share of capacity. Common practice, no source. */
  private static final double LAG_SD = 0.006;

  private static final double MOST_COST = 9;
  private static final double LIKELY = 3.84;

  /** Faster than 3 % a day a cell is empty before a log of a month has begun to tell. */
  private static final double FASTEST = 0.03;

  private static final double RATE_STEP = 0.0005;
  private static final double MOST_LAG = 0.4;
  private static final double LAG_STEP = 0.004;

  /**
   * The trend of some lags.
   *
   * @param days length of the log, days
   */
  static LagTrend of(List<Lag> lags, double days) {
    List<Lag> full = lags.stream().filter(Lag::full).toList();
    List<Lag> empty = lags.stream().filter(lag -> !lag.full()).toList();
    int rates = (int) Math.round(2 * FASTEST / RATE_STEP) + 1;
    double[] cost = new double[rates];
    int best = 0;
    for (int k = 0; k < rates; k++) {
      cost[k] = level(full, rate(k), days).cost() + level(empty, rate(k), days).cost();
      best = cost[k] < cost[best] ? k : best;
    }
    int low = 0;
    while (cost[low] > cost[best] + LIKELY) {
      low++;
    }
    Level atFull = level(full, rate(best), days);
    double endLag = Math.max(atFull.endLag(), level(empty, rate(best), days).endLag());
    return new LagTrend(rate(low), rate(best), endLag, atFull.mostLag());
  }

  private static double rate(int k) {
    return k * RATE_STEP - FASTEST;
  }

  /** The lag at the end that fits best at one rate, the lowest of equals, and the most likely. */
  private record Level(double endLag, double mostLag, double cost) {}

  private static Level level(List<Lag> lags, double rate, double days) {
    if (lags.isEmpty()) {
      return new Level(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY, 0);
    }
    int steps = (int) Math.round(2 * MOST_LAG / LAG_STEP) + 1;
    double[] cost = new double[steps];
    int best = 0;
    for (int k = 0; k < steps; k++) {
      cost[k] = cost(lags, rate, days, lag(k));
      best = cost[k] < cost[best] ? k : best;
    }
    int most = steps - 1;
    while (cost[most] > cost[best] + LIKELY) {
      most--;
    }
    double sinceMiddle = rate * days / 2;
    return new Level(lag(best) + sinceMiddle, lag(most) + sinceMiddle, cost[best]);
  }

  private static double lag(int k) {
    return k * LAG_STEP - MOST_LAG;
  }

  private static double cost(List<Lag> lags, double rate, double days, double midLag) {
    double cost = 0;
    for (Lag seen : lags) {
      double then = midLag - rate * (days / 2 - seen.day());
      double off = Math.max(0, Math.max(seen.low() - then, then - seen.high())) / LAG_SD;
      cost += Math.min(MOST_COST, off * off);
    }
    return cost;
  }
}
