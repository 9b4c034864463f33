package sagbook.numeric;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class EvenTableTest {
  private final EvenTable table = new EvenTable(10, 2, new double[] {1, 3, 2});

  @ParameterizedTest
  @CsvSource({"10, 1", "11, 2", "12, 3", "13, 2.5", "14, 2"})
  void isStraightBetweenItsPoints(double place, double value) {
    assertEquals(value, table.at(place), 1e-12);
  }

  @ParameterizedTest
  @CsvSource({"8, -1", "16, 1"})
  void isCarriedOnStraightBeyondItsEnds(double place, double value) {
    assertEquals(value, table.at(place), 1e-12);
  }

  @Test
  void slopeReachesOneStepToEitherSide() {
    assertEquals(0.25, table.slopeAt(12), 1e-12);
    assertEquals(14, table.end(), 1e-12);
  }

  @Test
  void refusesFewerThanTwoValuesOrNoStep() {
    assertThrows(IllegalArgumentException.class, () -> new EvenTable(0, 1, new double[] {1}));
    assertThrows(IllegalArgumentException.class, () -> new EvenTable(0, 0, new double[] {1, 2}));
    assertThrows(
        IllegalArgumentException.class, () -> new EvenTable(0, Double.NaN, new double[] {1, 2}));
  }
}
