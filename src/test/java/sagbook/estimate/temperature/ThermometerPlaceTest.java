package sagbook.estimate.temperature;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import sagbook.estimate.TemperatureFault;
import sagbook.evidence.ThinnedRecord;

/** What a thermometer touches, told from what warms it, on shelves of known physics. */
class ThermometerPlaceTest {
  private static final int DAYS = 30;
  private static final int INNER = 4;
  private static final int OTHER = 9;
  private static final int OUTER = 0;

  private final WarmShelf shelf = new WarmShelf(DAYS, 1);

  /** The cells of which something is said, counted from 1, with the words. */
  private static List<String> said(List<TemperatureFault> faults) {
    return IntStream.range(0, faults.size())
        .filter(c -> faults.get(c) instanceof TemperatureFault.Seen)
        .mapToObj(c -> c + 1 + " " + ((TemperatureFault.Seen) faults.get(c)).words())
        .toList();
  }

  private void assertOnlySaid(String... starts) {
    List<String> said = said(shelf.judged());
    assertEquals(starts.length, said.size(), said::toString);
    for (int i = 0; i < starts.length; i++) {
      int at = i;
      assertTrue(
          Arrays.stream(starts[at].split(" \\.\\. ", -1)).allMatch(said.get(at)::contains),
          said::toString);
    }
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.1, 0.5, 1})
  void thermometerThatHangsInTheRoomIsSeen(double stepK) {
    shelf.stepK = stepK;
    shelf.place[INNER] = WarmShelf.ROOM;
    assertOnlySaid("5 rises with the load by only .. the room");
  }

  @Test
  void thermometerOfAnOuterCellThatHangsInTheRoomIsSeen() {
    shelf.place[OUTER] = WarmShelf.ROOM;
    assertOnlySaid("1 rises with the load by only .. the room");
  }

  @Test
  void manyThermometersInTheRoomAreNotCalledWrongForNobodyKnowsWhichAreRight() {
    for (int c = 0; c < 5; c++) {
      shelf.place[c] = WarmShelf.ROOM;
    }
    assertTrue(said(shelf.judged()).stream().noneMatch(words -> words.contains("room and not")));
  }

  @Test
  void fewDaysSayNothingOfTheRoom() {
    WarmShelf few = new WarmShelf(10, 1);
    few.place[INNER] = WarmShelf.ROOM;
    assertFalse(LoadWarmth.of(few.record()).isApart(INNER));
  }

  @Test
  void withoutACurrentNothingIsSaidOfTheLoad() {
    shelf.place[INNER] = WarmShelf.ROOM;
    ThinnedRecord record = shelf.record();
    Arrays.fill(record.currentA(), Float.NaN);
    assertFalse(LoadWarmth.of(record).isApart(INNER));
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.03, 0.1, 1})
  void swappedThermometersAreSeenWhereBleedingWarmsThem(double boardShare) {
    Arrays.fill(shelf.boardShare, boardShare);
    shelf.swap(INNER, OTHER);
    assertOnlySaid("5 rises by .. seems to be that of cell 10", "10 rises .. that of cell 5");
  }

  @Test
  void swappedNeighboursAreSeenThoughEachBoardWarmsTheNext() {
    Arrays.fill(shelf.boardShare, 0.2);
    shelf.swap(INNER, INNER + 1);
    assertOnlySaid("5 rises by .. seems to be that of cell 6", "6 rises .. that of cell 5");
  }

  @Test
  void thermometersInTurnEachNameTheCellTheySitOn() {
    Arrays.fill(shelf.boardShare, 0.2);
    shelf.swap(1, 5);
    shelf.swap(5, 8);
    assertOnlySaid("2 .. of cell 6", "6 .. of cell 9", "9 .. of cell 2");
  }

  @Test
  void labelsThatAreAllOnePlaceOffAreSeen() {
    Arrays.fill(shelf.boardShare, 0.2);
    for (int c = 0; c < WarmShelf.CELLS; c++) {
      shelf.place[c] = (c + 1) % WarmShelf.CELLS;
    }
    List<String> said = said(shelf.judged());
    assertTrue(said.size() >= WarmShelf.CELLS - 2, said::toString);
    for (String one : said) {
      int cell = Integer.parseInt(one.substring(0, one.indexOf(' ')));
      assertTrue(one.contains("that of cell " + (cell % WarmShelf.CELLS + 1) + " "), one);
    }
  }

  @Test
  void whatIsSeenDoesNotDependOnTheOrderOfTheCells() {
    Arrays.fill(shelf.boardShare, 0.2);
    shelf.swap(INNER, OTHER);
    shelf.place[OUTER] = WarmShelf.ROOM;
    ThinnedRecord record = shelf.record();
    Collections.reverse(Arrays.asList(record.temperatureC()));
    Collections.reverse(Arrays.asList(record.bleedFraction()));
    List<String> said = said(TemperatureWatch.of(record, new double[WarmShelf.CELLS]));
    assertEquals(3, said.size(), said::toString);
    assertTrue(said.get(0).startsWith("3 rises") && said.get(0).contains("that of cell 8 "));
    assertTrue(said.get(1).startsWith("8 rises") && said.get(1).contains("that of cell 3 "));
    assertTrue(said.get(2).startsWith("12 rises with the load"));
  }

  @Test
  void swappedThermometersThatNoBoardWarmsStayUnsaid() {
    shelf.swap(INNER, OTHER);
    assertOnlySaid();
  }

  @Test
  void swappedThermometersStayUnsaidWhereNoBleedingIsLogged() {
    Arrays.fill(shelf.boardShare, 0.03);
    shelf.bleedLogged = false;
    shelf.swap(INNER, OTHER);
    assertOnlySaid();
  }

  @Test
  void thermometerOnItsBoardIsSeenWhereTheOthersTouchCells() {
    shelf.boardShare[INNER] = 0.5;
    assertOnlySaid("5 rises by .. its board and not the cell");
  }

  @Test
  void thermometersThatAllSitOnBoardsAreNoFault() {
    Arrays.fill(shelf.boardShare, 1);
    assertOnlySaid();
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, 0.05, 0.5})
  void soundShelvesAreLeftAlone(double boardShare) {
    for (int seed = 2; seed < 12; seed++) {
      WarmShelf sound = new WarmShelf(DAYS, seed);
      Arrays.fill(sound.boardShare, boardShare);
      sound.stepK = seed % 2 == 0 ? 0.5 : 1;
      assertEquals(List.of(), said(sound.judged()));
    }
  }
}
