package sagbook.estimate.capacity;

import sagbook.estimate.curve.ElectrodePair;

/**
 * The published graphite of a cell, laid along a charge axis.
 *
 * @param of whose it is
 * @param begin place at which it holds no lithium, as a share of nominal capacity
 * @param size charge it can hold, as a share of nominal capacity
 */
record LaidGraphite(ElectrodePair of, double begin, double size) {
  /** Published functions mean nothing far beyond an electrode without lithium. */
  private static final double LEAST_LITHIUM = -0.02;

  /** Nor beyond a full one. */
  private static final double MOST_LITHIUM = 1.1;

  /**
   * The graphite of a usual new cell.
   *
   * @param full where that is full, as a share of nominal capacity
   */
  static LaidGraphite usual(ElectrodePair of, double full) {
    double size = of.negativeSize();
    return new LaidGraphite(of, full - 1 - of.emptyNegative() * size, size);
  }

  /** The same graphite elsewhere, and so much larger. */
  LaidGraphite moved(double by, double larger) {
    return new LaidGraphite(of, begin + by, size * (1 + larger));
  }

  /** Where it holds as little lithium as that of an empty new cell. */
  double empty() {
    return begin + of.emptyNegative() * size;
  }

  /** Its potential against lithium at a place, V. */
  double volt(double place) {
    double lithium = (place - begin) / size;
    return of.negative(Math.max(LEAST_LITHIUM, Math.min(MOST_LITHIUM, lithium)));
  }
}
