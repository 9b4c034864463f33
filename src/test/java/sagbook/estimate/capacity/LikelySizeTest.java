package sagbook.estimate.capacity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;

/**
 * What is held likely of a cell's size. Expected values by SciPy 1.17.1 (integrate.quad over the
 * same densities, relative tolerance 1e-10), so the mathematics of the grid is checked, not the
 * choice of the densities.
 */
class LikelySizeTest {
  private static final double CAPACITY_AH = 280;
  private static final double NO_BOUND = Double.POSITIVE_INFINITY;

  @Test
  void whatIsSeenSharplyStandsAsSeen() {
    LikelySize size = LikelySize.of(29, 0.3, NO_BOUND, CAPACITY_AH);
    assertEquals(29, size.lossAh());
    assertEquals(0.3, size.sdAh());
  }

  @Test
  void whatIsSeenBadlyIsDrawnTowardsTheNeighbours() {
    LikelySize size = LikelySize.of(6, 8, NO_BOUND, CAPACITY_AH);
    assertEquals(1.358, size.lossAh(), 0.01);
    assertEquals(3.780, size.sdAh(), 0.01);
  }

  @Test
  void aLargeLossIsBelievedEvenWhenSeenBadly() {
    LikelySize size = LikelySize.of(40, 8, NO_BOUND, CAPACITY_AH);
    assertEquals(36.952, size.lossAh(), 0.01);
    assertEquals(7.748, size.sdAh(), 0.01);
  }

  @Test
  void aCellThatKeptOffTheKneeCannotHaveLostMoreThanItsRoom() {
    LikelySize free = LikelySize.of(0, 1e6, NO_BOUND, CAPACITY_AH);
    LikelySize bound = LikelySize.of(0, 1e6, 10, CAPACITY_AH);
    assertEquals(0.133, bound.lossAh(), 0.05);
    assertEquals(3.430, bound.sdAh(), 0.02);
    assertTrue(bound.sdAh() < free.sdAh());
  }
}
