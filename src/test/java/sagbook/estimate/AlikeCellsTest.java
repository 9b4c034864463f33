package sagbook.estimate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import sagbook.model.Estimate;

class AlikeCellsTest {
  private static Estimate.Known seen(double value, double sd) {
    return Estimate.of(value, sd);
  }

  private static List<Estimate.Known> cells(double spread, double sd, double... clear) {
    SplittableRandom random = new SplittableRandom(3);
    List<Estimate.Known> cells = new ArrayList<>();
    for (int c = 0; c < 32; c++) {
      double truth = c < clear.length ? clear[c] : 1 + spread * StringDraws.normal(random);
      cells.add(seen(truth + sd * StringDraws.normal(random), sd));
    }
    return cells;
  }

  /** The generator's own spread, within what 32 cells can tell of it (about 15 %) twice over. */
  @Test
  void theCellsSayHowAlikeTheyAre() {
    assertEquals(0.02, AlikeCells.of(cells(0.02, 0.002)).spread(), 0.006);
    assertEquals(0.005, AlikeCells.of(cells(0.005, 0.002)).spread(), 0.0015);
  }

  @Test
  void cellsThatStandClearDoNotMakeTheOthersLookUnlike() {
    assertEquals(0.01, AlikeCells.of(cells(0.01, 0.002, 0.8, 0.85)).spread(), 0.003);
  }

  /** By hand: as doubtful as the cells are unlike, so half of the way back to the middle. */
  @Test
  void aDoubtfulCellIsDrawnToItsNeighbours() {
    AlikeCells.Likely likely = new AlikeCells(1, 0.01).weigh(seen(0.99, 0.01));
    assertEquals(0.995, likely.mean(), 1e-12);
    assertEquals(0.01 / Math.sqrt(2), likely.sd(), 1e-12);
    assertTrue(likely.alike() > 0.95);
  }

  @Test
  void aCellIsNoLikerItsNeighboursForARangeThatReachesFurtherTheOtherWay() {
    AlikeCells alike = new AlikeCells(1, 0.01);
    Estimate.Known even = new Estimate.Known(0.9, 0.85, 0.95);
    Estimate.Known further = new Estimate.Known(0.9, 0.6, 0.95);
    assertEquals(alike.weigh(even).mean(), alike.weigh(further).mean(), 1e-12);
    assertTrue(alike.standsOut(further));
  }

  @Test
  void aCellThatStandsClearOrIsSeenSharplyStaysWhereItWasSeen() {
    AlikeCells alike = new AlikeCells(1, 0.01);
    assertEquals(0.88, alike.weigh(seen(0.88, 0.01)).best(), 0.0013);
    assertEquals(0.97, alike.weigh(seen(0.97, 0)).best(), 1e-12);
  }
}
