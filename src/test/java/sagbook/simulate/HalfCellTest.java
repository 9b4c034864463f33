package sagbook.simulate;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class HalfCellTest {
  /**
   * The papers' formulas worked out by hand calculation to seven digits, independent of this code.
   */
  @ParameterizedTest
  @CsvSource({
    "LFP_AFSHAR, 0.1, 3.405673",
    "LFP_AFSHAR, 0.5, 3.397565",
    "LFP_AFSHAR, 0.9, 3.344650",
    "LFP_SAFARI, 0.1, 3.436037",
    "LFP_SAFARI, 0.5, 3.432300",
    "LFP_SAFARI, 0.9, 3.414235",
    "GRAPHITE_SAFARI, 0.1, 0.216651",
    "GRAPHITE_SAFARI, 0.5, 0.116057",
    "GRAPHITE_SAFARI, 0.9, 0.076978",
    "GRAPHITE_CHEN, 0.1, 0.406516",
    "GRAPHITE_CHEN, 0.5, 0.133086",
    "GRAPHITE_CHEN, 0.9, 0.092020",
    "NMC_CHEN, 0.3, 4.205394",
    "NMC_CHEN, 0.5, 3.971959",
    "NMC_CHEN, 0.9, 3.568200",
  })
  void givesThePublishedFunction(HalfCell halfCell, double fraction, double volts) {
    assertEquals(volts, halfCell.volts(fraction), 6e-7);
  }

  @ParameterizedTest
  @EnumSource(HalfCell.class)
  void keepsToTheFunctionWhenTabulated(HalfCell halfCell) {
    Curve curve = halfCell.tabulated();
    for (int i = 0; i <= 100_000; i++) {
      double fraction = i / 100_000.0;
      assertEquals(halfCell.volts(fraction), curve.at(fraction), 1.5e-4, () -> "at " + fraction);
    }
  }
}
