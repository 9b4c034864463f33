package sagbook.whatif;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static sagbook.whatif.InventedString.exact;

import java.util.List;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import sagbook.estimate.UsableCharge;
import sagbook.model.Estimate;

class WhatIfTest {
  /** Worked by hand: cells (capacity, room) of (100, 0), (100, 4), (92, 0) Ah give 92 Ah. */
  private static InventedString worked() {
    return new InventedString().cell(100, 0).cell(100, 4).cell(92, 0);
  }

  private static double ah(Outcome outcome) {
    return outcome.gainAh().find().orElseThrow();
  }

  @Test
  void theWorkedExampleGivesNinetyTwoThenNinetySixThenAHundred() {
    WhatIf string = worked().asked();
    assertEquals(0, ah(string.outcome(Change.rebalance())), 1e-9);
    assertEquals(96 - 92, ah(string.outcome(Change.replace(List.of(3)))), 1e-9);
    assertEquals(0, ah(string.outcome(Change.replace(List.of(2)))), 1e-9);
    assertEquals(100 - 92, ah(string.outcome(Change.replace(List.of(2, 3)))), 1e-9);
  }

  @Test
  void aSmallSpareLimitsWhatItBuys() {
    WhatIf string = worked().spare(94, OptionalDouble.empty()).asked();
    assertEquals(2, ah(string.outcome(Change.replace(List.of(3)))), 1e-9);
  }

  @Test
  void eachOfTwoWeakCellsBuysNothingAloneAndBothTogetherDo() {
    Prospect prospect =
        new InventedString().cell(92, 0).cell(100, 0).cell(92, 0).cell(100, 0).asked().prospect();
    assertEquals(0, ah(prospect.single().get(0)), 1e-9);
    assertEquals(8, ah(prospect.find(Change.replace(List.of(1, 3))).orElseThrow()), 1e-9);
    assertEquals(8, prospect.costs().get(0).aloneAh().find().orElseThrow(), 1e-9);
    assertEquals(0, prospect.costs().get(1).aloneAh().find().orElseThrow(), 1e-9);
    assertEquals(6, prospect.pairs().size());
  }

  @Test
  void namesTheCellsThatEndChargeAndDischarge() {
    Prospect prospect =
        new InventedString().cell(100, 0).cell(100, -5).cell(90, 0).asked().prospect();
    assertEquals(List.of(2), prospect.chargeEndsWith());
    assertEquals(List.of(3), prospect.dischargeEndsWith());
    Estimate doubtful = Estimate.of(0, 1);
    InventedString alike = new InventedString();
    for (int c = 0; c < 3; c++) {
      alike.cell(Estimate.of(1, 0.01), doubtful, exact(1), exact(0));
    }
    assertEquals(3, alike.asked().prospect().chargeEndsWith().size());
  }

  @Test
  void aFullerCellCostsWhatItKeepsTheOthersFrom() {
    Prospect prospect =
        new InventedString().cell(100, -5).cell(100, 0).cell(100, 0).asked().prospect();
    assertEquals(5, prospect.costs().get(0).aloneAh().find().orElseThrow(), 1e-9);
    assertEquals(5, ah(prospect.rebalanced()), 1e-9);
  }

  @Test
  void replacingByNoLessNeverLowersAndRebalancingNeverPassesTheSmallest() {
    SplittableRandom random = new SplittableRandom(8);
    for (int trial = 0; trial < 60; trial++) {
      int n = 2 + random.nextInt(9);
      InventedString string = new InventedString().spare(105, OptionalDouble.empty());
      InventedString sharp = new InventedString();
      double[] capacity = new double[n];
      double[] room = new double[n];
      double smallest = 1e9;
      for (int c = 0; c < n; c++) {
        capacity[c] = 85 + 15 * random.nextDouble();
        room[c] = 20 * random.nextDouble() - 10;
        smallest = Math.min(smallest, capacity[c]);
        string.cell(Estimate.of(capacity[c] / 100, 0.001), exact(-room[c]), exact(1), exact(0));
        sharp.cell(capacity[c], room[c]);
      }
      double now = UsableCharge.exact(capacity, room);
      Prospect prospect = string.asked().prospect();
      assertTrue(now + ah(sharp.asked().prospect().rebalanced()) <= smallest + 1e-9);
      assertTrue(ah(prospect.rebalanced()) >= -1e-9);
      for (Outcome single : prospect.single()) {
        assertTrue(((Estimate.Known) single.gainAh()).low() >= -1e-9, single.toString());
      }
      for (Outcome pair : prospect.pairs()) {
        int first = pair.change().cells().get(0);
        assertTrue(ah(pair) >= ah(prospect.single().get(first - 1)) - 1e-9);
      }
    }
  }

  /** By hand: a joint of 0.5 mΩ drops 25 mV at 50 A; nothing at low rate. */
  @Test
  void aMendedJointAddsNoChargeButTimeAndVoltage() {
    InventedString string = new InventedString();
    for (int c = 0; c < 3; c++) {
      string.cell(100, 0);
    }
    string.cell(exact(1), exact(0), exact(1.5), exact(0.5));
    Prospect prospect = string.asked().prospect();
    Outcome mended = prospect.find(Change.mend(4)).orElseThrow();
    assertEquals(0, ah(mended), 1e-12);
    assertTrue(mended.gainEveningAh().find().orElseThrow() > 0);
    assertTrue(mended.gainEveningMinutes().find().orElseThrow() > 0);
    double fewer = prospect.sagV().find().orElseThrow() - mended.sagV().find().orElseThrow();
    assertEquals(0.025, fewer, 1e-9);
    assertEquals(0.025, mended.lessSagV().find().orElseThrow(), 1e-9);
    assertEquals(75, prospect.costs().get(3).sagMillivolt().find().orElseThrow(), 1e-9);
    assertTrue(prospect.find(Change.mend(1)).isEmpty());
  }

