package sagbook.estimate.capacity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import sagbook.estimate.capacity.Explanations.Explanation;
import sagbook.evidence.ThinnedRecord;

/** Which explanations of a cell that stands out are tried, and which are none. */
class ExplanationsTest {
  private static final double NOMINAL_AH = 100;
  private static final double MIDDLE_AH = 8;
  private static final int KNOTS = 3;

  private static Explanations explanations(boolean warped) {
    double[] timeS = {0, 86_400, 2 * 86_400};
    ThinnedRecord record =
        new ThinnedRecord(
            timeS,
            new float[KNOTS],
            new int[KNOTS],
            new float[KNOTS],
            new double[KNOTS],
            new float[4][KNOTS],
            new float[0][],
            new float[0][]);
    StringView view = StringView.of(record, new double[KNOTS], NOMINAL_AH, 0);
    TimeGrid grid = TimeGrid.over(view.day());
    CommonPart common = new CommonPart(view.day(), view.rowsOf(), 4, 1, 10);
    CurveLearner learner = new CurveLearner(view, grid, common, 0.001, 0.2, 0, 0);
    CellFit.Priors priors =
        new CellFit.Priors(20, 8, 30, 0.008, 0.05, 0.001, 1, 0.3, 0.0012, 0.1, 10, 3);
    return new Explanations(view, grid, learner, priors, NOMINAL_AH, warped);
  }

  private static List<Explanation> tried(boolean warped) {
    return explanations(warped).of(CellState.at(MIDDLE_AH, MIDDLE_AH / 2, 0.01, KNOTS));
  }

  private static CellState displacedAndMisread(double shiftAh, double offsetV) {
    return CellState.at(shiftAh, 0, offsetV, KNOTS);
  }

  @Test
  void alongAWarpedAxisACellIsDisplacedOrLevelWithTheOthersAtFullButNotHalfOfEach() {
    for (Explanation e : tried(true)) {
      double atFullAh = e.start().shiftAh() - e.start().lossAh();
      assertTrue(e.start().lossAh() == 0 || atFullAh == 0, e.start()::toString);
    }
  }

  @Test
  void alongAWarpedAxisASizeIsNoExplanation() {
    assertTrue(tried(true).stream().allMatch(e -> e.start().stretch() == 0));
    assertTrue(tried(false).stream().anyMatch(e -> e.start().stretch() < -0.1));
  }

  @Test
  void alongAWarpedAxisAWrongReadingIsTheSimplestExplanation() {
    Explanations explanations = explanations(true);
    Explanation first = explanations.of(displacedAndMisread(MIDDLE_AH, 0.01)).get(0);
    assertSame(explanations.misread(), first.fit());
    assertEquals(0.01, first.start().offsetV());
    assertEquals(0, first.start().shiftAh());
  }

  @Test
  void aCellThatIsBothFarAwayAndFarOffInVoltageIsStrainedAlongAWarpedAxisOnly() {
    CellState both = displacedAndMisread(40, 0.045);
    assertTrue(explanations(true).strained(explanations(true).usual(), both));
    assertFalse(explanations(false).strained(explanations(false).usual(), both));
  }

  @Test
  void aCellThatIsOnlyOffInVoltageIsNotStrained() {
    Explanations explanations = explanations(true);
    assertFalse(explanations.strained(explanations.usual(), displacedAndMisread(1, 0.045)));
  }

  @Test
  void aReadingHeldToBeWrongIsNeverStrained() {
    Explanations explanations = explanations(true);
    assertFalse(explanations.strained(explanations.misread(), displacedAndMisread(40, 0.045)));
  }

  private static CellFit fitOf(Explanations explanations, int place) {
    return explanations.of(displacedAndMisread(MIDDLE_AH, 0.01)).get(place).fit();
  }

  @Test
  void anExplanationThatTakesALittleOfEachHasStrayedAlongAWarpedAxisOnly() {
    Explanations warped = explanations(true);
    CellFit displaced = fitOf(warped, 1);
    CellFit level = fitOf(warped, 2);
    CellState displacedAlone = CellState.at(6, 0, 0, KNOTS);
    CellState levelAlone = CellState.at(6, 6, 0, KNOTS);
    assertFalse(warped.strayed(displaced, displacedAlone));
    assertTrue(warped.strayed(displaced, levelAlone));
    assertFalse(warped.strayed(level, levelAlone));
    assertTrue(warped.strayed(level, displacedAlone));
    assertTrue(warped.strayed(warped.misread(), levelAlone));
    assertFalse(warped.strayed(warped.misread(), CellState.at(0.5, 0, 0.012, KNOTS)));
    assertFalse(explanations(false).strayed(explanations(false).usual(), levelAlone));
  }

  @Test
  void neitherAWrongReadingNorWearAloneKeepsACellFromFull() {
    Explanations warped = explanations(true);
    assertTrue(warped.barred(warped.misread(), -0.8));
    assertTrue(warped.barred(fitOf(warped, 2), -0.8));
    assertFalse(warped.barred(fitOf(warped, 1), -0.8));
  }

  @Test
  void aStringNeverSeenFullBarsNoExplanationNorDoesACellThatRisesWithTheOthers() {
    Explanations warped = explanations(true);
    for (double besideMedian : new double[] {Double.NaN, 0.1, -0.2}) {
      assertFalse(warped.barred(warped.misread(), besideMedian));
      assertFalse(warped.barred(fitOf(warped, 2), besideMedian));
    }
  }
}
