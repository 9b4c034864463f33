package sagbook.estimate.temperature;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

/** Where thermometers sit, from what bleeding adds to each: 4 K to the one on the cell. */
class BleedWarmthTest {
  private static final int CELLS = 8;

  private final double[][] kelvin = new double[CELLS][CELLS];
  private final double[][] sd = new double[CELLS][CELLS];

  BleedWarmthTest() {
    for (int c = 0; c < CELLS; c++) {
      Arrays.fill(sd[c], 0.4);
      kelvin[c][c] = 4;
    }
  }

  private OptionalInt placeOf(int thermometer) {
    return new BleedWarmth(kelvin, sd).sitsOn(thermometer);
  }

  private void swapTwoAndFive() {
    kelvin[2][2] = 0;
    kelvin[5][5] = 0;
    kelvin[2][5] = 4;
    kelvin[5][2] = 4;
  }

  @Test
  void eachOfTwoThatChangedPlacesIsOnTheOthersCell() {
    swapTwoAndFive();
    assertEquals(OptionalInt.of(5), placeOf(2));
    assertEquals(OptionalInt.of(2), placeOf(5));
    assertEquals(OptionalInt.empty(), placeOf(0));
  }

  @Test
  void lessIsAskedOfTheSecondOfTwo() {
    swapTwoAndFive();
    sd[5][2] = 0.9;
    assertEquals(OptionalInt.of(2), placeOf(5));
    assertEquals(OptionalInt.of(5), placeOf(2));
  }

  @Test
  void nothingIsSaidWhereNeitherStandsClear() {
    swapTwoAndFive();
    sd[5][2] = 0.9;
    sd[2][5] = 0.9;
    assertEquals(OptionalInt.empty(), placeOf(5));
    assertEquals(OptionalInt.empty(), placeOf(2));
  }

  @Test
  void neighbourThatIsWarmedAlongIsInItsPlace() {
    kelvin[2][3] = 3.9;
    assertEquals(OptionalInt.empty(), placeOf(2));
  }

  @Test
  void thermometerWhoseOwnCellNeverBledIsNotPlaced() {
    swapTwoAndFive();
    for (int t = 0; t < CELLS; t++) {
      kelvin[t][2] = 0;
      sd[t][2] = 0;
    }
    assertEquals(OptionalInt.empty(), placeOf(2));
  }

  @Test
  void nothingIsSaidWhereMostThermometersBelongToNoCell() {
    swapTwoAndFive();
    for (int t = 0; t < CELLS; t++) {
      if (t != 2 && t != 5) {
        kelvin[t][t] = 0.3;
      }
    }
    assertEquals(OptionalInt.empty(), placeOf(2));
  }

  @Test
  void oneThatAloneIsWarmedByItsBleedingShowsItsBoard() {
    assertFalse(new BleedWarmth(kelvin, sd).isBoard(1));
    for (int t = 0; t < CELLS; t++) {
      kelvin[t][t] = t == 1 ? 8 : 0.3;
    }
    assertTrue(new BleedWarmth(kelvin, sd).isBoard(1));
    assertFalse(new BleedWarmth(kelvin, sd).isBoard(0));
  }

  @Test
  void whereFewCellsBledNoneIsComparedWithTheOthers() {
    kelvin[1][1] = 8;
    for (int t = 2; t < CELLS; t++) {
      for (int c = 2; c < CELLS; c++) {
        kelvin[t][c] = 0;
        sd[t][c] = 0;
      }
    }
    assertFalse(new BleedWarmth(kelvin, sd).isBoard(1));
  }
}
