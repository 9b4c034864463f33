package sagbook.estimate.capacity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sagbook.estimate.capacity.CellReading.Figure;
import sagbook.estimate.curve.ElectrodePair;
import sagbook.estimate.curve.HalfCells;
import sagbook.estimate.curve.MixedPair;
import sagbook.estimate.curve.WornPair;
import sagbook.numeric.EvenTable;

/** Strings made of published electrodes, whose lowest tenth only a worn cell has shown. */
class ExcessLossTest {
  private static final double NOMINAL_AH = 100;
  private static final double STEP_AH = 0.2;
  private static final double SHARED_FROM_AH = 9;
  private static final double TO_AH = 99.6;
  private static final double EMPTY_V = 2.5;
  private static final double LOST = 0.1;

  /** The curve of cells that lost some lithium already; below what they showed, the graphite's. */
  private static CellCurve curve(ElectrodePair pair, double usuallyLost) {
    int n = (int) Math.round(TO_AH / STEP_AH) + 1;
    double[] v = new double[n];
    for (int i = 0; i < n; i++) {
      double q = i * STEP_AH / NOMINAL_AH;
      double lost = q < SHARED_FROM_AH / NOMINAL_AH ? 0.1 : usuallyLost;
      double y = pair.fullPositive() + (1 - q - lost) / pair.positiveSize();
      v[i] = pair.positive(y) - pair.negative(pair.emptyNegative() + q / pair.negativeSize());
    }
    EvenTable whole = new EvenTable(0, STEP_AH, v);
    EvenTable none = new EvenTable(0, STEP_AH, new double[n]);
    double toAh = TO_AH - usuallyLost * NOMINAL_AH;
    return new CellCurve(whole, none, 0, SHARED_FROM_AH, toAh, true, 0.01);
  }

  /** What the pair itself says, by {@link WornPair}. */
  private static double truth(ElectrodePair pair, double usuallyLost) {
    double usual = WornPair.charge(pair, usuallyLost, 3.65, EMPTY_V);
    return LOST - (usual - WornPair.charge(pair, usuallyLost + LOST, 3.65, EMPTY_V));
  }

  @ParameterizedTest
  @CsvSource({
    "AFSHAR_CHEN, AFSHAR_CHEN, 0",
    "AFSHAR_CHEN, AFSHAR_CHEN, 0.03",
    "SAFARI_DELACOURT, AFSHAR_CHEN, 0",
    "SAFARI_DELACOURT, AFSHAR_CHEN, 0.03",
    "SAFARI_DELACOURT, SAFARI_DELACOURT, 0",
    "AFSHAR_CHEN, SAFARI_DELACOURT, 0.02"
  })
  void whatSeveralCellsShowedTellsWhichElectrodeEmptiesThem(
      HalfCells positive, HalfCells graphite, double usuallyLost) {
    ElectrodePair pair = new MixedPair(positive, graphite);
    Figure excess = ExcessLoss.of(curve(pair, usuallyLost), NOMINAL_AH, true, EMPTY_V).of(LOST);
    double truth = truth(pair, usuallyLost);
    assertEquals(truth, excess.value(), 0.008);
    assertEquals(truth, excess.value(), Math.max(0.004, 2 * excess.sd()));
    assertTrue(excess.sd() < 0.02, () -> "known to " + excess.sd());
  }

  /** Cells that hold less than they were sold for are no worn ones. */
  @Test
  void aStringThatHoldsLessThanNominalIsReadAsOneThatHoldsAll() {
    ElectrodePair pair = new MixedPair(HalfCells.SAFARI_DELACOURT, HalfCells.AFSHAR_CHEN);
    CellCurve whole = curve(pair, 0.02);
    CellCurve less = times(0.75, whole);
    Figure full = ExcessLoss.of(whole, NOMINAL_AH, true, EMPTY_V).of(LOST);
    Figure small = ExcessLoss.of(less, 0.75 * NOMINAL_AH, true, EMPTY_V).of(LOST);
    assertEquals(full.value(), small.value(), 1e-6);
    assertEquals(full.sd(), small.sd(), 1e-6);
  }

  private static CellCurve times(double size, CellCurve of) {
    EvenTable b = of.bottom();
    EvenTable bottom = new EvenTable(size * b.start(), size * b.step(), b.values());
    EvenTable none = new EvenTable(bottom.start(), bottom.step(), of.top().values());
    return new CellCurve(
        bottom,
        none,
        size * of.visitedFromAh(),
        size * of.sharedFromAh(),
        size * of.visitedToAh(),
        of.topVisited(),
        of.hysteresisV());
  }

  @Test
  void stringsThatTheirPositiveEmptiesAreToldFromThoseThatTheirGraphiteDoes() {
    ElectrodePair early = new MixedPair(HalfCells.SAFARI_DELACOURT, HalfCells.AFSHAR_CHEN);
    ElectrodePair late = HalfCells.AFSHAR_CHEN;
    double more = ExcessLoss.of(curve(early, 0), NOMINAL_AH, true, EMPTY_V).of(LOST).value();
    double less = ExcessLoss.of(curve(late, 0.03), NOMINAL_AH, true, EMPTY_V).of(LOST).value();
    assertTrue(more > 0.015, () -> "the positive empties them first: " + more);
    assertTrue(less < 0.006, () -> "the graphite empties them: " + less);
  }

  @Test
  void alongAMadeUpAxisNothingIsReadOffTheCurve() {
    ElectrodePair pair = new MixedPair(HalfCells.SAFARI_DELACOURT, HalfCells.AFSHAR_CHEN);
    Figure one = ExcessLoss.of(curve(pair, 0), NOMINAL_AH, false, EMPTY_V).of(LOST);
    Figure other = ExcessLoss.of(curve(pair, 0.03), NOMINAL_AH, false, EMPTY_V).of(LOST);
    assertEquals(one.value(), other.value(), 1e-4);
    assertTrue(one.sd() > 0.005, () -> "known to " + one.sd());
  }

  @Test
  void aCellThatLostNothingHasNoExcess() {
    Figure none = ExcessLoss.of(curve(HalfCells.AFSHAR_CHEN, 0), NOMINAL_AH, true, EMPTY_V).of(0);
    assertEquals(0, none.value(), 1e-9);
    assertEquals(0, none.sd(), 1e-9);
  }
}
