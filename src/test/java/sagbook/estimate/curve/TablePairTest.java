package sagbook.estimate.curve;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.ZoneId;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import sagbook.model.Chemistry;
import sagbook.model.OpenCircuitTable;
import sagbook.model.PackDescription;

class TablePairTest {
  private static final OpenCircuitTable LFP =
      new OpenCircuitTable(
          List.of(0.0, 0.02, 0.05, 0.1, 0.2, 0.3, 0.5, 0.7, 0.75, 0.9, 0.97, 1.0),
          List.of(2.5, 2.78, 3.0, 3.16, 3.22, 3.26, 3.29, 3.3, 3.325, 3.333, 3.345, 3.65));
  private static final OpenCircuitTable SLOPING =
      new OpenCircuitTable(
          List.of(0.0, 0.02, 0.05, 0.1, 0.2, 0.3, 0.5, 0.7, 0.75, 0.9, 0.97, 1.0),
          List.of(3.0, 3.2, 3.3, 3.42, 3.5, 3.57, 3.68, 3.86, 3.92, 4.08, 4.16, 4.2));

  private static OpenCircuitTable table(Chemistry chemistry) {
    return chemistry == Chemistry.LFP ? LFP : SLOPING;
  }

  @ParameterizedTest
  @EnumSource(Chemistry.class)
  void bothElectrodesTogetherAreTheTable(Chemistry chemistry) {
    OpenCircuitTable table = table(chemistry);
    ElectrodePair pair = TablePair.of(table, chemistry);
    for (int i = 0; i < table.volt().size(); i++) {
      double charge = table.chargeFraction().get(i);
      assertEquals(table.volt().get(i), pair.openCircuit(charge), 1e-9, "at " + charge);
    }
    double last = 0;
    for (double charge = -0.005; charge < 1.02; charge += 0.001) {
      assertTrue(pair.openCircuit(charge) > last, "falls at " + charge);
      last = pair.openCircuit(charge);
    }
  }

  /** The knee at the end of charge moves with the positive electrode, the rest stays. */
  @Test
  void onAFlatCurveOnlyTheEndOfChargeIsThePositiveElectrodes() {
    ElectrodePair pair = TablePair.of(LFP, Chemistry.LFP);
    assertEquals(0, pair.positive(0.5), 1e-12);
    assertTrue(pair.positive(0) > 0.3);
    assertEquals(3.26, -pair.negative(pair.emptyNegative() + 0.3), 1e-9);
  }

  @ParameterizedTest
  @EnumSource(Chemistry.class)
  void aPackWithoutATableHasThePublishedPairs(Chemistry chemistry) {
    PackDescription pack = PackDescription.of("plain", chemistry, 4, 100, ZoneId.of("Etc/UTC"));
    assertEquals(List.copyOf(HalfCells.of(chemistry)), ElectrodePair.of(pack));
  }
}
