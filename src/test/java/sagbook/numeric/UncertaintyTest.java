package sagbook.numeric;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;

class UncertaintyTest {
  /**
   * Calibration of an end gauge, JCGM 100:2008, example H.1: standard gauge 25 nm (18 degrees of
   * freedom), comparison 9.7 nm (25.6), difference of expansion 0.58e-6/°C (50) at -0.1 °C,
   * difference of temperature 0.029 °C (2) at 11.5e-6/°C. Published: combined 32 nm, 16 degrees of
   * freedom, expanded (99 %) 93 nm.
   */
  @Test
  void theEndGaugeHasItsPublishedUncertainty() {
    double gaugeNm = 50.000623e6;
    Uncertainty length =
        new Uncertainty(25, 18)
            .plus(new Uncertainty(9.7, 25.6))
            .plus(new Uncertainty(0.58e-6, 50).times(gaugeNm * -0.1))
            .plus(new Uncertainty(0.029, 2).times(gaugeNm * 11.5e-6));
    assertEquals(31.7, length.standard(), 0.05);
    assertEquals(16, Math.floor(length.degreesOfFreedom()));
    assertEquals(93, length.halfWidth(0.99), 0.5);
  }

  /** The mean of n values that scatter by s: n - 1 degrees of freedom, Student 1908. */
  @Test
  void tenStretchesMakeAnIntervalAFifthWiderThanAThousand() {
    // 2.262157, Student's t of 9 at 0.975, and the normal 1.959964: any table of either.
    assertEquals(2.262157, new Uncertainty(1, 9).halfWidth(0.95), 1e-6);
    assertEquals(1.959964, Uncertainty.known(1).halfWidth(0.95), 1e-6);
  }

  @Test
  void whatIsKnownLeavesTheOtherAsRoughAsItIs() {
    Uncertainty rough = new Uncertainty(0.3, 9);
    assertEquals(rough, rough.plus(Uncertainty.known(0)));
    // Equal parts, one of them known: a quarter of the whole's square squared is rough.
    assertEquals(36, rough.plus(Uncertainty.known(0.3)).degreesOfFreedom(), 1e-9);
    assertEquals(18, rough.plus(rough).degreesOfFreedom(), 1e-9);
  }

  @Test
  void nothingAtAllIsNoUncertainty() {
    Uncertainty none = Uncertainty.known(0);
    assertEquals(none, none.plus(none));
    assertEquals(0, none.halfWidth(0.95));
  }

  @Test
  void refusesWhatIsNoDeviation() {
    assertThrows(IllegalArgumentException.class, () -> new Uncertainty(-1, 5));
    assertThrows(IllegalArgumentException.class, () -> new Uncertainty(Double.NaN, 5));
    assertThrows(IllegalArgumentException.class, () -> new Uncertainty(1, 0.5));
  }
}
