package sagbook.estimate.resistance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import sagbook.estimate.response.ReducedWindow;

class CellWarmthTest {
  private static final double KILOJOULE = 20;

  private static CellWarmth warmth(boolean secondTrusted) {
    double[] ones = {1, 1, 1};
    List<ReducedWindow> windows = Windows.of(ones, new double[3], (w, c, a) -> 0);
    for (ReducedWindow window : windows) {
      window.window().meanTemperatureC()[1] = 20;
    }
    UsedWindows used = UsedWindows.ofCurrent(windows, Windows.ones(windows.size()), Windows.BASIS);
    return CellWarmth.of(used, new boolean[] {true, secondTrusted, true});
  }

  /** Arrhenius' law between 15 and 20 °C: 20 kJ/mol over 8.314 J/(mol K) times 1/T less 1/T. */
  @Test
  void aWarmerCellWouldResistMoreAtTheStringsTemperature() {
    double expected = Math.exp(20_000 / 8.314462618 * (1 / 288.15 - 1 / 293.15));
    assertEquals(expected, warmth(true).factor(1, KILOJOULE), 1e-9);
    assertEquals(1, warmth(true).factor(0, KILOJOULE), 1e-9);
  }

  @Test
  void aThermometerThatIsKnownToLieWarmsNoCellAndMakesItLessSure() {
    CellWarmth distrusted = warmth(false);
    assertEquals(1, distrusted.factor(1, KILOJOULE), 0);
    assertTrue(distrusted.factorSd(1, KILOJOULE, 2) > distrusted.factorSd(0, KILOJOULE, 2));
  }
}
