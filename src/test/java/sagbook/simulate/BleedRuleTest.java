package sagbook.simulate;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BleedRuleTest {
  private final BleedRule rule = new BleedRule(3.40, 0.05, 3.3);

  @Test
  void takesAboutOneAmpereThroughThreeOhm() {
    assertEquals(1.045, rule.amps(3.45, rule.level(3.45, 25)), 5e-4);
  }

  @ParameterizedTest
  @CsvSource({
    "3.39, 25, 0",
    "3.40, 25, 0",
    "3.425, 25, 0.5",
    "3.45, 25, 1",
    "3.60, 25, 1",
    "3.60, 65, 1",
    "3.60, 72.5, 0.5",
    "3.60, 80, 0",
    "3.60, 95, 0",
  })
  void risesNearFullAndIsHeldBackWhenHot(double volts, double boardC, double level) {
    assertEquals(level, rule.level(volts, boardC), 1e-9);
  }
}
