package sagbook.estimate.resistance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import sagbook.estimate.response.ReducedWindow;

class WindowSizesTest {
  private static final int DAYS = 2;

  private static WindowSizes sizes(double charge) {
    List<ReducedWindow> windows = Windows.ofDays(DAYS, h -> 20, h -> h % 24 < 12 ? 1.3 : 0.8);
    double[] charges = new double[windows.size()];
    Arrays.fill(charges, charge);
    return WindowSizes.of(windows, Windows.response(), charges);
  }

  /**
   * Forty rows of 46 A and 0.2 mV noise on four cells tell 0.25 mΩ to 0.14 %, by hand; were each
   * part of the response free in each window, to 1 %.
   */
  @Test
  void allWindowsShareOneShapeAndSoTellTheirSizeWell() {
    WindowSizes sizes = sizes(0.5);
    assertEquals(12 * DAYS, sizes.count());
    for (int i = 0; i < sizes.count(); i++) {
      assertEquals(Math.log(sizes.stretchOfDay()[i] < 6 ? 1.3 : 0.8), sizes.log()[i], 0.008);
      assertTrue(sizes.sd()[i] < 0.0025, "sd " + sizes.sd()[i]);
    }
  }

  /** A load that comes and goes between two rows: all cells answer less than the rows say. */
  @Test
  void aWindowWhoseRowsMissWhatTheLoadDidCountsLess() {
    SplittableRandom random = new SplittableRandom(5);
    double[] missed = random.doubles(Windows.WINDOWS * Windows.ROWS, -0.5, 0).toArray();
    int[] row = new int[1];
    List<ReducedWindow> windows =
        Windows.of(
            Windows.ones(4),
            new double[4],
            (w, c, a) -> {
              int r = c == 0 ? row[0]++ : row[0] - 1;
              return w % 3 == 0 ? missed[r] * a * Windows.response().at(100) : 0;
            });
    double[] charge = new double[windows.size()];
    Arrays.fill(charge, 0.5);
    WindowSizes sizes = WindowSizes.of(windows, Windows.response(), charge);
    assertEquals(Windows.WINDOWS, sizes.count());
    for (int i = 0; i < sizes.count(); i++) {
      if (sizes.window()[i] % 3 == 0) {
        assertTrue(sizes.log()[i] < -0.1, "size " + sizes.log()[i]);
        assertTrue(sizes.sd()[i] > 0.015, "sd " + sizes.sd()[i]);
      } else {
        assertTrue(sizes.sd()[i] < 0.0025, "sd " + sizes.sd()[i]);
      }
    }
  }

  @Test
  void windowsNearEmptyOrFullAreNoneOfMidCharge() {
    assertEquals(0, sizes(0.15).count());
    assertEquals(0, sizes(0.95).count());
    assertEquals(12 * DAYS, sizes(Double.NaN).count());
  }
}
