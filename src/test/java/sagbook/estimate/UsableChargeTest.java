package sagbook.estimate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class UsableChargeTest {
  private static final double[] NO_ROOM = {0, 0, 0};

  /** Worked by hand: cells (capacity, room) of (100, 0), (100, 4), (92, 0) Ah. */
  @Test
  void theWornCellLimitsUntilItIsReplacedAndThenTheLowOne() {
    double[] capacity = {100, 100, 92};
    double[] room = {0, 4, 0};
    assertEquals(92, UsableCharge.exact(capacity, room), 1e-12);
    assertEquals(92, UsableCharge.exact(capacity, NO_ROOM), 1e-12);
    double[] replaced = {100, 100, 100};
    assertEquals(96, UsableCharge.exact(replaced, room), 1e-12);
    assertEquals(100, UsableCharge.exact(replaced, NO_ROOM), 1e-12);
  }

  /**
   * Jiang and Zhang, Fundamentals and Applications of Lithium-ion Batteries in Electric Drive
   * Vehicles, Wiley 2015, p. 205: 100 Ah at 75 % and 90 Ah at 50 % give 45 Ah and take 25 Ah, 70 Ah
   * together; balanced, 90 Ah.
   */
  @Test
  void twoCellsOfATextbook() {
    double[] capacity = {100, 90};
    assertEquals(70, UsableCharge.exact(capacity, new double[] {25, 45}), 1e-12);
    assertEquals(90, UsableCharge.exact(capacity, new double[2]), 1e-12);
  }

  /** Arithmetic: the third cell ends the discharge (139.16 Ah), the fourth the charge (117.90). */
  @Test
  void fourCellsWhoseLimitsAreNotTheSameCell() {
    double[] capacity = {280, 270, 284, 262};
    double[] share = {0.50, 0.52, 0.49, 0.55};
    double[] room = new double[4];
    for (int c = 0; c < 4; c++) {
      room[c] = capacity[c] * (1 - share[c]);
    }
    assertEquals(257.06, UsableCharge.exact(capacity, room), 1e-9);
    assertEquals(262, UsableCharge.exact(capacity, new double[4]), 1e-12);
  }

  @Test
  void isNeverAboveTheSmallestCapacityAndIgnoresOrderAndCommonRoom() {
    SplittableRandom random = new SplittableRandom(5);
    for (int trial = 0; trial < 200; trial++) {
      int n = 2 + random.nextInt(14);
      double[] capacity = new double[n];
      double[] room = new double[n];
      double[] backwardsCapacity = new double[n];
      double[] backwardsRoom = new double[n];
      double smallest = Double.POSITIVE_INFINITY;
      for (int c = 0; c < n; c++) {
        capacity[c] = 80 + 20 * random.nextDouble();
        room[c] = 15 * random.nextDouble();
        backwardsCapacity[n - 1 - c] = capacity[c];
        backwardsRoom[n - 1 - c] = room[c] + 7;
        smallest = Math.min(smallest, capacity[c]);
      }
      double usable = UsableCharge.exact(capacity, room);
      assertTrue(usable <= smallest);
      assertTrue(usable >= smallest - 15);
      assertEquals(usable, UsableCharge.exact(backwardsCapacity, backwardsRoom), 1e-9);
    }
  }

  @Test
  void isNothingWhenOneCellIsEmptyBeforeAnotherIsFull() {
    assertEquals(0, UsableCharge.exact(new double[] {100, 100}, new double[] {0, 120}));
  }
}
