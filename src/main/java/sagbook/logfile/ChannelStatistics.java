package sagbook.logfile;

/**
 * What one channel's values show, gathered in one pass and bounded memory.
 *
 * <p>Resolution is the smallest difference seen between neighbouring values. Noise is the standard
 * deviation of a reading in quiet times: the median size of the differences between neighbours,
 * divided by 0.954 (the median size of a normal difference is 0.6745 times the root of 2 times the
 * deviation); 0 when most neighbours are equal.
 */
final class ChannelStatistics {
  private static final double MEDIAN_DIFFERENCE = 0.954;
  private static final double SAME = 1e-9;

  private final double movedEnough;
  private final Thinned differences = new Thinned();
  private long rows;
  private long valid;
  private double resolution = Double.NaN;
  private double last = Double.NaN;
  private double sinceS = Double.NaN;
  private double othersLeast = Double.NaN;
  private double othersMost = Double.NaN;
  private double stuckS;
  private double stuckFromS = Double.NaN;

  /** {@code movedEnough} is how far the others must have moved for a still value to be stuck. */
  ChannelStatistics(double movedEnough) {
    this.movedEnough = movedEnough;
  }

  /** Takes the channel's value in a row and the mean of its like; NaN when missing. */
  void add(double timeS, double value, double others) {
    rows++;
    if (Double.isNaN(value)) {
      return;
    }
    valid++;
    double difference = Math.abs(value - last);
    if (!Double.isNaN(difference)) {
      differences.add(difference);
    }
    if (difference > SAME) {
      resolution = difference < resolution || Double.isNaN(resolution) ? difference : resolution;
    }
    if (!(difference <= SAME)) {
      sinceS = timeS;
      othersLeast = others;
      othersMost = others;
    } else {
      stand(timeS, others);
    }
    last = value;
  }

  private void stand(double timeS, double others) {
    othersLeast = others < othersLeast || Double.isNaN(othersLeast) ? others : othersLeast;
    othersMost = others > othersMost || Double.isNaN(othersMost) ? others : othersMost;
    if (othersMost - othersLeast > movedEnough && timeS - sinceS > stuckS) {
      stuckS = timeS - sinceS;
      stuckFromS = sinceS;
    }
  }

  boolean isPresent() {
    return valid > 0;
  }

  double validShare() {
    return rows == 0 ? 0 : (double) valid / rows;
  }

  /** NaN when the value never changed. */
  double resolution() {
    return resolution;
  }

  double noise() {
    return differences.median() / MEDIAN_DIFFERENCE;
  }

  /** Longest time without any change while the others moved, s. */
  double stuckS() {
    return stuckS;
  }

  double stuckFromS() {
    return stuckFromS;
  }
}
