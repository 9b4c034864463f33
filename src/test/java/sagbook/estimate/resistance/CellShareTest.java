package sagbook.estimate.resistance;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import sagbook.estimate.response.ReducedWindow;
import sagbook.estimate.response.StringResponse;

class CellShareTest {
  private static final int CELLS = 6;
  private static final int JOINT = 3;

  /**
   * Shares where all cells answer by so much more than at 25 °C, and one joint as it always does.
   */
  private static List<CellShare> shares(double cold, double joint, double noiseV) {
    double[] share = new double[CELLS];
    Arrays.fill(share, cold);
    double[] jointOhm = new double[CELLS];
    jointOhm[JOINT] = joint * Windows.response().at(Windows.PULSE_S);
    List<ReducedWindow> windows = Windows.of(share, jointOhm, (w, c, a) -> 0);
    double[] scale = new double[windows.size()];
    Arrays.fill(scale, cold);
    UsedWindows used = UsedWindows.ofCurrent(windows, scale, Windows.response());
    StringResponse clear = Windows.response();
    StringResponse response =
        new StringResponse(clear.basis(), clear.coefficients(), noiseV, clear.rows());
    boolean[] trusted = new boolean[CELLS];
    Arrays.fill(trusted, true);
    CellShare.AtOnePlace law =
        new CellShare.AtOnePlace(
            CellWarmth.of(used, trusted),
            ReferenceConditions.PRIOR_KILOJOULE,
            ReferenceConditions.PRIOR_SD_KILOJOULE,
            0,
            new double[CELLS]);
    CellComparison compared = CellComparison.of(used, response, Windows.PULSE_S);
    return CellShare.all(used, response, Windows.PULSE_S, compared, law);
  }

  /**
   * In the cold a joint counts for half as much; held small it passes for a resistive cell, and
   * half of it is lost on the way to 25 °C.
   */
  @Test
  void aJointHeldSmallInTheColdIsKeptInTheRange() {
    for (double truth : new double[] {1.15, 1.3}) {
      for (double noiseV : new double[] {1e-3, 2e-3, 4e-3}) {
        CellShare joint = shares(2, truth - 1, noiseV).get(JOINT);
        assertTrue(Math.abs(truth - joint.relative()) < 2 * joint.relativeSd(), joint.toString());
      }
    }
  }
}
