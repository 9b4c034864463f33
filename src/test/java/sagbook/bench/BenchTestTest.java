package sagbook.bench;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
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
    assertEquals(BenchTest.Form.IEC_61960_3, test.form());
    assertTrue(test.isAtTheStandardsCurrents());
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
      assertEquals(BenchTest.Form.FROM_REST, test.form());
    }
  }

  /**
   * IEC 62620 (from memory): 0.2 It for 30 s, then 1.0 It; (3.672 - 3.600) V / 2 A = 36 mΩ at 5 s.
   */
  @Test
  void aLongFirstStageAllowsTheIndustrialCellsStandard() {
    double[] time = new double[40];
    double[] volt = new double[40];
    double[] ampere = new double[40];
    for (int r = 0; r < 40; r++) {
      time[r] = r;
      ampere[r] = r == 0 ? 0 : r <= 31 ? -0.5 : -2.5;
      volt[r] = r == 0 ? 3.7 : r <= 31 ? 3.672 : 3.610 - 0.0025 * (r - 32);
    }
    BenchTest test = BenchTest.of(new BenchLog("cell", time, volt, ampere), 2.5, 2.5);
    assertEquals(BenchTest.Form.IEC_62620, test.form());
    assertEquals(36.0, test.milliohm().find().orElseThrow(), 1e-9);
    assertEquals(5, test.pulseS(), 1e-9);
    assertTrue(test.isAtTheStandardsCurrents());
  }

  private static SpareMatch match(double[] string, List<Integer> places, Map<String, Double> ah) {
    return SpareMatch.of(
        places,
        List.copyOf(new TreeMap<>(ah).keySet()),
        way -> {
          double[] then = string.clone();
          way.forEach((cell, name) -> then[cell - 1] = ah.getOrDefault(name, 0.0));
          return Arrays.stream(then).min().orElseThrow()
              - Arrays.stream(string).min().orElseThrow();
        },
        name -> name.equals("odd") ? 0.4 : 0.1);
  }

  /** By hand: 80 and 81 beside 100 gain 1 by one spare of 95, and 15 by two. */
  @Test
  void twoCellsWeakAlikeAreFilledTogether() {
    SpareMatch best =
        match(new double[] {80, 100, 81, 100}, List.of(1, 3), Map.of("a", 95.0, "b", 98.0));
    assertEquals(Map.of(1, "a", 3, "b"), best.spares());
    assertEquals(15, best.gainAh(), 1e-9);
  }

  @Test
  void noSpareIsSpentThatBuysNothingAndOfEqualsTheBetterMatchGoes() {
    SpareMatch best =
        match(
            new double[] {80, 90, 100},
            List.of(1, 2),
            Map.of("even", 90.0, "odd", 90.05, "small", 70.0));
    assertEquals(Map.of(1, "even"), best.spares());
    assertEquals(
        Map.of(), match(new double[] {80, 90}, List.of(1), Map.of("small", 70.0)).spares());
  }
}
