package sagbook.simulate;

import java.util.Arrays;

/** What the house asks and the sun offers over one day, as steps. Currents for a 280 Ah string. */
final class DayPlan {
  private static final int SECONDS = 86_400;

  private final float[] loadA = new float[SECONDS];
  private final float[] supplyA = new float[SECONDS];
  private final float[] reserve = new float[SECONDS];
  private int[] changes = new int[512];
  private int count;

  /** Adds a load from a second of the day on. What runs past midnight is cut. */
  void addLoad(double amps, double from, double seconds) {
    add(loadA, amps, from, seconds);
  }

  void addSupply(double amps, double from, double seconds) {
    add(supplyA, amps, from, seconds);
  }

  /** Holds back this share of the charge for the stretch, instead of what was set before. */
  void setReserve(double share, double from, double seconds) {
    int first = second(from);
    int last = second(from + seconds);
    Arrays.fill(reserve, first, last, (float) share);
    mark(first);
    mark(last);
  }

  private void add(float[] to, double amps, double from, double seconds) {
    int first = second(from);
    int last = second(from + seconds);
    for (int s = first; s < last; s++) {
      to[s] += (float) amps;
    }
    mark(first);
    mark(last);
  }

  private static int second(double at) {
    return (int) Math.max(0, Math.min(SECONDS, Math.floor(at)));
  }

  private void mark(int second) {
    if (count == changes.length) {
      changes = Arrays.copyOf(changes, 2 * count);
    }
    changes[count++] = second;
  }

  /** Puts the changes in order; asked once all is added. */
  DayPlan closed() {
    Arrays.sort(changes, 0, count);
    return this;
  }

  /** First second after this one at which something changes; 86,400 when nothing does any more. */
  int nextChangeAfter(int second) {
    int low = 0;
    int high = count;
    while (low < high) {
      int middle = (low + high) >>> 1;
      if (changes[middle] <= second) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low < count ? Math.min(SECONDS, changes[low]) : SECONDS;
  }

  double loadA(int second) {
    return loadA[second];
  }

  double supplyA(int second) {
    return supplyA[second];
  }

  double reserve(int second) {
    return reserve[second];
  }
}
