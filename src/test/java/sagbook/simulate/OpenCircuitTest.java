package sagbook.simulate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class OpenCircuitTest {
  /** NMC window of Chen et al. 2020: 2.5 V empty, 4.2 V full. */
  @ParameterizedTest
  @CsvSource({"0, 2.5000", "0.5, 3.7509", "1, 4.2000"})
  void spansTheNmcWindow(double z, double volts) {
    assertEquals(volts, new OpenCircuit(Electrodes.NMC_CHEN).volts(z, 0), 6e-4);
  }

  /**
   * A C/32 charge and discharge of an LFP cell, averaged, gave 3.2413, 3.2991, 3.3370 V at 20, 50
   * and 80 %; a second cell of other make, so only near.
   */
  @ParameterizedTest
  @CsvSource({"0.2, 3.2413", "0.5, 3.2991", "0.8, 3.3370"})
  void liesNearAMeasuredLfpCell(double z, double volts) {
    assertEquals(volts, new OpenCircuit(Electrodes.LFP_SAFARI).volts(z, 0), 0.020);
  }

  @ParameterizedTest
  @EnumSource(Electrodes.class)
  void risesFromEmptyToFull(Electrodes electrodes) {
    OpenCircuit openCircuit = new OpenCircuit(electrodes);
    double empty = openCircuit.empty(0);
    double full = openCircuit.full(0);
    assertTrue(full - empty > 0.9 && full - empty < 1.1, () -> empty + " to " + full);
    double last = 0;
    for (int i = 0; i <= 1000; i++) {
      double volts = openCircuit.volts(empty + (full - empty) * i / 1000, 0);
      assertTrue(volts > last - 1e-6);
      last = volts;
    }
  }

  @Test
  void losesCapacityAtTheBottomWhenLithiumIsLost() {
    OpenCircuit openCircuit = new OpenCircuit(Electrodes.LFP_SAFARI);
    assertEquals(openCircuit.full(0), openCircuit.full(0.1), 0.004);
    assertEquals(openCircuit.empty(0) + 0.09, openCircuit.empty(0.1), 0.010);
  }
}
