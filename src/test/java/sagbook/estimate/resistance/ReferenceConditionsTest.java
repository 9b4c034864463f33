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

  /**
   * Resistance of a 3 Ah LFP cell at 20, 50 and 80 % charge, charging and discharging, mΩ at 25 °C
   * and at another temperature, with the activation energy of the pair (table of M. Naumann,
   * doctoral thesis, TU Munich 2018; energies worked out apart from this program). They are what
   * the prior of 16 give or take 5 kJ/mol rests on.
   */
  @ParameterizedTest
  @CsvSource({
    "41.40, 10, 59.22, 16.8",
    "41.40, 40, 33.09, 11.6",
    "50.37, 10, 80.77, 22.1",
    "50.37, 40, 38.43, 14.0",
    "44.77, 10, 62.65, 15.7",
    "44.77, 40, 35.25, 12.4",
    "47.83, 10, 69.39, 17.4",
    "47.83, 40, 38.38, 11.4",
    "46.80, 10, 69.20, 18.3",
    "46.80, 40, 35.57, 14.2",
    "46.56, 10, 64.82, 15.5",
    "46.56, 40, 37.72, 10.9"
  })
  void aMeasuredCellFollowsItsActivationEnergy(
      double at25, double celsius, double there, double kilojoule) {
    // Energies are printed to 0.1 kJ/mol, which moves resistance by up to 0.11 %.
    assertEquals(there, at25 * ReferenceConditions.arrhenius(kilojoule, celsius), 0.0012 * there);
  }
}
