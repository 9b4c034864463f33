package sagbook.numeric;

/**
 * The likeliest single break in a series: a constant up to it, a straight line from it on, by least
 * squares over every place of the break (Quandt 1958 for two regressions with an unknown switch;
 * here the first one is a constant). It always finds a place: whether the break is one is for the
 * caller to judge, by {@link #step} against {@link #stepSd} and against series that share its
 * disturbances.
 *
 * @param before values before the break
 * @param level mean before the break
 * @param levelSd its standard deviation
 * @param step mean from the break on, less the mean before it
 * @param stepSd its standard deviation, were the values independent
 * @param end value of the line at the last place; the mean from the break on where that has fewer
 *     than {@value #FEWEST_FOR_A_LINE} values
 * @param endSd its standard deviation, were the values independent
 */
public record LevelBreak(
    int before,
    double level,
    double levelSd,
    double step,
    double stepSd,
    double end,
    double endSd) {
  private static final int FEWEST_FOR_A_LINE = 4;
  private static final int FEWEST_A_SIDE = 2;

  /** Fewer values than this are no series that a break could be looked for in. */
  public static final int FEWEST = 7;

  /** The likeliest break of evenly spaced values. */
  public static LevelBreak of(double[] y) {
    int n = y.length;
    if (n < FEWEST) {
      throw new IllegalArgumentException("a break needs " + FEWEST + " values, got " + n);
    }
    int best = FEWEST_A_SIDE;
    double least = Double.POSITIVE_INFINITY;
    for (int t = FEWEST_A_SIDE; t <= n - FEWEST_A_SIDE; t++) {
      double squares = Side.of(y, 0, t).flatSquares() + Side.of(y, t, n).squares();
      if (squares < least) {
        least = squares;
        best = t;
      }
    }
    Side first = Side.of(y, 0, best);
    Side then = Side.of(y, best, n);
    double sd = Math.sqrt(least / (n - 1 - then.parameters()));
    return new LevelBreak(
        best,
        first.mean(),
        sd / Math.sqrt(first.count()),
        then.mean() - first.mean(),
        sd * Math.sqrt(1.0 / first.count() + 1.0 / then.count()),
        then.end(),
        sd * then.endLeverage());
  }

  /** Mean from a place on, less the mean before it. */
  public static double step(double[] y, int before) {
    return Side.of(y, before, y.length).mean() - Side.of(y, 0, before).mean();
  }

  /** Sums over one side of a break, about the middle of its places. */
  private record Side(int count, double mean, double flatSquares, double across, double along) {

    static Side of(double[] y, int from, int to) {
      int n = to - from;
      double mean = 0;
      for (int i = from; i < to; i++) {
        mean += y[i] / n;
      }
      double squares = 0;
      double across = 0;
      double along = 0;
      for (int i = from; i < to; i++) {
        double x = i - (from + to - 1) / 2.0;
        squares += (y[i] - mean) * (y[i] - mean);
        across += x * (y[i] - mean);
        along += x * x;
      }
      return new Side(n, mean, squares, across, along);
    }

    boolean isLine() {
      return count >= FEWEST_FOR_A_LINE;
    }

    int parameters() {
      return isLine() ? 2 : 1;
    }

    double squares() {
      return isLine() ? Math.max(0, flatSquares - across * across / along) : flatSquares;
    }

    double end() {
      return isLine() ? mean + across / along * (count - 1) / 2.0 : mean;
    }

    double endLeverage() {
      double last = (count - 1) / 2.0;
      return Math.sqrt(1.0 / count + (isLine() ? last * last / along : 0));
    }
  }
}
