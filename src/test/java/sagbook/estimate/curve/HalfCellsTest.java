package sagbook.estimate.curve;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import sagbook.model.Chemistry;

/** Values of the published functions worked out apart from this program, to 1 µV. */
class HalfCellsTest {
  @ParameterizedTest
  @CsvSource({
    "AFSHAR_CHEN, 0.1, 3.405673",
    "AFSHAR_CHEN, 0.5, 3.397565",
    "AFSHAR_CHEN, 0.9, 3.344650",
    "SAFARI_DELACOURT, 0.1, 3.436037",
    "SAFARI_DELACOURT, 0.5, 3.432300",
    "SAFARI_DELACOURT, 0.9, 3.414235",
    "NMC_CHEN, 0.3, 4.205394",
    "NMC_CHEN, 0.5, 3.971959",
    "NMC_CHEN, 0.9, 3.568200"
  })
  void positiveElectrode(HalfCells pair, double share, double volt) {
    assertEquals(volt, pair.positive(share), 1e-6);
  }

  @ParameterizedTest
  @CsvSource({
    "AFSHAR_CHEN, 0.1, 0.406516",
    "AFSHAR_CHEN, 0.5, 0.133086",
    "NMC_CHEN, 0.9, 0.092020",
    "SAFARI_DELACOURT, 0.1, 0.216651",
    "SAFARI_DELACOURT, 0.5, 0.116057",
    "SAFARI_DELACOURT, 0.9, 0.076978"
  })
  void negativeElectrode(HalfCells pair, double share, double volt) {
    assertEquals(volt, pair.negative(share), 1e-6);
  }

  /** Worked out with SciPy's brentq from the published functions and windows. */
  @ParameterizedTest
  @CsvSource({
    "AFSHAR_CHEN, 0, 0.997691, 3.65, 2.5",
    "AFSHAR_CHEN, 0.05, 0.952505, 3.65, 2.5",
    "AFSHAR_CHEN, 0.2, 0.804509, 3.65, 2.5",
    "SAFARI_DELACOURT, 0, 0.989530, 3.65, 2.5",
    "SAFARI_DELACOURT, 0.1, 0.907803, 3.65, 2.5",
    "NMC_CHEN, 0, 0.966722, 4.2, 3.0",
    "NMC_CHEN, 0.1, 0.872005, 4.2, 3.0"
  })
  void lithiumLostCostsLessThanItselfInCharge(
      HalfCells pair, double lost, double charge, double fullV, double emptyV) {
    assertEquals(charge, pair.charge(lost, fullV, emptyV), 2e-6);
  }

  /** The windows belong to 2.5 V and to 4.2 V (NMC) or the top of the LFP curve. */
  @ParameterizedTest
  @EnumSource(HalfCells.class)
  void aCellRisesFromEmptyToFull(HalfCells pair) {
    double last = Double.NEGATIVE_INFINITY;
    for (double z = 0; z <= 1.0001; z += 0.01) {
      double now = pair.openCircuit(z);
      assertEquals(true, now > last, pair + " falls at " + z);
      last = now;
    }
    if (HalfCells.of(Chemistry.NMC).contains(pair)) {
      assertEquals(2.5, pair.openCircuit(0), 0.01);
      assertEquals(4.2, pair.openCircuit(1), 0.01);
    }
  }
}
