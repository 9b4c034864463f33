package sagbook.estimate.capacity;

/**
 * How much smaller than its neighbours a cell is, where the log shows that badly: most cells of a
 * string are as large as the rest give or take a little, few have lost a lot, and what the log
 * shows is weighed against both (Bayes' rule for a mixture of two normal distributions about
 * nothing lost).
 *
 * @param lossAh likely loss, Ah
 * @param sdAh its standard deviation, Ah
 */
record LikelySize(double lossAh, double sdAh) {
  /** Spread of healthy cells of one batch, as a share of capacity. Common practice, no source. */
  private static final double ALIKE = 0.012;

  /** The same for the rest. Common practice, no source. */
  private static final double WORN = 0.1;

  /** How many cells are healthy. Common practice, no source. */
  private static final double USUALLY = 0.9;

  /**
   * Weighs what was seen.
   *
   * @param seenAh loss as the log shows it, Ah
   * @param sdAh its standard deviation, Ah
   * @param capacityAh capacity of a usual cell, Ah
   */
  static LikelySize of(double seenAh, double sdAh, double capacityAh) {
    double alikeAh = ALIKE * capacityAh;
    double wornAh = WORN * capacityAh;
    double healthy = USUALLY * density(seenAh, Math.hypot(sdAh, alikeAh));
    double worn = (1 - USUALLY) * density(seenAh, Math.hypot(sdAh, wornAh));
    double share = healthy + worn > 0 ? healthy / (healthy + worn) : 0;
    double ifHealthy = seenAh * believed(sdAh, alikeAh);
    double ifWorn = seenAh * believed(sdAh, wornAh);
    double loss = share * ifHealthy + (1 - share) * ifWorn;
    double variance =
        share * (alikeAh * alikeAh * (1 - believed(sdAh, alikeAh)) + sq(ifHealthy - loss))
            + (1 - share) * (wornAh * wornAh * (1 - believed(sdAh, wornAh)) + sq(ifWorn - loss));
    return new LikelySize(loss, Math.sqrt(variance));
  }

  /** Share of what was seen that holds against what is likely beforehand. */
  private static double believed(double sdAh, double likelyAh) {
    return sq(likelyAh) / (sq(likelyAh) + sq(sdAh));
  }

  private static double density(double x, double sd) {
    return Math.exp(-0.5 * sq(x / sd)) / sd;
  }

  private static double sq(double x) {
    return x * x;
  }
}
