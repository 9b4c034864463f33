package sagbook.estimate.capacity;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import sagbook.numeric.EvenTable;

/** A curve of two straight parts: 1 mV/Ah up to 50 Ah, 11 mV/Ah above. */
class CellCurveTest {
  private static final double STEP_AH = 0.5;

  private static CellCurve curve() {
    double[] bottom = new double[201];
    double[] top = new double[201];
    for (int i = 0; i < bottom.length; i++) {
      double q = i * STEP_AH;
      bottom[i] = 3.2 + 0.001 * q;
      top[i] = 0.01 * Math.max(0, q - 50);
    }
    return new CellCurve(
        new EvenTable(0, STEP_AH, bottom), new EvenTable(0, STEP_AH, top), 0, 0, 100, true, 0);
  }

  @Test
  void itIsAsSteepAtAVoltageAsWhereItTakesThatVoltage() {
    EvenTable steepness = curve().steepness();
    assertEquals(0.001, steepness.at(3.225), 1e-9);
    assertEquals(0.011, steepness.at(3.5), 1e-9);
  }

  @Test
  void aVoltageThatNoPlaceHasIsAsSteepAsTheOneBelowIt() {
    // 11 mV/Ah by half an ampere-hour passes over every other voltage of the table.
    EvenTable steepness = curve().steepness();
    for (double v = 3.3; v < 3.78; v += 0.005) {
      assertEquals(0.011, steepness.at(v), 1e-9, "at " + v);
    }
  }
}
