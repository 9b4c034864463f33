package sagbook.estimate.resistance;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ReferenceConditionsTest {
  /** exp(Ea/R (1/T - 1/298.15 K)) with R = 8.314462618 J/mol/K, worked out by hand. */
  @ParameterizedTest
  @CsvSource({"0, 3.0271", "10, 1.8986", "25, 1", "35, 0.6752"})
  void thirtyKilojoule(double celsius, double factor) {
    assertEquals(factor, ReferenceConditions.arrhenius(30, celsius), 6e-5);
  }
}
