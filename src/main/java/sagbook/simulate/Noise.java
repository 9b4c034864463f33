package sagbook.simulate;

import java.util.SplittableRandom;

/** Random numbers that are the same on every machine. */
final class Noise {
  private final SplittableRandom random;

  Noise(long seed) {
    this.random = new SplittableRandom(seed);
  }

  /** A generator of its own for one purpose and place, whatever others have drawn. */
  static Noise of(long seed, long purpose, long place) {
    SplittableRandom mixer = new SplittableRandom(seed + 0x9E3779B97F4A7C15L * purpose);
    return new Noise(mixer.nextLong() ^ new SplittableRandom(place).nextLong());
  }

  /** Even between 0 (inclusive) and 1 (exclusive). */
  double even() {
    return (random.nextLong() >>> 11) * 0x1.0p-53;
  }

  double between(double low, double high) {
    return low + (high - low) * even();
  }

  boolean chance(double probability) {
    return even() < probability;
  }

  /**
   * About normal, mean 0, standard deviation 1: the sum of the eight bytes of a random long, scaled
   * (standard deviation sqrt(8 (256^2 - 1) / 12)). Excess kurtosis -0.15, never beyond 4.9.
   */
  double normal() {
    long pairs = random.nextLong();
    long sums = (pairs & 0x00FF00FF00FF00FFL) + ((pairs >>> 8) & 0x00FF00FF00FF00FFL);
    long sum = (sums + (sums >>> 16) + (sums >>> 32) + (sums >>> 48)) & 0xFFFF;
    return (sum - 1020) * (1 / 209.0223);
  }
}
