package sagbook.estimate.resistance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import sagbook.estimate.response.ReducedWindow;
import sagbook.estimate.response.StringResponse;

class UsedWindowsTest {
  private static final double[] SHARE = {1, 1.05, 0.95, 1, 1, 1};
  private static final double[] NO_JOINT = new double[SHARE.length];
  private static final StringResponse RESPONSE = Windows.response();
  private static final double OHM = RESPONSE.at(Windows.PULSE_S);

  private static UsedWindows weighed(List<ReducedWindow> windows) {
    return UsedWindows.ofCurrent(windows, Windows.ones(windows.size()), Windows.response())
        .weighed(RESPONSE, OHM);
  }

  @Test
  void aWindowInWhichCellsDepartEachInItsWayCountsLess() {
    // Windows 10 to 14: on the knee near full cells answer each by its own place on it.
    List<ReducedWindow> windows =
        Windows.of(SHARE, NO_JOINT, (w, c, a) -> w >= 10 && w < 15 ? 4e-4 * (c - 2.5) * a : 0);
    UsedWindows used = weighed(windows);
    for (int w = 0; w < used.size(); w++) {
      assertTrue((w >= 10 && w < 15) ? used.weight()[w] < 0.1 : used.weight()[w] > 0.4, "" + w);
    }
    CellComparison compared = CellComparison.of(used, RESPONSE, Windows.PULSE_S);
    assertEquals(1.05, compared.held().get(1).whole() / compared.held().get(3).whole(), 0.03);
  }

  @Test
  void aCellThatChangesOnItsOwnLowersNoWindow() {
    List<ReducedWindow> windows =
        Windows.of(SHARE, NO_JOINT, (w, c, a) -> w >= 30 && c == 4 ? 2e-4 * a : 0);
    UsedWindows used = weighed(windows);
    for (double weight : used.weight()) {
      assertTrue(weight > 0.4);
    }
  }

  /** Fully at once, and less by 0.35 long after; in the cold less by what the string has more. */
  @Test
  void withoutCurrentWhatAJointAddsFadesAndKnowsNoCold() {
    List<ReducedWindow> windows = Windows.ofDays(1, h -> h < 12 ? 25 : 5, h -> 1);
    UsedWindows used =
        UsedWindows.ofVoltage(windows, Windows.ones(windows.size()), Windows.BASIS, true);
    StringResponse itself =
        new StringResponse(Windows.BASIS, new double[] {1, 0, 0, 0, 0}, 1e-3, 100);
    assertEquals(1, used.drive().jointShare(itself, 0), 1e-12);
    assertEquals(0.65, used.drive().jointShare(itself, 1e5), 1e-12);
    double cold = Math.exp(16_000 / 8.314463 * (1 / 278.15 - 1 / 298.15));
    assertEquals(1, used.drive().parts(itself, 1, 0)[1][0], 1e-6);
    assertEquals(1 / cold, used.drive().parts(itself, 1, 11)[1][0], 1e-6);
    UsedWindows later = used.since(7200.0 * 6);
    assertEquals(1 / cold, later.drive().parts(itself, 1, 0)[1][0], 1e-6);
    assertTrue(
        later.drive().wholeSd(later.scale(), 0.5, 1.5)
            > used.drive().wholeSd(used.scale(), 0.5, 1.5));
  }

  @Test
  void aLaterStretchKeepsItsOwnWeights() {
    List<ReducedWindow> windows = Windows.of(SHARE, NO_JOINT, (w, c, a) -> 0);
    UsedWindows used = weighed(windows);
    UsedWindows later = used.since(7200.0 * 40);
    assertEquals(20, later.size());
    assertEquals(used.weight()[40], later.weight()[0]);
  }
}
