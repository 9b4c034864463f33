package sagbook.estimate.capacity;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Rows every six hours. */
class TimeGridTest {
  private static double[] days(int days) {
    return IntStream.rangeClosed(0, 4 * days).mapToDouble(r -> r / 4.0).toArray();
  }

  @Test
  void betweenKnotsItRunsStraight() {
    TimeGrid grid = TimeGrid.over(days(2));
    double[] values = {1, 3, -1};
    double[] expected = {1, 1.5, 2, 2.5, 3, 2, 1, 0, -1};
    for (int r = 0; r < expected.length; r++) {
      assertEquals(expected[r], grid.at(values, r), 1e-12, "row " + r);
    }
  }

  @Test
  void theLastRowLiesOnTheLastKnot() {
    TimeGrid grid = TimeGrid.over(days(30));
    int last = 4 * 30;
    assertEquals(31, grid.knots());
    assertEquals(29, grid.before()[last]);
    assertEquals(1, grid.share()[last], 1e-12);
  }

  @Test
  void aLongLogHasFortyKnots() {
    assertEquals(40, TimeGrid.over(days(200)).knots());
  }
}
