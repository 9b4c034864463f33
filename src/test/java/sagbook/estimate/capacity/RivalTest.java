package sagbook.estimate.capacity;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import sagbook.model.Estimate;

/** Which explanations widen what is told of a cell. */
class RivalTest {
  private static final Rival TAKEN = new Rival(0.15, 7);

  @Test
  void oneThatFitsBetterAndSaysThatMoreWasLostCounts() {
    List<Rival> all = List.of(new Rival(0.2, 0), TAKEN, new Rival(0.13, 11), new Rival(0.14, 9));
    assertEquals(11, Rival.mostLossAh(all, TAKEN));
  }

  @Test
  void oneThatFitsWorseOrSaysThatLessWasLostDoesNot() {
    List<Rival> all = List.of(new Rival(0.16, 30), TAKEN, new Rival(0.14, 2));
    assertEquals(7, Rival.mostLossAh(all, TAKEN));
  }

  @Test
  void theRangeReachesDownToWhatTheOtherSays() {
    Estimate taken = new Estimate.Known(0.98, 0.96, 1);
    Estimate.Known both =
        (Estimate.Known) CellAssessor.downTo(taken, new Estimate.Known(0.94, 0.92, 0.96));
    assertEquals(0.98, both.value());
    assertEquals(0.92, both.low());
    assertEquals(1, both.high());
    assertEquals(taken, CellAssessor.downTo(taken, taken));
  }

  /** A narrow range that leaves the other out would be a wrong certainty. */
  @Test
  void whereTheOtherIsTooVagueToTellNothingIsTold() {
    Estimate vague = Estimate.unknown("too vague");
    assertEquals(vague, CellAssessor.downTo(new Estimate.Known(0.98, 0.96, 1), vague));
  }
}
