package sagbook.estimate.capacity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import sagbook.numeric.EvenTable;

/** A curve of 100 Ah that rises by 10 mV an Ah from 2.8 V. */
class SeenPartTest {
  private static final EvenTable NONE = new EvenTable(0, 0.5, new double[201]);

  private static CellCurve curve(double sharedFromAh) {
    double[] v = new double[201];
    for (int i = 0; i < v.length; i++) {
      v[i] = 2.8 + 0.005 * i;
    }
    return new CellCurve(new EvenTable(0, 0.5, v), NONE, 0, sharedFromAh, 100, true, 0);
  }

  @Test
  void whatOneCellAloneShowedHasThatCellsLoss() {
    SeenPart part = SeenPart.of(curve(12), 9, 100);
    assertEquals(0.005, part.from(), 1e-12);
    assertEquals(0.125, part.shared(), 1e-12);
    assertEquals(0.09, part.lostAt(0.1), 1e-12);
    assertEquals(0, part.lostAt(0.2), 1e-12);
  }

  @Test
  void whereTheLowestCellStandsWithTheOthersOnlyWhatSeveralShowedIsUsed() {
    SeenPart part = SeenPart.of(curve(1.5), 9, 100);
    assertEquals(part.shared(), part.from(), 1e-12);
    assertEquals(0, part.lostAt(part.from()), 1e-12);
  }

  @Test
  void aCellThatSeemsToHoldMoreThanItsNeighboursLostNothing() {
    assertEquals(0, SeenPart.of(curve(12), -5, 100).lostAt(0.1), 1e-12);
  }

  @Test
  void theEndIsTheHighestPlaceSeenThatIsNotBeyondFull() {
    SeenPart part = SeenPart.of(curve(12), 9, 100);
    assertEquals(0.995, part.end(4), 1e-12);
    assertEquals(0.695, part.end(3.497), 1e-9);
  }

  @Test
  void aRiseOfFiftyMillivoltsAtTenAnAmpereHourIsFiveAmpereHoursWide() {
    assertEquals(0.05, SeenPart.of(curve(12), 9, 100).width(0.9, 0.05), 1e-9);
  }

  /** A string of two cells, nowhere shown by three. */
  @Test
  void whereNothingWasShownBySeveralAllThatWasSeenIsUsed() {
    SeenPart part = SeenPart.of(curve(110), 9, 100);
    assertEquals(0.005, part.from(), 1e-12);
    assertEquals(0.005, part.shared(), 1e-12);
    assertEquals(0, part.lostAt(0.1), 1e-12);
  }

  @Test
  void aRiseThatWasNotSeenWholeHasNoWidth() {
    assertTrue(Double.isNaN(SeenPart.of(curve(70), 9, 100).width(0.73, 0.05)));
    assertTrue(Double.isNaN(SeenPart.of(curve(12), 9, 100).width(0.9, 0)));
  }
}
