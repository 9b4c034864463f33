package sagbook.simulate;

import sagbook.model.Chemistry;

/**
 * Two electrodes put together. At a fraction z of the design charge the negative holds {@code x =
 * xEmpty + z xSpan} of its lithium sites and the positive {@code y = yEmpty - z ySpan}; z may run a
 * little beyond 0 and 1.
 */
public enum Electrodes {
  /**
   * Closest of the LFP pairs to a measured open-circuit table. The window is the project's own, not
   * the paper's.
   */
  LFP_SAFARI(
      Chemistry.LFP, HalfCell.LFP_SAFARI, HalfCell.GRAPHITE_SAFARI, 0.010, 0.800, 0.980, 0.960),
  /** A second LFP curve, lower and with other steps. The window is the project's own. */
  LFP_AFSHAR(
      Chemistry.LFP, HalfCell.LFP_AFSHAR, HalfCell.GRAPHITE_CHEN, 0.010, 0.840, 0.980, 0.978),
  /** Window from 2.5 to 4.2 V of the cell in Chen et al. 2020. */
  NMC_CHEN(
      Chemistry.NMC, HalfCell.NMC_CHEN, HalfCell.GRAPHITE_CHEN, 0.02635, 0.88427, 0.85397, 0.59012);

  private final Chemistry chemistry;
  private final HalfCell positive;
  private final HalfCell negative;
  private final double xEmpty;
  private final double xSpan;
  private final double yEmpty;
  private final double ySpan;

  Electrodes(
      Chemistry chemistry,
      HalfCell positive,
      HalfCell negative,
      double xEmpty,
      double xSpan,
      double yEmpty,
      double ySpan) {
    this.chemistry = chemistry;
    this.positive = positive;
    this.negative = negative;
    this.xEmpty = xEmpty;
    this.xSpan = xSpan;
    this.yEmpty = yEmpty;
    this.ySpan = ySpan;
  }

  public Chemistry chemistry() {
    return chemistry;
  }

  HalfCell positive() {
    return positive;
  }

  HalfCell negative() {
    return negative;
  }

  double lithiumInNegative(double z) {
    return xEmpty + z * xSpan;
  }

  double lithiumInPositive(double z) {
    return yEmpty - z * ySpan;
  }
}