  /** By hand: 8 Ah at 52.8 V are 0.4224 kWh, which at 330 W last 76.8 min. */
  @Test
  void energyAndMinutesFollowFromChargeVoltageAndTheEveningLoad() {
    InventedString string = new InventedString();
    for (int c = 0; c < 15; c++) {
      string.cell(exact(1), exact(0), exact(0), exact(0));
    }
    string.cell(exact(0.92), exact(0), exact(0), exact(0));
    Outcome outcome = string.asked().outcome(Change.replace(List.of(16)));
    assertEquals(0.4224, outcome.gainKWh().find().orElseThrow(), 1e-9);
    assertEquals(76.8, outcome.gainEveningMinutes().find().orElseThrow(), 1e-9);
  }

  /**
   * By hand: seen 10 % smaller, give or take 1; a cell that stands clear may be 10 % to either side
   * (one standard deviation), so 10 · 10² / (10² + 1²) = 9.90 Ah are likely.
   */
  @Test
  void doubtAboutACellIsDoubtAboutItsGain() {
    InventedString string = new InventedString().cell(100, 0).cell(100, 0);
    string.cell(Estimate.of(0.9, 0.01), exact(0), exact(1), exact(0));
    Estimate.Known gain =
        (Estimate.Known) string.asked().outcome(Change.replace(List.of(3))).gainAh();
    assertEquals(10 * 100 / 101.0, gain.value(), 1e-3);
    assertEquals(1.96, gain.halfWidth(), 0.2);
  }

  @Test
  void nothingIsReckonedWithoutCapacitiesAndNoTotalWithoutAMeasuredScale() {
    Estimate unknown = Estimate.unknown("not seen");
    InventedString blind = new InventedString();
    for (int c = 0; c < 4; c++) {
      blind.cell(unknown, exact(0), exact(1), exact(0));
    }
    Prospect nothing = blind.asked().prospect();
    assertTrue(nothing.single().get(0).gainAh() instanceof Estimate.Unknown);
    assertTrue(nothing.usableKWh() instanceof Estimate.Unknown);
    Prospect relative = worked().asked(unknown).prospect();
    assertEquals(unknown, relative.usableKWh());
    assertEquals(4, ah(relative.single().get(2)), 1e-9);
  }

  /** Drawn from what cells usually hold, the gain of a far worn cell lay outside its range. */
  @Test
  void whatReplacingACellBuysWhoseCapacityIsNotKnownIsNotKnownEither() {
    InventedString string = new InventedString().cell(100, 0).cell(100, 0).cell(100, 0);
    string.cell(Estimate.unknown("not seen"), exact(0), exact(1), exact(0));
    WhatIf asked = string.asked();
    assertEquals(
        Estimate.unknown("the size or the charge of cell 4 is not known"),
        asked.outcome(Change.replace(List.of(4))).gainAh());
    assertTrue(asked.outcome(Change.replace(List.of(1, 4))).gainAh() instanceof Estimate.Unknown);
    assertTrue(asked.outcome(Change.replace(List.of(1))).gainAh() instanceof Estimate.Known);
    assertTrue(asked.outcome(Change.rebalance()).gainAh() instanceof Estimate.Known);
  }

  /** Of a cell that had drained itself by its whole charge it was said to cost 2.7 Ah at most. */
  @Test
  void whatACellCostsOrLevellingBuysIsNotKnownWithoutItsCharge() {
    InventedString string = new InventedString().cell(100, 0).cell(100, 0).cell(100, 0);
    string.cell(exact(1), Estimate.unknown("not seen"), exact(1), exact(0));
    Prospect prospect = string.asked().prospect();
    assertTrue(prospect.costs().get(3).aloneAh() instanceof Estimate.Unknown);
    assertTrue(prospect.costs().get(0).aloneAh() instanceof Estimate.Known);
    assertTrue(prospect.rebalanced().gainAh() instanceof Estimate.Unknown);
    assertTrue(prospect.single().get(3).gainAh() instanceof Estimate.Unknown);
  }

  @Test
  void withoutCurrentNoEnergyAndNoSag() {
    Use none = new Use(OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty());
    Prospect prospect = worked().use(none).asked().prospect();
    assertTrue(prospect.single().get(2).gainKWh() instanceof Estimate.Unknown);
    assertTrue(prospect.sagV() instanceof Estimate.Unknown);
    assertEquals(4, ah(prospect.single().get(2)), 1e-9);
  }

  @Test
  void theSameStringGivesTheSameProspect() {
    InventedString string = new InventedString();
    for (int c = 0; c < 4; c++) {
      string.cell(Estimate.of(0.9 + 0.02 * c, 0.01), Estimate.of(c, 0.5), exact(1), exact(0));
    }
    assertEquals(string.asked().prospect(), string.asked().prospect());
  }
}
