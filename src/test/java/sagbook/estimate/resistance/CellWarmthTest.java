package sagbook.estimate.resistance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import sagbook.estimate.response.ReducedWindow;

class CellWarmthTest {
  private static final double KILOJOULE = 20;

  private static CellWarmth warmth(boolean secondTrusted) {
    return warmth(secondTrusted, 20);
  }

  private static CellWarmth warmth(boolean secondTrusted, double secondCelsius) {
    return warmth(3, secondTrusted, secondCelsius);
  }

  private static CellWarmth warmth(int cells, boolean secondTrusted, double secondCelsius) {
    List<ReducedWindow> windows =
        Windows.of(Windows.ones(cells), new double[cells], (w, c, a) -> 0);
    for (ReducedWindow window : windows) {
      window.window().meanTemperatureC()[1] = secondCelsius;
    }
    UsedWindows used =
        UsedWindows.ofCurrent(windows, Windows.ones(windows.size()), Windows.response());
    boolean[] trusted = new boolean[cells];
    Arrays.fill(trusted, true);
    trusted[1] = secondTrusted;
    return CellWarmth.of(used, trusted);
  }

  /**
   * Arrhenius' law between 15 and 20 °C: 20 kJ/mol over 8.314 J/(mol K) times 1/T less 1/T. Of that
   * counts what exceeds the thermometers' own half a kelvin in the mean square of three cells: with
   * departures of 0, 0 and 5.92e-5 1/K that is 1 - 3 x (0.5 K / (288.15 K)²)² / (5.92e-5 1/K)².
   */
  @Test
  void aWarmerCellWouldResistMoreAtTheStringsTemperature() {
    double expected = Math.exp(0.9690 * 20_000 / 8.314462618 * (1 / 288.15 - 1 / 293.15));
    assertEquals(expected, warmth(true).factor(1, KILOJOULE), 1e-4);
    assertEquals(1, warmth(true).factor(0, KILOJOULE), 1e-9);
  }

  @Test
  void aThermometerThatIsKnownToLieWarmsNoCellAndMakesItLessSure() {
    CellWarmth distrusted = warmth(false);
    assertEquals(1, distrusted.factor(1, KILOJOULE), 0);
    assertTrue(distrusted.factorSd(1, KILOJOULE, 2) > distrusted.factorSd(0, KILOJOULE, 2));
  }

  /** One of sixteen at the cold end of a shelf; all others read the same. */
  @Test
  void oneColdCellKeepsItsColdButForWhatAThermometerIsOutBy() {
    CellWarmth cold = warmth(16, true, 13);
    double by1500 = 20_000 / 8.314462618 * 1.5 / (288.15 * 288.15);
    assertEquals(-by1500, Math.log(cold.factor(1, KILOJOULE)), 0.001);
    assertTrue(cold.factorSd(1, KILOJOULE, 2) > cold.factorSd(0, KILOJOULE, 2));
  }

  /** Common practice for a board's thermometer: half a kelvin, so 0.4 K in one of three is none. */
  @Test
  void whatThermometersScatterOfThemselvesIsNoWarmth() {
    assertEquals(1, warmth(true, 15.4).factor(1, KILOJOULE), 0);
    assertTrue(warmth(true, 15.4).factorSd(1, KILOJOULE, 2) > 0.005);
  }
}
