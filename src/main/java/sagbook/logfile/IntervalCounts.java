package sagbook.logfile;

/** How many intervals were how long: counts in bins, each a tenth longer than the one before. */
final class IntervalCounts {
  private static final double SHORTEST_S = 0.01;
  private static final double RATIO = 1.1;
  private static final double STEP = Math.log(RATIO);

  /** The last bin holds whatever is longer, from about a day on. */
  private static final int BINS = 170;

  private final long[] count = new long[BINS];
  private long total;

  /**
   * Counts one.
   *
   * @param intervalS its length, s; none or less is the shortest
   */
  void add(double intervalS) {
    count[bin(intervalS)]++;
    total++;
  }

  private static int bin(double intervalS) {
    double place = Math.log(Math.max(SHORTEST_S, intervalS) / SHORTEST_S) / STEP;
    return (int) Math.min(BINS - 1, Math.round(place));
  }

  long total() {
    return total;
  }

  /** How many were no longer than this, give or take a twentieth; none for NaN. */
  long upTo(double longestS) {
    if (Double.isNaN(longestS)) {
      return 0;
    }
    long sum = 0;
    for (int i = 0; i <= bin(longestS); i++) {
      sum += count[i];
    }
    return sum;
  }

  /** What those that were no longer than this take together, give or take a twentieth, s. */
  double secondsUpTo(double longestS) {
    double sum = 0;
    for (int i = 0; i <= bin(longestS); i++) {
      sum += count[i] * length(i);
    }
    return sum;
  }

  private static double length(int bin) {
    return SHORTEST_S * Math.exp(bin * STEP);
  }

  /** The length below which a share of them lies, give or take a twentieth; NaN without any. */
  double quantile(double share) {
    long below = 0;
    for (int i = 0; i < BINS; i++) {
      below += count[i];
      if (below > share * total) {
        return length(i);
      }
    }
    return Double.NaN;
  }
}
