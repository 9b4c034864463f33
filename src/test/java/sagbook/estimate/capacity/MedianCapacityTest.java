package sagbook.estimate.capacity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import sagbook.estimate.curve.ElectrodePair;
import sagbook.evidence.ThinnedRecord;
import sagbook.issue.InputProblem;
import sagbook.model.Estimate;
import sagbook.model.PackDescription;
import sagbook.numeric.EvenTable;
import sagbook.packfile.PackFile;

/** How far the empty end is known: full at 0 Ah, empty at -280 Ah on the axis. */
class MedianCapacityTest {
  private static final double EMPTY_AH = -280;

  private static MedianCapacity median(PackDescription pack) {
    ThinnedRecord record =
        new ThinnedRecord(
            new double[] {0},
            new float[] {60},
            new int[] {0},
            new float[] {0},
            new double[] {0},
            new float[][] {{3.3f}},
            new float[0][],
            new float[0][]);
    return new MedianCapacity(record, pack, true, false);
  }

  private static PackDescription pack() throws InputProblem {
    return PackFile.parse(
        "pack.toml",
        """
        [pack]
        name = "Shed"
        chemistry = "lfp"
        series_cells = 4
        nominal_capacity_ah = 280
        """);
  }

  private static CurveAnchor anchor(PackDescription pack) {
    return new CurveAnchor(
        ElectrodePair.of(pack).get(0), 5, 300, -285, 310, 0, 0.001, 0, EMPTY_AH, 0.5, 0.5);
  }

  private static Estimate of(double seenFromAh, double sharedFromAh) throws InputProblem {
    PackDescription pack = pack();
    return median(pack).of(Optional.of(anchor(pack)), curve(seenFromAh, sharedFromAh));
  }

  private static CellCurve curve(double seenFromAh, double sharedFromAh) {
    EvenTable none = new EvenTable(EMPTY_AH, 1, new double[281]);
    return new CellCurve(none, none, seenFromAh, sharedFromAh, -1, true, 0);
  }

  /** By all published pairs, of which one holds or none. */
  private static Estimate of(boolean holds, double sdAh, double seenFromAh, double sharedFromAh)
      throws InputProblem {
    StringEnds ends = new StringEnds(0, EMPTY_AH, seenFromAh, sdAh, 0.001, holds);
    return median(pack()).of(ends, curve(seenFromAh, sharedFromAh));
  }

  private static double halfWidth(Estimate of) {
    return assertInstanceOf(Estimate.Known.class, of).halfWidth();
  }

  @Test
  void anEmptyEndThatManyCellsShowedIsKnownWithinTwoPerCent() throws InputProblem {
    Estimate.Known known = assertInstanceOf(Estimate.Known.class, of(EMPTY_AH + 3, EMPTY_AH + 3));
    assertEquals(280, known.value(), 1e-9);
    assertTrue(known.halfWidth() < 0.02 * 280, "half-width " + known.halfWidth());
  }

  @Test
  void whatOneCellAloneShowedWidensTheRangeByHalfAsMuchAsWhatNoneDidAndLeavesTheValue()
      throws InputProblem {
    Estimate.Known alone = assertInstanceOf(Estimate.Known.class, of(EMPTY_AH + 3, EMPTY_AH + 31));
    assertEquals(280, alone.value(), 1e-9);
    assertTrue(alone.halfWidth() >= 1.96 * 0.15 * 28, "half-width " + alone.halfWidth());
  }

  @Test
  void anEmptyEndThatNoneShowedIsNotKnown() throws InputProblem {
    assertInstanceOf(Estimate.Unknown.class, of(EMPTY_AH + 60, EMPTY_AH + 60));
  }

  @Test
  void byAllPublishedPairsTheRangeHoldsWhatTheyDifferBy() throws InputProblem {
    double alike = halfWidth(of(true, 0, EMPTY_AH + 3, EMPTY_AH + 3));
    double differing = halfWidth(of(true, 2, EMPTY_AH + 3, EMPTY_AH + 3));
    assertTrue(alike < 0.015 * 280, "half-width " + alike);
    assertEquals(Math.hypot(alike, 1.959964 * 2), differing, 1e-3);
  }

  @Test
  void whatNoCellShowedIsLessCertainWhereNoPairHolds() throws InputProblem {
    double held = halfWidth(of(true, 0, EMPTY_AH + 10, EMPTY_AH + 10));
    double none = halfWidth(of(false, 0, EMPTY_AH + 10, EMPTY_AH + 10));
    assertTrue(none > held, none + " against " + held);
  }

  @Test
  void anEmptyEndFarBelowWhatWasSeenIsNotKnownThoughAPairHold() throws InputProblem {
    assertInstanceOf(Estimate.Unknown.class, of(true, 0, EMPTY_AH + 40, EMPTY_AH + 40));
  }

  @Test
  void whatOneCellAloneShowedWidensThatRangeToo() throws InputProblem {
    double several = halfWidth(of(true, 0, EMPTY_AH + 3, EMPTY_AH + 3));
    double alone = halfWidth(of(true, 0, EMPTY_AH + 3, EMPTY_AH + 31));
    assertEquals(Math.hypot(several, 1.959964 * 0.075 * 28), alone, 1e-3);
  }
}
