package sagbook.estimate.capacity;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import sagbook.model.Estimate;

/** Which explanations widen what is told of a cell, and how far. */
class RivalTest {
  private static final CellState TAKEN = lost(7, -0.014);

  private static CellState lost(double lossAh, double offsetV) {
    return CellState.at(0, lossAh, offsetV, 1);
  }

  @Test
  void onlyOnesThatFitBetterCount() {
    Rival better = new Rival(0.13, lost(11, 0));
    List<Rival> all = List.of(new Rival(0.2, lost(0, 0)), new Rival(0.15, TAKEN), better);
    assertEquals(List.of(better), Rival.betterThan(0.15, all));
  }

  /** A cell read 14 mV low that may as well be worn: what its voltage is off by is not known. */
  @Test
  void theRangeReachesAsFarAsTheOthersSay() {
    List<Rival> rivals =
        List.of(new Rival(0.13, lost(11, -0.002)), new Rival(0.14, lost(2, -0.016)));
    Estimate.Known volt =
        (Estimate.Known)
            Rival.reach(new Estimate.Known(-14, -17, -11), rivals, TAKEN, CellState::offsetV, 1000);
    assertEquals(-14, volt.value());
    assertEquals(-19, volt.low(), 1e-9);
    assertEquals(1, volt.high(), 1e-9);
  }

  @Test
  void withoutRivalsARangeIsWhatItWas() {
    Estimate value = new Estimate.Known(-14, -17, -11);
    assertEquals(value, Rival.reach(value, List.of(), TAKEN, CellState::offsetV, 1000));
    Estimate none = Estimate.unknown("nothing was seen");
    assertEquals(none, Rival.reach(none, List.of(), TAKEN, CellState::offsetV, 1000));
  }

  @Test
  void aCapacityReachesDownToWhatTheOtherSays() {
    Estimate taken = new Estimate.Known(0.98, 0.96, 1);
    Estimate.Known both =
        (Estimate.Known) CellAssessor.downTo(taken, new Estimate.Known(0.94, 0.92, 0.96));
    assertEquals(0.98, both.value());
    assertEquals(0.92, both.low());
    assertEquals(1, both.high());
  }

  /** A narrow range that leaves the other out would be a wrong certainty. */
  @Test
  void whereTheOtherIsTooVagueToTellNothingIsTold() {
    Estimate vague = Estimate.unknown("too vague");
    assertEquals(vague, CellAssessor.downTo(new Estimate.Known(0.98, 0.96, 1), vague));
  }
}
