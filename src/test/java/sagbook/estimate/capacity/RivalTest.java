package sagbook.estimate.capacity;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Which explanations widen what is told of a cell. */
class RivalTest {
  private static final Rival TAKEN = new Rival(0.15, 7);

  @Test
  void oneThatFitsBetterAndSaysThatMoreWasLostCounts() {
    List<Rival> all = List.of(new Rival(0.2, 0), TAKEN, new Rival(0.13, 11), new Rival(0.14, 9));
    assertEquals(4, Rival.furtherLossAh(all, TAKEN));
  }

  @Test
  void oneThatFitsWorseOrSaysThatLessWasLostDoesNot() {
    List<Rival> all = List.of(new Rival(0.16, 30), TAKEN, new Rival(0.14, 2));
    assertEquals(0, Rival.furtherLossAh(all, TAKEN));
  }
}
