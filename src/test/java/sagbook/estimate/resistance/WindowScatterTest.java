package sagbook.estimate.resistance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;

import java.util.Random;
import org.junit.jupiter.api.Test;

class WindowScatterTest {
  /** Windows whose misfit says between 0.5 and 20 %. */
  private static WindowScatter of(int windows, double share, double beside) {
    Random random = new Random(8);
    double[] sd = new double[windows];
    double[] departure = new double[windows];
    for (int i = 0; i < windows; i++) {
      sd[i] = 0.005 * Math.pow(40, i / (windows - 1.0));
      departure[i] = Math.hypot(share * sd[i], beside) * random.nextGaussian();
    }
    return WindowScatter.of(departure, sd, new double[windows]);
  }

  @Test
  void whatWindowsScatterBesideTheirMisfitIsSeenInThoseThatFitBest() {
    WindowScatter found = of(400, 0.5, 0.03);
    assertEquals(0.03, found.beside(), 0.008);
    assertEquals(0.5, found.share(), 0.12);
  }

  @Test
  void windowsThatScatterAsTheirMisfitSaysHaveLittleBeside() {
    WindowScatter found = of(400, 1, 0);
    assertEquals(0.005, found.beside(), 0.003);
    assertEquals(1, found.share(), 0.2);
  }

  @Test
  void fewWindowsTellNothing() {
    assertSame(WindowScatter.AT_FIRST, of(8, 0.3, 0.05));
  }
}
