package sagbook.estimate.resistance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import sagbook.estimate.response.ReducedWindow;
import sagbook.estimate.response.StringResponse;

class CellComparisonTest {
  private static final double[] SHARE = {1, 1.1, 0.9, 1, 1, 1};
  private static final double[] JOINT = {0, 0, 0, 5e-5, 0, 0};

  private static CellComparison compared(List<ReducedWindow> windows) {
    StringResponse response = Windows.response();
    UsedWindows used = UsedWindows.ofCurrent(windows, Windows.ones(windows.size()), Windows.BASIS);
    return CellComparison.of(used, response, Windows.PULSE_S);
  }

  @Test
  void aWornCellScalesAndAJointAddsAtOnce() {
    CellComparison compared = compared(Windows.of(SHARE, JOINT, (w, c, a) -> 0));
    double ohm = Windows.response().at(Windows.PULSE_S);
    double median = compared.whole()[4];
    assertEquals(1.1, compared.slow()[1] / compared.slow()[4], 0.01);
    assertEquals(0, compared.ohmic()[1] - compared.ohmic()[4], 0.01);
    assertEquals(1, compared.slow()[3] / compared.slow()[4], 0.01);
    assertEquals(5e-5 / ohm, compared.ohmic()[3] - compared.ohmic()[4], 0.01);
    assertEquals(1 + 5e-5 / ohm, compared.whole()[3] / median, 0.01);
  }

  @Test
  void whatAllCellsShowInAWindowGoesOut() {
    CellComparison quiet = compared(Windows.of(SHARE, JOINT, (w, c, a) -> 0));
    CellComparison stormy = compared(Windows.of(SHARE, JOINT, (w, c, a) -> 2e-4 * Math.sin(w) * a));
    for (int c = 0; c < SHARE.length; c++) {
      assertEquals(quiet.whole()[c], stormy.whole()[c], 1e-9);
      assertEquals(quiet.wholeSd()[c], stormy.wholeSd()[c], 1e-9);
    }
  }

  @Test
  void whatAllCellsShowMakesTheStringItselfLessSure() {
    CellComparison quiet = compared(Windows.of(SHARE, JOINT, (w, c, a) -> 0));
    CellComparison stormy = compared(Windows.of(SHARE, JOINT, (w, c, a) -> 2e-4 * Math.sin(w) * a));
    assertTrue(stormy.stringSd() > 5 * quiet.stringSd());
  }

  /** Boards are read one after another, and by then the slow parts have grown. */
  @Test
  void aCellThatIsReadLateIsNotTakenForAResistiveOne() {
    double[] one = Windows.ones(6);
    List<ReducedWindow> windows = Windows.of(one, new double[6], (w, c, a) -> 0);
    CellComparison compared = compared(Windows.readLate(windows, -1, -0.6, -0.2, 0.2, 0.6, 1));
    for (int c = 0; c < 6; c++) {
      assertEquals(1, compared.whole()[c], 0.006);
      assertEquals(0, compared.ohmic()[c], 0.01);
    }
  }

  /** What looks so is a cell on another part of its curve. */
  @Test
  void noJointTakesAnythingAway() {
    double ohm = Windows.response().at(Windows.PULSE_S);
    double[] share = {1, 1, 1, 1, 1, 1.5};
    double[] joint = {0, 0, 0, 0, 0, -0.5 * ohm};
    CellComparison compared = compared(Windows.of(share, joint, (w, c, a) -> 0));
    assertTrue(compared.ohmic()[5] - compared.ohmic()[0] > -0.25, "" + compared.ohmic()[5]);
    assertEquals(1, compared.whole()[5] / compared.whole()[0], 0.15);
  }

  @Test
  void jointsAreHeldAlikeWhereRowsTellLittleOfThem() {
    for (double ohmic : told(0.1, JOINT).ohmic()) {
      assertEquals(0, ohmic, 0.01);
    }
  }

  /**
   * What joints of 0.03 and 0.3 add in one of six cells is 0.025 and 0.25 over the mean of all, and
   * rows of 1 mV noise tell it to 0.02. By hand, with joints that scatter as Student's t of one
   * degree of freedom and a scale of 0.05, 0.0196 and 0.247 are left.
   */
  @Test
  void ofASmallJointSomeIsTakenForChanceAndOfALargeOneNextToNothing() {
    double ohm = Windows.response().at(Windows.PULSE_S);
    assertEquals(0.0196, told(1e-3, new double[] {0, 0, 0, 0.03 * ohm, 0, 0}).ohmic()[3], 0.004);
    assertEquals(0.247, told(1e-3, new double[] {0, 0, 0, 0.3 * ohm, 0, 0}).ohmic()[3], 0.005);
  }

  private static CellComparison told(double noiseV, double[] joint) {
    StringResponse clear = Windows.response();
    StringResponse vague =
        new StringResponse(clear.basis(), clear.coefficients(), noiseV, clear.rows());
    List<ReducedWindow> windows = Windows.of(Windows.ones(6), joint, (w, c, a) -> 0);
    UsedWindows used = UsedWindows.ofCurrent(windows, Windows.ones(windows.size()), Windows.BASIS);
    return CellComparison.of(used, vague, Windows.PULSE_S);
  }
}
