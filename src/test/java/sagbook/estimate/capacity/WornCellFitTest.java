package sagbook.estimate.capacity;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sagbook.issue.InputProblem;
import sagbook.model.PackDescription;
import sagbook.numeric.EvenTable;
import sagbook.packfile.PackFile;

/**
 * Cells whose electrodes are none of those that the fit knows: NMC and graphite as fitted by
 * Mohtat, Lee, Siegel and Stefanopoulou (J. Electrochem. Soc. 167 (2020) 110561; functions and
 * lithium shares of a new cell as in PyBaMM's parameter set Mohtat2020). A worn cell follows from
 * its electrodes by definition: some cyclable lithium is gone, or some of the graphite with what it
 * held.
 */
class WornCellFitTest {
  private static final double NOMINAL_AH = 100;
  private static final double FULL_V = 4.2;
  private static final double EMPTY_V = 3.0;
  private static final double FULL_X = 0.8321;
  private static final double EMPTY_X = 0.0017;
  private static final double FULL_Y = 0.0335;
  private static final double EMPTY_Y = 0.8907;

  private final PackDescription pack;

  WornCellFitTest() throws InputProblem {
    pack =
        PackFile.parse(
            "pack.toml",
            """
            [pack]
            name = "Barn"
            chemistry = "nmc"
            series_cells = 8
            nominal_capacity_ah = 100
            """);
  }

  private static double nmc(double y) {
    return 4.3452
        - 1.6518 * y
        + 1.6225 * Math.pow(y, 2)
        - 2.0843 * Math.pow(y, 3)
        + 3.5146 * Math.pow(y, 4)
        - 2.2166 * Math.pow(y, 5)
        - 0.5623e-4 * Math.exp(109.451 * y - 100.006);
  }

  private static double graphite(double x) {
    return 0.063
        + 0.8 * Math.exp(-75 * (x + 0.001))
        - 0.0120 * Math.tanh((x - 0.127) / 0.016)
        - 0.0118 * Math.tanh((x - 0.155) / 0.016)
        - 0.0035 * Math.tanh((x - 0.220) / 0.020)
        - 0.0095 * Math.tanh((x - 0.190) / 0.013)
        - 0.0145 * Math.tanh((x - 0.490) / 0.020)
        - 0.0800 * Math.tanh((x - 1.030) / 0.055);
  }

  /**
   * Rest voltage along a charge axis on which a new cell is empty at 0 and full at 100 Ah, of a
   * cell that is as full as the others at 100 Ah.
   *
   * @param lithium cyclable lithium lost, as a share of capacity
   * @param shrunk graphite lost, as a share of it
   */
  private static DoubleUnaryOperator cell(double lithium, double shrunk) {
    double graphiteAh = NOMINAL_AH / (FULL_X - EMPTY_X) * (1 - shrunk);
    double nmcAh = NOMINAL_AH / (EMPTY_Y - FULL_Y);
    return q -> {
      double y = FULL_Y + (NOMINAL_AH - q) / nmcAh;
      // The lithium of a full cell less what is lost, and less what has left again.
      double held = FULL_X * NOMINAL_AH / (FULL_X - EMPTY_X) - lithium * NOMINAL_AH;
      double x = (held - (NOMINAL_AH - q)) / graphiteAh;
      return nmc(y) - graphite(x);
    };
  }

  private static double passes(DoubleUnaryOperator cell, double volt) {
    double low = -20;
    double high = 130;
    for (int i = 0; i < 60; i++) {
      double middle = (low + high) / 2;
      if (cell.applyAsDouble(middle) < volt) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return low;
  }

  private static double capacityAh(DoubleUnaryOperator cell) {
    return passes(cell, FULL_V) - passes(cell, EMPTY_V);
  }

  private static EvenTable table(DoubleUnaryOperator cell, double from, double to) {
    double step = NOMINAL_AH / 560;
    double[] volt = new double[(int) ((to - from) / step)];
    for (int i = 0; i < volt.length; i++) {
      volt[i] = cell.applyAsDouble(from + i * step);
    }
    return new EvenTable(from, step, volt);
  }

  private WornCell told(double lithium, double shrunk) {
    EvenTable usual = table(cell(0, 0), 10, 98);
    double fromAh = Math.max(10, passes(cell(lithium, shrunk), 2.9));
    EvenTable own = table(cell(lithium, shrunk), fromAh, 98);
    WornCellFit fit = new WornCellFit(usual, 10, usual.end(), 100, pack);
    return fit.of(own, own.start(), own.end()).orElseThrow();
  }

  @ParameterizedTest
  @CsvSource({"0.06, 0", "0.12, 0", "0.2, 0", "0.08, 0.06", "0.12, 0.12"})
  void aCellThatLostLithiumOrGraphiteIsToldItsLossWithinItsRange(double lithium, double shrunk) {
    double loss = 1 - capacityAh(cell(lithium, shrunk)) / capacityAh(cell(0, 0));
    WornCell told = told(lithium, shrunk);
    // The fit adds what cells differ by in shape to this later on; 0.45 % of capacity.
    double sd = Math.hypot(told.loss().sd(), 0.0045);
    assertEquals(loss, told.loss().value(), 1.96 * sd);
    assertEquals(loss, told.loss().value(), 0.03);
  }

  @Test
  void aCellOutOfBalanceIsToldThatAndNoLoss() {
    EvenTable usual = table(cell(0, 0), 10, 98);
    DoubleUnaryOperator late = q -> cell(0, 0).applyAsDouble(q - 4);
    EvenTable own = table(late, 10, 98);
    WornCell told =
        new WornCellFit(usual, 10, usual.end(), 100, pack)
            .of(own, own.start(), own.end())
            .orElseThrow();
    assertEquals(0, told.loss().value(), 0.01);
    assertEquals(0.04, told.full().value(), 0.005);
  }
}
