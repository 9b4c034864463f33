package sagbook.model;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class EstimateTest {
  private static final double TINY = 1e-12;

  /** JCGM 100:2008, 5.1.2: independent uncertainties of a difference add as squares. */
  @Test
  void doubtsOfADifferenceAddAsSquares() {
    Estimate.Known apart = Estimate.within(10, 3).minus(Estimate.within(4, 4));
    assertEquals(6, apart.value(), TINY);
    assertEquals(1, apart.low(), TINY);
    assertEquals(11, apart.high(), TINY);
  }

  @Test
  void aDifferenceIsLeastWhereTheFirstIsLowAndTheOtherHigh() {
    Estimate.Known reachesDown = new Estimate.Known(10, 4, 11);
    Estimate.Known reachesUp = new Estimate.Known(3, 3, 11);
    assertEquals(7 - 10, reachesDown.minus(reachesUp).low(), TINY);
    assertEquals(7 + 1, reachesDown.minus(reachesUp).high(), TINY);
    assertEquals(-7 + 10, reachesUp.minus(reachesDown).high(), TINY);
    assertEquals(-7 - 1, reachesUp.minus(reachesDown).low(), TINY);
  }

  @Test
  void anythingLessWhatIsKnownExactlyKeepsItsRange() {
    Estimate.Known range = new Estimate.Known(5, 4, 8);
    assertEquals(new Estimate.Known(3, 2, 6), range.minus(Estimate.within(2, 0)));
  }
}
