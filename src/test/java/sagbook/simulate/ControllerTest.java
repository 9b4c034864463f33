package sagbook.simulate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

class ControllerTest {
  private static final double NOMINAL_AH = 280;
  private final Controller controller =
      new Controller(PackPlan.lfp(16, NOMINAL_AH).limits(), NOMINAL_AH);

  private void atRest(double volts, double amps, int minutes) {
    for (int i = 0; i < minutes; i++) {
      controller.observe(volts, volts, volts, amps, 60);
    }
  }

  @Test
  void chargesWithTheSurplusAndCoversTheShortfall() {
    atRest(3.31, 0, 1);
    assertEquals(30, controller.batteryAmps(40, 10, 0), 1e-9);
    assertEquals(-25, controller.batteryAmps(5, 30, 0), 1e-9);
  }

  @Test
  void neverChargesHarderThanItsLimit() {
    assertEquals(0.29 * NOMINAL_AH, controller.batteryAmps(500, 0, 0), 1e-9);
  }

  @Test
  void easesOffWhenTheFirstCellIsNearlyFull() {
    double before = controller.batteryAmps(200, 0, 0);
    for (int i = 0; i < 3; i++) {
      controller.observe(3.40, 3.47, 3.42, before, 60);
    }
    assertTrue(controller.batteryAmps(200, 0, 0) < 0.8 * before);
    assertTrue(controller.holding());
  }

  @Test
  void pausesWhenACellIsFull() {
    controller.observe(3.40, 3.50, 3.42, 60, 60);
    controller.observe(3.40, 3.61, 3.42, 60, 60);
    assertEquals(0, controller.batteryAmps(200, 0, 0), 1e-9);
  }

  @Test
  void stopsChargingAfterTheHoldAndLetsTheHouseDrawUntilTheStringFloats() {
    for (int minute = 0; minute < 200; minute++) {
      controller.observe(3.40, 3.47, 3.42, 4, 60);
    }
    assertEquals(-10, controller.batteryAmps(80, 10, 0), 1e-9);
    controller.observe(3.36, 3.36, 3.36, -10, 60);
    assertEquals(0, controller.batteryAmps(80, 10, 0), 1e-9);
  }

  @Test
  void cutsTheDischargeOffUntilSomeChargeIsBack() {
    controller.observe(2.84, 3.20, 3.15, -20, 60);
    assertEquals(0, controller.batteryAmps(0, 20, 0), 1e-9);
    assertEquals(30, controller.batteryAmps(50, 20, 0), 1e-9);
    atRest(3.30, 30, 50);
    assertEquals(-20, controller.batteryAmps(0, 20, 0), 1e-9);
  }

  @Test
  void keepsTheReserve() {
    atRest(3.30, -100, 60);
    assertEquals(-20, controller.batteryAmps(0, 20, 0), 1e-9);
    assertEquals(0, controller.batteryAmps(0, 20, 0.45), 1e-9);
  }
}
