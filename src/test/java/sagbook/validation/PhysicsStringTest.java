package sagbook.validation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.net.URISyntaxException;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import sagbook.estimate.CellEstimates;
import sagbook.issue.InputProblem;
import sagbook.logfile.ReadRequest;
import sagbook.model.Estimate;
import sagbook.model.Finding;
import sagbook.packfile.PackFile;
import sagbook.pipeline.Check;
import sagbook.verdict.CellVerdict;

/**
 * Eight LFP cells simulated with PyBaMM's single particle model with electrolyte, whose truth is
 * known by construction (README.md and truth.csv beside the log). The estimators share no physics
 * with it.
 */
class PhysicsStringTest {
  private static final double[] CAPACITY = {
    101.483, 101.888, 90.841, 100.975, 101.685, 101.280, 101.584, 101.178
  };
  private static final double MEDIAN = (101.280 + 101.483) / 2;

  private static List<CellVerdict> cells = List.of();

  @BeforeAll
  static void check() throws InputProblem, URISyntaxException {
    Path folder =
        Path.of(
                Objects.requireNonNull(
                        PhysicsStringTest.class.getResource("/physics/lfp_string/pack.toml"))
                    .toURI())
            .resolveSibling("");
    ReadRequest request =
        new ReadRequest(
            PackFile.read(folder.resolve("pack.toml")),
            List.of(folder.resolve("log_25c.csv.gz").toString()),
            Optional.empty(),
            Optional.empty(),
            Optional.empty());
    cells = Check.run(request, "test", words -> {}).banks().get(0).verdict().cells();
  }

  private static CellEstimates estimates(int cell) {
    return cells.get(cell - 1).estimates();
  }

  @Test
  void namesTheWornAndTheUnbalancedCellAndLeavesTheSoundOnesAlone() {
    assertEquals(Finding.LOW_CAPACITY, cells.get(2).finding());
    assertEquals(1, cells.get(2).rank());
    assertEquals(Finding.OUT_OF_BALANCE, cells.get(4).finding());
    for (int sound : new int[] {1, 2, 4, 8}) {
      assertEquals(Finding.HEALTHY, cells.get(sound - 1).finding(), "cell " + sound);
    }
  }

  /** At one temperature a joint and a raised charge transfer answer alike (README.md). */
  @Test
  void seesTheTwoCellsThatResistMore() {
    for (int cell : new int[] {6, 7}) {
      Finding finding = cells.get(cell - 1).finding();
      assertTrue(finding == Finding.CONNECTION || finding == Finding.HIGH_RESISTANCE, "" + finding);
      // The true ratios run from 1.37 at 40 A to 1.43 at 10 A.
      assertEquals(1.40, estimates(cell).resistanceRelative().find().orElseThrow(), 0.04);
    }
  }

  @Test
  void countsEveryCapacityToOnePerCentAndInsideItsInterval() {
    for (int cell = 1; cell <= 8; cell++) {
      double truth = CAPACITY[cell - 1];
      assertHolds(estimates(cell).capacityAh(), truth, 0.012 * truth, "Ah of cell " + cell);
      double relative = truth / MEDIAN;
      assertHolds(estimates(cell).capacityRelative(), relative, 0.012, "share of cell " + cell);
    }
  }

  @Test
  void findsTheChargeThatTheUnbalancedCellLacks() {
    assertHolds(estimates(5).chargeOffsetPercent(), -5.0, 1.5, "offset of cell 5");
    for (int cell : new int[] {1, 2, 4, 6, 7, 8}) {
      assertEquals(0, estimates(cell).chargeOffsetPercent().find().orElseThrow(), 0.5);
    }
  }

  /** Cell 3 apart: it was near empty in much of the log, where charge transfer is another. */
  @Test
  void resistancesOfTheCellsThatKeepChargeAreTrueToFivePerCent() {
    double[] truth = {0.8459, 0.8580, Double.NaN, 0.8352, 0.8519, 1.1955, 1.1776, 0.8484};
    for (int cell : new int[] {1, 2, 4, 5, 6, 7, 8}) {
      double milliohm = estimates(cell).resistanceMilliohm().find().orElseThrow();
      assertEquals(truth[cell - 1], milliohm, 0.05 * truth[cell - 1], "cell " + cell);
    }
  }

  private static void assertHolds(Estimate estimate, double truth, double within, String what) {
    assertTrue(estimate instanceof Estimate.Known, what);
    if (estimate instanceof Estimate.Known k) {
      assertEquals(truth, k.value(), within, what);
      assertTrue(k.low() <= truth && truth <= k.high(), what + " lies outside " + k);
    }
  }
}
