package sagbook.logfile;

import java.util.Arrays;

/**
 * Keeps every value, then every second, every fourth and so on, so that a median of any number of
 * values takes bounded memory and the same input always gives the same result.
 */
final class Thinned {
  private static final int MOST = 4096;

  private final double[] kept = new double[MOST];
  private int count;
  private long seen;
  private long stride = 1;

  void add(double value) {
    if (seen++ % stride != 0) {
      return;
    }
    if (count == MOST) {
      for (int i = 0; i < MOST / 2; i++) {
        kept[i] = kept[2 * i];
      }
      count = MOST / 2;
      stride *= 2;
      if ((seen - 1) % stride != 0) {
        return;
      }
    }
    kept[count++] = value;
  }

  /** NaN when there are no values. */
  double median() {
    return quantile(0.5);
  }

  /** The value below which a share of the values lies; NaN when there are none. */
  double quantile(double share) {
    double[] sorted = Arrays.copyOf(kept, count);
    Arrays.sort(sorted);
    return count == 0 ? Double.NaN : sorted[(int) Math.min(count - 1, Math.floor(share * count))];
  }
}
