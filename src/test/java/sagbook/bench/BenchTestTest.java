package sagbook.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import sagbook.model.BenchLog;
import sagbook.model.Estimate;

class BenchTestTest {
  /** IEC 61960-3 by arithmetic: 0.5 A at 3.672 V, then 2.5 A at 3.610 V: 31.0 mΩ. */
  @Test
  void twoStepResistanceOfTheStandard() {
    double[] time = new double[14];
    double[] volt = new double[14];
    double[] ampere = new double[14];
    for (int r = 0; r < 14; r++) {
      time[r] = r;
      boolean rest = r == 0;
      boolean first = r <= 11;
      ampere[r] = rest ? 0 : first ? -0.5 : -2.5;
      volt[r] = rest ? 3.7 : first ? 3.672 : 3.610;
    }
    BenchTest test = BenchTest.of(new BenchLog("cell", time, volt, ampere), 2.5, 2.5);
    assertEquals(31.0, test.milliohm().find().orElseThrow(), 1e-9);
    assertTrue(test.isTwoStep());
    assertEquals(1, test.pulseS(), 1e-9);
    assertTrue(test.capacityAh() instanceof Estimate.Unknown);
  }

  /** By hand: 0.5 A for five hours is 2.5 Ah, whichever sign the logger gives discharge. */
  @Test
  void capacityIsTheChargeDownToTheEndVoltage() {
    int rows = 5 * 60 + 2;
    for (int sign : new int[] {1, -1}) {
      double[] time = new double[rows];
      double[] volt = new double[rows];
      double[] ampere = new double[rows];
      for (int r = 0; r < rows; r++) {
        time[r] = 60.0 * r;
        ampere[r] = r == 0 ? 0 : sign * 0.5;
        volt[r] = r == 0 ? 3.4 : r < rows - 1 ? 3.3 - 0.002 * r : 2.49;
      }
      BenchTest test = BenchTest.of(new BenchLog("cell", time, volt, ampere), 2.5, 2.5);
      assertEquals(2.5, test.capacityAh().find().orElseThrow(), 0.01);
      assertEquals(0.2, test.rateIt(), 1e-9);
      assertFalse(test.isTwoStep());
    }
  }

  @Test
  void eachPlaceGetsTheSpareThatBuysMostThenTheOneThatMatches() {
    List<SpareMatch.Offer> offers =
        List.of(
            new SpareMatch.Offer(6, "a", 30, 0.4),
            new SpareMatch.Offer(6, "b", 30.05, 0.1),
            new SpareMatch.Offer(6, "c", 12, 0),
            new SpareMatch.Offer(2, "a", 5, 0.4),
            new SpareMatch.Offer(2, "b", 5, 0.1),
            new SpareMatch.Offer(2, "c", 0, 0));
    assertEquals(
        List.of(new SpareMatch(6, "b", 30.05), new SpareMatch(2, "a", 5)),
        SpareMatch.of(List.of(6, 2), offers));
  }
}
