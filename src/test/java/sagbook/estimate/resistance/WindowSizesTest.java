package sagbook.estimate.resistance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
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

  @Test
  void windowsNearEmptyOrFullAreNoneOfMidCharge() {
    assertEquals(0, sizes(0.15).count());
    assertEquals(0, sizes(0.95).count());
    assertEquals(12 * DAYS, sizes(Double.NaN).count());
  }
}
