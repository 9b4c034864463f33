package sagbook.align;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import sagbook.numeric.Uncertainty;

/**
 * How far two clocks are apart.
 *
 * <p>All differences of a voltage step's and a current step's time are sorted into bins, each
 * counted +1 when the steps have the same sign and -1 otherwise. Steps that belong together pile up
 * in one bin, the others cancel. The differences around that bin, trimmed, are then fitted by a
 * straight line in time: its value is the offset, its slope the drift.
 *
 * <p>It breaks down when there are fewer than {@value #LEAST_PAIRS} common steps, when the steps
 * repeat with a fixed period, or when the drift over the log exceeds about a minute.
 *
 * @param offsetS what to add to the second clock to get the first, at {@code atS}
 * @param driftPerS change of the offset a second
 * @param atS moment to which the offset belongs, by the second clock
 * @param halfWidthS half the width of the 95 % interval of the offset
 * @param pairs steps that it rests on
 * @param sign 1 when both quantities step the same way, else -1
 */
public record ClockOffset(
    double offsetS, double driftPerS, double atS, double halfWidthS, int pairs, int sign) {
  private static final int LEAST_PAIRS = 10;

  /** Clocks in the wrong zone are up to 14 h off. */
  private static final double MOST_OFFSET_S = 14 * 3600.0;

  private static final double LEAST_BIN_S = 10;
  private static final double LEAST_PROMINENCE = 8;
  private static final double LEAST_SPAN_FOR_DRIFT_S = 3 * 86_400.0;

  /** What to add to a time of the second clock to get the first. */
  public double correction(double timeS) {
    return offsetS + driftPerS * (timeS - atS);
  }

  /**
   * Compares two clocks.
   *
   * @param first steps by the first clock
   * @param second steps by the second clock
   * @param cadenceS the slower of the two logs' usual time between rows
   * @return empty when the steps do not tell
   */
  public static Optional<ClockOffset> between(EdgeTrain first, EdgeTrain second, double cadenceS) {
    double bin = Math.max(LEAST_BIN_S, 2 * cadenceS);
    int half = (int) Math.ceil(MOST_OFFSET_S / bin);
    double[] score = new double[2 * half + 1];
    forEachPair(
        first,
        second,
        MOST_OFFSET_S,
        (difference, at, product) ->
            score[half + (int) Math.round(difference / bin)] += Math.signum(product));
    int peak = peak(score);
    double height = smooth(score, peak);
    if (!(Math.abs(height) >= Math.max(LEAST_PAIRS, LEAST_PROMINENCE * spread(score)))) {
      return Optional.empty();
    }
    return fit(first, second, (peak - half) * bin, 2 * bin, (int) Math.signum(height));
  }

  @FunctionalInterface
  private interface PairTaker {
    void take(double difference, double at, double product);
  }

  private static void forEachPair(EdgeTrain first, EdgeTrain second, double most, PairTaker taker) {
    int from = 0;
    for (int i = 0; i < second.size(); i++) {
      double at = second.timeS()[i];
      while (from < first.size() && first.timeS()[from] < at - most) {
        from++;
      }
      for (int j = from; j < first.size() && first.timeS()[j] <= at + most; j++) {
        taker.take(first.timeS()[j] - at, at, first.step()[j] * second.step()[i]);
      }
    }
  }

  private static double smooth(double[] score, int at) {
    double sum = score[at];
    sum += at > 0 ? score[at - 1] : 0;
    sum += at + 1 < score.length ? score[at + 1] : 0;
    return sum;
  }

  private static int peak(double[] score) {
    int best = score.length / 2;
    for (int i = 0; i < score.length; i++) {
      if (Math.abs(smooth(score, i)) > Math.abs(smooth(score, best))) {
        best = i;
      }
    }
    return best;
  }

  /** Median size of the smoothed scores that are not 0, as a measure of chance. */
  private static double spread(double[] score) {
    double[] sizes = new double[score.length];
    int count = 0;
    for (int i = 0; i < score.length; i++) {
      double size = Math.abs(smooth(score, i));
      if (size > 0) {
        sizes[count++] = size;
      }
    }
    Arrays.sort(sizes, 0, count);
    return count == 0 ? 0 : sizes[count / 2];
  }

  private record Pair(double at, double difference) {}

  private static Optional<ClockOffset> fit(
      EdgeTrain first, EdgeTrain second, double centre, double window, int sign) {
    List<Pair> pairs = new ArrayList<>();
    forEachPair(
        first,
        second,
        Math.abs(centre) + window,
        (difference, at, product) -> {
          if (product * sign > 0 && Math.abs(difference - centre) <= window) {
            pairs.add(new Pair(at, difference));
          }
        });
    if (pairs.size() < LEAST_PAIRS) {
      return Optional.empty();
    }
    double at = pairs.stream().mapToDouble(Pair::at).average().orElse(0);
    double level = median(pairs.stream().mapToDouble(Pair::difference).toArray());
    double slope = 0;
    double[] residuals = residuals(pairs, at, level, slope);
    for (int round = 0; round < 5; round++) {
      double limit = Math.max(1e-3, 3 * 1.4826 * median(sizes(residuals)));
      double[] line = line(pairs, residuals, limit, at);
      level = line[0];
      slope = line[1];
      residuals = residuals(pairs, at, level, slope);
    }
    double scatter = 1.4826 * median(sizes(residuals));
    double halfWidth =
        new Uncertainty(scatter / Math.sqrt(pairs.size()), pairs.size() - 2).halfWidth(0.95);
    return Optional.of(new ClockOffset(level, slope, at, halfWidth, pairs.size(), sign));
  }

  private static double[] residuals(List<Pair> pairs, double at, double level, double slope) {
    return pairs.stream().mapToDouble(p -> p.difference - level - slope * (p.at - at)).toArray();
  }

  /** Least-squares line through the pairs whose residual is within the limit: level and slope. */
  private static double[] line(List<Pair> pairs, double[] residuals, double limit, double at) {
    double n = 0;
    double sumX = 0;
    double sumY = 0;
    double sumXx = 0;
    double sumXy = 0;
    double least = Double.POSITIVE_INFINITY;
    double most = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < residuals.length; i++) {
      if (Math.abs(residuals[i]) <= limit) {
        double x = pairs.get(i).at - at;
        double y = pairs.get(i).difference;
        n++;
        sumX += x;
        sumY += y;
        sumXx += x * x;
        sumXy += x * y;
        least = Math.min(least, x);
        most = Math.max(most, x);
      }
    }
    double spreadX = sumXx - sumX * sumX / n;
    boolean sloped = most - least >= LEAST_SPAN_FOR_DRIFT_S && n >= 2 * LEAST_PAIRS;
    double slope = sloped && spreadX > 0 ? (sumXy - sumX * sumY / n) / spreadX : 0;
    return new double[] {(sumY - slope * sumX) / n, slope};
  }

  private static double[] sizes(double[] values) {
    return Arrays.stream(values).map(Math::abs).toArray();
  }

  private static double median(double[] values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    return sorted[sorted.length / 2];
  }
}
