package sagbook.simulate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class NoiseTest {
  /** First outputs of SplitMix64 for seed 1234567, as widely published; from memory. */
  @Test
  void restsOnSplitMix64() {
    SplittableRandom random = new SplittableRandom(1234567);
    assertEquals("6457827717110365317", Long.toUnsignedString(random.nextLong()));
    assertEquals("3203168211198807973", Long.toUnsignedString(random.nextLong()));
    assertEquals("9817491932198370423", Long.toUnsignedString(random.nextLong()));
  }

  @Test
  void isCloseToNormal() {
    Noise noise = new Noise(1);
    int n = 400_000;
    double sum = 0;
    double squares = 0;
    int beyond = 0;
    for (int i = 0; i < n; i++) {
      double x = noise.normal();
      sum += x;
      squares += x * x;
      beyond += Math.abs(x) > 1.96 ? 1 : 0;
    }
    assertEquals(0, sum / n, 0.006);
    assertEquals(1, squares / n, 0.01);
    assertEquals(0.05, (double) beyond / n, 0.004);
  }

  @Test
  void drawsTheSameForAPlaceWhateverElseWasDrawn() {
    double alone = Noise.of(5, 2, 3).even();
    Noise other = Noise.of(5, 2, 4);
    assertTrue(other.even() != alone);
    assertEquals(alone, Noise.of(5, 2, 3).even());
  }
}
