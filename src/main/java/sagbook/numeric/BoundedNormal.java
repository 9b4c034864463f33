package sagbook.numeric;

import org.hipparchus.distribution.continuous.NormalDistribution;

/**
 * A normal distribution of which everything below a bound is ruled out (Bayes' rule with a bound
 * for a prior).
 *
 * @param mean of the unbounded distribution
 * @param sd of the unbounded distribution, above 0
 * @param least the bound; minus infinity for none
 */
public record BoundedNormal(double mean, double sd, double least) {
  private static final NormalDistribution NORMAL = new NormalDistribution();

  /** A bound further out than this is met by nothing but the bound itself. */
  private static final double FURTHEST_SDS = 8;

  /**
   * Value that a share {@code p} of the distribution lies below.
   *
   * @param p above 0, below 1
   */
  public double quantile(double p) {
    double bound = (least - mean) / sd;
    if (bound > FURTHEST_SDS) {
      return least;
    }
    // By the upper tail, which keeps its digits far out.
    double above = NORMAL.cumulativeProbability(-bound);
    return mean - sd * NORMAL.inverseCumulativeProbability((1 - p) * above);
  }
}
