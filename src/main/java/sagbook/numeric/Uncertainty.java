package sagbook.numeric;

import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.distribution.continuous.TDistribution;

/**
 * A standard uncertainty and how well it is known itself.
 *
 * <p>What was found from a few values is known only roughly, and an interval of 1.96 times it holds
 * the truth less often than it says: with ten values 92 times of a hundred. Student's t widens it
 * to what is right.
 *
 * <p>Source: JCGM 100:2008, annex G. Independent uncertainties add by their squares; their degrees
 * of freedom combine by Welch and Satterthwaite, {@code nu = u⁴ / sum(u_i⁴ / nu_i)} (G.2b).
 *
 * @param standard one standard deviation, 0 or more, in the unit of what it belongs to
 * @param degreesOfFreedom 1 or more; infinite where the standard deviation is taken as known
 */
public record Uncertainty(double standard, double degreesOfFreedom) {
  public Uncertainty {
    if (!(standard >= 0) || !(degreesOfFreedom >= 1)) {
      throw new IllegalArgumentException(
          "an uncertainty needs a deviation of 0 or more and a degree of freedom or more; got "
              + standard
              + ", "
              + degreesOfFreedom);
    }
  }

  /** One that is taken as known, such as a manufacturer's or one from thousands of samples. */
  public static Uncertainty known(double standard) {
    return new Uncertainty(standard, Double.POSITIVE_INFINITY);
  }

  /** Together with an independent one. */
  public Uncertainty plus(Uncertainty other) {
    double both = Math.hypot(standard, other.standard);
    double roughness = share(both) / degreesOfFreedom + other.share(both) / other.degreesOfFreedom;
    return new Uncertainty(both, roughness > 0 ? 1 / roughness : Double.POSITIVE_INFINITY);
  }

  private double share(double whole) {
    return whole == 0 ? 0 : Math.pow(standard / whole, 4);
  }

  /** That of a multiple. */
  public Uncertainty times(double factor) {
    return new Uncertainty(Math.abs(factor) * standard, degreesOfFreedom);
  }

  /**
   * Half the width of the interval that holds the truth in a share of cases, from as many whole
   * degrees of freedom as there are (G.4.1).
   *
   * @param level of the interval, such as 0.95
   */
  public double halfWidth(double level) {
    double upper = (1 + level) / 2;
    double factor =
        Double.isInfinite(degreesOfFreedom)
            ? new NormalDistribution().inverseCumulativeProbability(upper)
            : new TDistribution(Math.floor(degreesOfFreedom)).inverseCumulativeProbability(upper);
    return factor * standard;
  }
}
