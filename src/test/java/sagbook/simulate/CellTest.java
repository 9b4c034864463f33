package sagbook.simulate;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CellTest {
  private static final double HUGE_AH = 1e7;

  private static Cell cell(CellMake make) {
    Cell cell = new Cell(make, new OpenCircuit(Electrodes.LFP_SAFARI), 0, 1e12);
    cell.setRoomToFullAh(make.capacityAh() / 2);
    return cell;
  }

  private static void advance(Cell cell, double amps, double seconds, CellMake make) {
    cell.advance(
        amps,
        seconds,
        StrictMath.exp(-seconds / make.fastS()),
        StrictMath.exp(-seconds / make.slowS()),
        25);
  }

  /**
   * R(t) = R0 + sum Ri (1 - e^(-t/ti)) for 0.20, 0.10 (2 s) and 0.15 milliohm (60 s); arithmetic.
   */
  @ParameterizedTest
  @CsvSource({
    "0.1, 0.205127",
    "1, 0.241826",
    "5, 0.303785",
    "10, 0.322354",
    "18, 0.338865",
    "30, 0.359020",
    "60, 0.394818",
    "300, 0.448989",
  })
  void answersAStepWithTwoRelaxations(double seconds, double milliohm) {
    CellMake make = new CellMake(HUGE_AH, 0.20, 0.10, 2, 0.15, 60, 0);
    assertEquals(milliohm, make.stepResistanceMilliohm(seconds), 6e-7);
    Cell cell = cell(make);
    double before = cell.terminalVolts(0);
    int parts = 10;
    for (int i = 0; i < parts; i++) {
      advance(cell, -50, seconds / parts, make);
    }
    double measured = (before - cell.terminalVolts(-50)) / 50 * 1000;
    assertEquals(milliohm, measured, milliohm * 1e-3);
  }

  @Test
  void keepsCountOfCharge() {
    CellMake make = new CellMake(280, 0.1, 0.05, 3, 0.1, 75, 5);
    Cell cell = cell(make);
    double before = cell.roomToFullAh();
    for (int hour = 0; hour < 10; hour++) {
      advance(cell, 7, 3600, make);
    }
    assertEquals(10 * (7 - 0.005), before - cell.roomToFullAh(), 1e-6);
  }

  /** A tenth less lithium costs a little under a tenth, as the positive electrode ends earlier. */
  @Test
  void losesCapacityWithItsLithium() {
    CellMake make = new CellMake(280, 0.1, 0.05, 3, 0.1, 75, 5);
    Cell cell = cell(make);
    assertEquals(280, cell.capacityAh(), 1e-6);
    Condition condition = new Condition();
    condition.reset();
    condition.lostCapacity = 0.10;
    cell.setCondition(condition);
    assertEquals(255, cell.capacityAh(), 3);
  }

  /** Published range for whole LFP cells: 11 to 22 kJ/mol (Naumann 2018, 3 Ah cell). */
  @Test
  void resistsMoreWhenCold() {
    CellMake make = new CellMake(HUGE_AH, 0.110, 0.055, 3, 0.130, 75, 0);
    double energy =
        8.314462618
            * StrictMath.log(answerAt(make, 10) / answerAt(make, 25))
            / (1 / 283.15 - 1 / 298.15);
    assertEquals(16_500, energy, 5_500);
  }

  private static double answerAt(CellMake make, double celsius) {
    Cell cell = cell(make);
    cell.settleAt(celsius);
    double before = cell.terminalVolts(0);
    cell.advance(100, 30, StrictMath.exp(-30 / 3.0), StrictMath.exp(-30 / 75.0), celsius);
    return (cell.terminalVolts(100) - before) / 100;
  }
}
