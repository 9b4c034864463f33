package sagbook.estimate.capacity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sagbook.estimate.curve.ElectrodePair;
import sagbook.estimate.curve.HalfCells;
import sagbook.estimate.curve.MixedPair;
import sagbook.estimate.curve.WornPair;
import sagbook.model.Chemistry;
import sagbook.model.Limits;
import sagbook.numeric.EvenTable;

/** Strings of 100 Ah made of published electrodes; the axis begins where their graphite does. */
class StringEndsTest {
  private static final double NOMINAL_AH = 100;
  private static final double STEP_AH = 0.2;
  private static final Limits LIMITS = Limits.of(Chemistry.LFP);

  /** Rest voltage of cells that lost some lithium, V at a share of the usual new cell's charge. */
  private static DoubleUnaryOperator cell(ElectrodePair pair, double lost) {
    return q ->
        pair.positive(pair.fullPositive() + (1 - q - lost) / pair.positiveSize())
            - pair.negative(pair.emptyNegative() + q / pair.negativeSize());
  }

  /** A curve that one cell taught below a place and several above it. */
  private static CellCurve curve(
      DoubleUnaryOperator one,
      DoubleUnaryOperator several,
      double fromAh,
      double sharedAh,
      double toAh) {
    int n = (int) Math.round((toAh - fromAh) / STEP_AH) + 1;
    double[] v = new double[n];
    for (int i = 0; i < n; i++) {
      double ah = fromAh + i * STEP_AH;
      v[i] = (ah < sharedAh ? one : several).applyAsDouble(ah / NOMINAL_AH);
    }
    EvenTable whole = new EvenTable(fromAh, STEP_AH, v);
    EvenTable none = new EvenTable(fromAh, STEP_AH, new double[n]);
    return new CellCurve(whole, none, fromAh, sharedAh, toAh, true, 0.01);
  }

  private static StringEnds ends(CellCurve curve, double lostAh) {
    return ends(curve, Optional.of(lostAh));
  }

  private static StringEnds ends(CellCurve curve, Optional<Double> lostAh) {
    return StringEnds.of(curve, lostAh, NOMINAL_AH, LIMITS).orElseThrow();
  }

  private static double capacityAh(StringEnds ends) {
    return ends.fullAh() - ends.emptyAh();
  }

  @ParameterizedTest
  @CsvSource({
    "AFSHAR_CHEN, AFSHAR_CHEN, 0.02",
    "SAFARI_DELACOURT, AFSHAR_CHEN, 0.03",
    "SAFARI_DELACOURT, SAFARI_DELACOURT, 0.01",
    "AFSHAR_CHEN, SAFARI_DELACOURT, 0.02",
    "AFSHAR_CHEN, NMC_ABOUT_ENERGY, 0.02"
  })
  void whatAWornCellAloneShowedPlacesTheOthersEmptyEndWithItsOwnLossReckonedWith(
      HalfCells positive, HalfCells graphite, double lost) {
    ElectrodePair pair = new MixedPair(positive, graphite);
    double wornLost = lost + 0.1;
    CellCurve curve =
        curve(cell(pair, wornLost), cell(pair, lost), 2, 11, 99.6 - lost * NOMINAL_AH);
    StringEnds ends = ends(curve, 0.1 * NOMINAL_AH);
    double truthAh = NOMINAL_AH * WornPair.charge(pair, lost, 3.65, 2.5);
    assertTrue(ends.holds());
    assertEquals(truthAh, capacityAh(ends), 0.005 * NOMINAL_AH);
  }

  private static CellCurve tenPerCentShownByOneWornCell() {
    ElectrodePair pair = new MixedPair(HalfCells.SAFARI_DELACOURT, HalfCells.AFSHAR_CHEN);
    return curve(cell(pair, 0.12), cell(pair, 0.02), 2, 11, 97.6);
  }

  @Test
  void aLossThatWasReadThreePerCentWrongHardlyMovesTheCapacity() {
    CellCurve curve = tenPerCentShownByOneWornCell();
    assertEquals(capacityAh(ends(curve, 10)), capacityAh(ends(curve, 13)), 0.001 * NOMINAL_AH);
  }

  @Test
  void whatACellAloneShowedWhoseLossIsNotKnownIsLeftOut() {
    StringEnds ends = ends(tenPerCentShownByOneWornCell(), Optional.empty());
    assertEquals(11 + STEP_AH, ends.usedFromAh(), 1e-9);
    ElectrodePair pair = new MixedPair(HalfCells.SAFARI_DELACOURT, HalfCells.AFSHAR_CHEN);
    DoubleUnaryOperator several = cell(pair, 0.02);
    StringEnds without = ends(curve(several, several, 11, 11, 97.6), Optional.empty());
    assertEquals(capacityAh(without), capacityAh(ends), 0.001 * NOMINAL_AH);
  }

