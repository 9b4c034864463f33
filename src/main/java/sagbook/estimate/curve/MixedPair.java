package sagbook.estimate.curve;

import sagbook.model.Chemistry;

/**
 * One publication's positive electrode against another's negative one: makers combine them freely.
 *
 * @param ofPositive whose positive electrode it is
 * @param ofNegative whose negative electrode it is
 */
public record MixedPair(ElectrodePair ofPositive, ElectrodePair ofNegative)
    implements ElectrodePair {
  @Override
  public double positive(double y) {
    return ofPositive.positive(y);
  }

  @Override
  public double negative(double x) {
    return ofNegative.negative(x);
  }

  @Override
  public double positiveSize() {
    return ofPositive.positiveSize();
  }

  @Override
  public double negativeSize() {
    return ofNegative.negativeSize();
  }

  @Override
  public double fullPositive() {
    return ofPositive.fullPositive();
  }

  @Override
  public double emptyNegative() {
    return ofNegative.emptyNegative();
  }

  @Override
  public Chemistry chemistry() {
    return ofPositive.chemistry();
  }
}
