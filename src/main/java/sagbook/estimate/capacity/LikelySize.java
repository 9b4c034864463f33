package sagbook.estimate.capacity;

/**
 * How much smaller than its neighbours a cell is, where the log shows that badly: most cells of a
 * string are as large as the rest give or take a little, few have lost a lot, none has grown, and a
 * cell that was not seen on the knee at the end of charge can't have lost more than would have
 * brought it there. What the log shows is weighed against all that (Bayes' rule, a mixture of two
 * normal distributions about nothing lost, summed over a grid).
 *
 * @param lossAh likely loss, Ah
 * @param sdAh its standard deviation, Ah
 */
record LikelySize(double lossAh, double sdAh) {
  /** Spread of healthy cells of one batch, as a share of capacity. Common practice, no source. */
  static final double ALIKE = 0.012;

  /** The same for the rest. Common practice, no source. */
  private static final double WORN = 0.1;

  /** How many cells are healthy. Common practice, no source. */
  private static final double USUALLY = 0.9;

  /** What the grid spans, as a share of capacity. */
  private static final double FURTHEST = 0.4;

  private static final int PLACES = 400;

  /**
   * Weighs what was seen.
   *
   * @param seenAh loss as the log shows it, Ah
   * @param sdAh its standard deviation, Ah
   * @param mostAh the most that it can have lost, Ah; infinite when nothing speaks against more
   * @param capacityAh capacity of a usual cell, Ah
   */
  static LikelySize of(double seenAh, double sdAh, double mostAh, double capacityAh) {
    // What is seen more sharply than a cell of the grid needs no weighing.
    double cellAh = 2 * FURTHEST * capacityAh / PLACES;
    if (sdAh < 1.5 * cellAh) {
      return new LikelySize(seenAh, sdAh);
    }
    double weights = 0;
    double sum = 0;
    double squares = 0;
    for (int i = 0; i < PLACES; i++) {
      double loss = -FURTHEST * capacityAh + (i + 0.5) * cellAh;
      if (loss <= mostAh) {
        double prior =
            USUALLY * density(loss, ALIKE * capacityAh)
                + (loss > 0 ? 2 * (1 - USUALLY) * density(loss, WORN * capacityAh) : 0);
        double weight = prior * density(loss - seenAh, sdAh);
        weights += weight;
        sum += weight * loss;
        squares += weight * loss * loss;
      }
    }
    if (!(weights > 0)) {
      return new LikelySize(seenAh, sdAh);
    }
    double mean = sum / weights;
    return new LikelySize(mean, Math.sqrt(Math.max(0, squares / weights - mean * mean)));
  }

  private static double density(double x, double sd) {
    double z = x / sd;
    return Math.exp(-0.5 * z * z) / sd;
  }
}
