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
 */
record LagTrend(double low, double best, double endLag) {
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
    double endLag =
        Math.max(level(full, rate(best), days).endLag(), level(empty, rate(best), days).endLag());
    return new LagTrend(rate(low), rate(best), endLag);
  }

  private static double rate(int k) {
    return k * RATE_STEP - FASTEST;
  }

  /** The lag at the end that fits best at one rate, the lowest of equals. */
  private record Level(double endLag, double cost) {}

  private static Level level(List<Lag> lags, double rate, double days) {
    Level best = new Level(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);
    for (double lag = -MOST_LAG; lag <= MOST_LAG; lag += LAG_STEP) {
      double cost = 0;
      for (Lag seen : lags) {
        double then = lag - rate * (days / 2 - seen.day());
        double off = Math.max(0, Math.max(seen.low() - then, then - seen.high())) / LAG_SD;
        cost += Math.min(MOST_COST, off * off);
      }
      if (cost < best.cost()) {
        best = new Level(lag + rate * days / 2, cost);
      }
    }
    return lags.isEmpty() ? new Level(Double.NEGATIVE_INFINITY, 0) : best;
  }
}
