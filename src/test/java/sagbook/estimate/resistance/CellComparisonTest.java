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
    UsedWindows used =
        UsedWindows.ofCurrent(windows, Windows.ones(windows.size()), Windows.response());
    return CellComparison.of(used, response, Windows.PULSE_S);
  }

  @Test
  void aWornCellScalesAndAJointAddsAtOnce() {
    CellComparison compared = compared(Windows.of(SHARE, JOINT, (w, c, a) -> 0));
    double ohm = Windows.response().at(Windows.PULSE_S);
    double median = compared.held().get(4).whole();
    assertEquals(1.1, compared.held().get(1).slow() / compared.held().get(4).slow(), 0.01);
    assertEquals(0, compared.held().get(1).ohmic() - compared.held().get(4).ohmic(), 0.01);
    assertEquals(1, compared.held().get(3).slow() / compared.held().get(4).slow(), 0.01);
    assertEquals(5e-5 / ohm, compared.held().get(3).ohmic() - compared.held().get(4).ohmic(), 0.01);
    assertEquals(1 + 5e-5 / ohm, compared.held().get(3).whole() / median, 0.01);
  }

  @Test
  void whatAllCellsShowInAWindowGoesOut() {
    CellComparison quiet = compared(Windows.of(SHARE, JOINT, (w, c, a) -> 0));
    CellComparison stormy = compared(Windows.of(SHARE, JOINT, (w, c, a) -> 2e-4 * Math.sin(w) * a));
    for (int c = 0; c < SHARE.length; c++) {
      assertEquals(quiet.held().get(c).whole(), stormy.held().get(c).whole(), 1e-9);
      assertEquals(quiet.held().get(c).wholeSd(), stormy.held().get(c).wholeSd(), 1e-9);
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
      assertEquals(1, compared.held().get(c).whole(), 0.006);
      assertEquals(0, compared.held().get(c).ohmic(), 0.01);
    }
  }

  /** What looks so is a cell on another part of its curve. */
  @Test
  void noJointTakesAnythingAway() {
    double ohm = Windows.response().at(Windows.PULSE_S);
    double[] share = {1, 1, 1, 1, 1, 1.5};
    double[] joint = {0, 0, 0, 0, 0, -0.5 * ohm};
    CellComparison compared = compared(Windows.of(share, joint, (w, c, a) -> 0));
    assertTrue(
        compared.held().get(5).ohmic() - compared.held().get(0).ohmic() > -0.25,
        "" + compared.held().get(5).ohmic());
    assertEquals(1, compared.held().get(5).whole() / compared.held().get(0).whole(), 0.15);
  }

  @Test
  void jointsAreHeldAlikeWhereRowsTellLittleOfThem() {
    for (CellComparison.Parts cell : vague(0.1, SHARE, JOINT).held()) {
      assertEquals(0, cell.ohmic(), 0.01);
    }
  }

  /**
   * What joints of 0.03 and 0.3 add in one of six cells is 0.025 and 0.25 over the mean of all, and
   * rows of 1.5 mV noise tell it to 0.03. By hand, with joints that scatter as Student's t of one
   * degree of freedom and a scale of 0.05, 0.0151 and 0.243 are left; with ones let go as soon as
   * they show, 0.0206 and 0.249.
   */
  @Test
  void ofASmallJointSomeIsTakenForChanceAndOfALargeOneNextToNothing() {
    CellComparison small = oneJoint(1.5e-3, 0.03);
    CellComparison large = oneJoint(1.5e-3, 0.3);
    assertEquals(0.0151, small.held().get(3).ohmic(), 0.002);
    assertEquals(0.0206, small.told().get(3).ohmic(), 0.002);
    assertEquals(0.243, large.held().get(3).ohmic(), 0.003);
    assertEquals(0.249, large.told().get(3).ohmic(), 0.003);
  }

  /** Of six cells one joint adds 0.125 over the mean of all, told to 0.08. */
  @Test
  void aJointThatRowsHardlyTellIsHeldSmallButToldAlmostAsItIs() {
    CellComparison compared = oneJoint(4e-3, 0.15);
    assertEquals(0.125, compared.told().get(3).ohmic(), 0.015);
    assertTrue(compared.held().get(3).ohmic() < 0.07, "" + compared.held().get(3));
    assertEquals(1.125, compared.held().get(3).whole(), 0.03);
  }

  private static CellComparison oneJoint(double noiseV, double joint) {
    double ohm = Windows.response().at(Windows.PULSE_S);
    return vague(noiseV, Windows.ones(6), new double[] {0, 0, 0, joint * ohm, 0, 0});
  }

  private static CellComparison vague(double noiseV, double[] share, double[] joint) {
    StringResponse clear = Windows.response();
    StringResponse vague =
        new StringResponse(clear.basis(), clear.coefficients(), noiseV, clear.rows());
    List<ReducedWindow> windows = Windows.of(share, joint, (w, c, a) -> 0);
    UsedWindows used =
        UsedWindows.ofCurrent(windows, Windows.ones(windows.size()), Windows.response());
    return CellComparison.of(used, vague, Windows.PULSE_S);
  }
}