  /** Graphite of another maker than any that is published: between two of those. */
  @Test
  void whereNoPairHoldsWhatTheyDifferByIsUncertain() {
    DoubleUnaryOperator one =
        cell(new MixedPair(HalfCells.SAFARI_DELACOURT, HalfCells.AFSHAR_CHEN), 0.02);
    DoubleUnaryOperator other =
        cell(new MixedPair(HalfCells.AFSHAR_CHEN, HalfCells.SAFARI_DELACOURT), 0.02);
    DoubleUnaryOperator between = q -> (one.applyAsDouble(q) + other.applyAsDouble(q)) / 2;
    StringEnds held = ends(curve(one, one, 4, 4, 97), 0);
    StringEnds none = ends(curve(between, between, 4, 4, 97), 0);
    assertTrue(held.holds());
    assertFalse(none.holds());
    assertTrue(none.sdAh() > 2 * held.sdAh(), () -> held.sdAh() + " and " + none.sdAh());
  }

  /** A knee of half the width that is published, seen to 3.5 V. */
  @Test
  void aKneeThatIsSteeperThanAnyPublishedOneIsLeftTheSooner() {
    ElectrodePair gentle = HalfCells.SAFARI_DELACOURT;
    double fullV = LIMITS.cellFullVoltage();
    DoubleUnaryOperator published = cell(gentle, 0);
    // Beyond 90 % the same knee is gone through twice as fast.
    DoubleUnaryOperator steep = q -> published.applyAsDouble(q < 0.9 ? q : 0.9 + 2 * (q - 0.9));
    double toAh = passed(steep, 0.85, 3.5) * NOMINAL_AH;
    double leftAh = passed(steep, 0.85, fullV) * NOMINAL_AH - toAh;
    double publishedLeftAh =
        (passed(published, 0.85, fullV) - passed(published, 0.85, 3.5)) * NOMINAL_AH;
    CellCurve curve = curve(steep, steep, 3, 3, toAh);
    double saidAh = ends(curve, 0).fullAh() - toAh;
    assertTrue(publishedLeftAh > 1.9 * leftAh);
    assertEquals(leftAh, saidAh, 0.35 * leftAh);
  }

  /**
   * Charges that end on the first 40 mV of the knee, as charging apps advise; a graphite between
   * two that are published, so that no pair's flat part has the string's length.
   */
  @ParameterizedTest
  @CsvSource({
    "AFSHAR_CHEN, NMC_CHEN, SAFARI_DELACOURT, 3.365",
    "AFSHAR_CHEN, NMC_CHEN, SAFARI_DELACOURT, 3.38",
    "AFSHAR_CHEN, LCO_AI, NMC_CHEN, 3.38",
    "AFSHAR_CHEN, NMC_CHEN, NMC_CHEN, 3.38",
    "SAFARI_DELACOURT, SAFARI_DELACOURT, SAFARI_DELACOURT, 3.39"
  })
  void aKneeThatWasHardlyClimbedIsLeftAsThePublishedOneItIs(
      HalfCells positive, HalfCells graphite, HalfCells other, double endV) {
    DoubleUnaryOperator cell = between(positive, graphite, other);
    double fullAh = passed(cell, 0.85, LIMITS.cellFullVoltage()) * NOMINAL_AH;
    assertEquals(fullAh, endsSeenTo(cell, endV).fullAh(), 0.005 * NOMINAL_AH);
  }

  /** Their knee is gentler than that of the pairs which lie nearest by their graphite. */
  @ParameterizedTest
  @CsvSource({
    "SAFARI_DELACOURT, NMC_CHEN, SAFARI_DELACOURT, 3.38",
    "SAFARI_DELACOURT, LCO_AI, NMC_CHEN, 3.38"
  })
  void whereNoPairHoldsTheRangeReachesToEveryPublishedKnee(
      HalfCells positive, HalfCells graphite, HalfCells other, double endV) {
    DoubleUnaryOperator cell = between(positive, graphite, other);
    double fullAh = passed(cell, 0.85, LIMITS.cellFullVoltage()) * NOMINAL_AH;
    StringEnds ends = endsSeenTo(cell, endV);
    assertFalse(ends.holds());
    assertEquals(fullAh, ends.fullAh(), 1.96 * ends.sdAh());
  }

  private static DoubleUnaryOperator between(
      HalfCells positive, HalfCells graphite, HalfCells other) {
    DoubleUnaryOperator one = cell(new MixedPair(positive, graphite), 0);
    DoubleUnaryOperator two = cell(new MixedPair(positive, other), 0);
    return q -> (one.applyAsDouble(q) + two.applyAsDouble(q)) / 2;
  }

  private static StringEnds endsSeenTo(DoubleUnaryOperator cell, double endV) {
    return ends(curve(cell, cell, 3, 3, passed(cell, 0.85, endV) * NOMINAL_AH), 0);
  }

  /** Up the curve in steps of a thousandth of an ampere-hour, at most one charge. */
  private static double passed(DoubleUnaryOperator cell, double from, double volt) {
    return IntStream.range(0, 100_000)
        .mapToDouble(i -> from + 1e-5 * i)
        .filter(q -> cell.applyAsDouble(q) >= volt)
        .findFirst()
        .orElseThrow();
  }
}
