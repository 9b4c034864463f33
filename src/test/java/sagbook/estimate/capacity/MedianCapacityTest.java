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
import sagbook.packfile.PackFile;

/** How far the empty end is known: full at 0 Ah, empty at -280 Ah on the axis. */
class MedianCapacityTest {
  private static final double EMPTY_AH = -280;

  private static Estimate of(double seenFromAh, double sharedFromAh) throws InputProblem {
    PackDescription pack =
        PackFile.parse(
            "pack.toml",
            """
            [pack]
            name = "Shed"
            chemistry = "lfp"
            series_cells = 4
            nominal_capacity_ah = 280
            """);
    CurveAnchor anchor =
        new CurveAnchor(
            ElectrodePair.of(pack).get(0), 5, 300, -285, 310, 0, 0.001, 0, EMPTY_AH, 0.5, 0.5);
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
    return new MedianCapacity(record, pack, true, false)
        .of(Optional.of(anchor), true, seenFromAh, sharedFromAh);
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
}
