package sagbook.season;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import sagbook.model.Estimate;
import sagbook.record.DiaryEvent;
import sagbook.record.Quantity;

class SeasonTest {
  private static SeasonResult.Bank judged(InventedSeason season, DiaryEvent... diary) {
    return Season.of(season.make(), List.of(diary)).banks().get(0);
  }

  private static DiaryEvent event(LocalDate day, DiaryEvent.Kind kind, int cell, String mark) {
    return new DiaryEvent(day, kind, "", cell, mark, "");
  }

  private static Estimate.Known known(Estimate estimate) {
    return assertInstanceOf(Estimate.Known.class, estimate);
  }

  @Test
  void theWeakCellDriftsAtItsRateAndNoOtherDoes() {
    for (int seed = 1; seed <= 20; seed++) {
      SeasonResult.Bank bank = judged(new InventedSeason(seed));
      for (SeasonResult.Cell cell : bank.cells()) {
        assertEquals(cell.cell() == 3, cell.isDrifting(), "seed " + seed + ", " + cell);
      }
      Estimate.Known rate = known(bank.cells().get(2).capacityTrend());
      assertEquals(-16.5, rate.value(), 2, "seed " + seed);
      assertTrue(rate.low() < -16.5 && -16.5 < rate.high(), "seed " + seed + rate);
      assertTrue(bank.headline().startsWith("Cell 3 drifts"), bank.headline());
    }
  }

  /** Made for one false alarm in fifty batteries and quantity, where months err as they say. */
  @Test
  void aSoundStringHardlyEverHasACellThatDrifts() {
    int alarms = 0;
    for (int seed = 1; seed <= 100; seed++) {
      InventedSeason season = new InventedSeason(seed);
      season.weak = season.common;
      alarms += judged(season).cells().stream().anyMatch(SeasonResult.Cell::isDrifting) ? 1 : 0;
    }
    assertTrue(alarms <= 4, alarms + " of 100");
  }

  @Test
  void intervalsOfTheStringsRateHoldTheTruthInMostCases() {
    int held = 0;
    for (int seed = 1; seed <= 100; seed++) {
      Estimate.Known rate = known(judged(new InventedSeason(seed)).capacityTrend());
      held += rate.low() <= -2.5 && -2.5 <= rate.high() ? 1 : 0;
    }
    assertTrue(held >= 92, held + " of 100");
  }

  @Test
  void winterIsToldFromAgeing() {
    InventedSeason season = new InventedSeason(5);
    season.common = 0;
    season.stiffening = 0;
    season.weak = 0;
    SeasonResult.Bank bank = judged(season);
    assertFalse(bank.isAgeing());
    Estimate.Known resistance = known(bank.resistanceTrend());
    assertTrue(resistance.low() < 0 && resistance.high() > 0, resistance.toString());
    assertTrue(
        bank.evidence().stream().anyMatch(s -> s.contains("that is the season, not ageing")),
        bank.evidence().toString());
  }

  @Test
  void withoutCurrentThePublishedRateIsTakenAndSaid() {
    InventedSeason season = new InventedSeason(7);
    season.current = false;
    SeasonResult.Bank bank = judged(season);
    assertInstanceOf(Estimate.Unknown.class, bank.capacityTrend());
    SeasonResult.Cell weak = bank.cells().get(2);
    assertEquals(-16.5, known(weak.capacityTrend()).value(), 2);
    assertTrue(
        weak.evidence().stream().anyMatch(s -> s.contains("Figgener")), weak.evidence().toString());
    assertInstanceOf(Estimate.Unknown.class, weak.resistanceTrend());
    assertInstanceOf(Estimate.Unknown.class, weak.yearsTo80());
  }

  @Test
  void threeMonthsMakeNoTrend() {
    InventedSeason season = new InventedSeason(1);
    season.months = 3;
    SeasonResult.Bank bank = judged(season);
    for (SeasonResult.Cell cell : bank.cells()) {
      assertFalse(cell.isDrifting());
      Estimate.Unknown none = assertInstanceOf(Estimate.Unknown.class, cell.capacityTrend());
      assertTrue(none.reason().contains("at least 4 months"), none.reason());
    }
    assertTrue(bank.headline().contains("too short"), bank.headline());
  }

  @Test
  void monthsThatErrMoreMakeWiderTrends() {
    InventedSeason rough = new InventedSeason(3);
    rough.shareSigma = 0.02;
    double wide = known(judged(rough).cells().get(0).capacityAgainstString()).halfWidth();
    double narrow =
        known(judged(new InventedSeason(3)).cells().get(0).capacityAgainstString()).halfWidth();
    assertTrue(wide > 4 * narrow, wide + " " + narrow);
  }

  @Test
  void aReplacedCellStartsANewHistory() {
    InventedSeason season = new InventedSeason(4);
    season.months = 14;
    season.replacedIn = 8;
    DiaryEvent replaced = event(InventedSeason.day(8), DiaryEvent.Kind.CELL_REPLACED, 3, "B17");
    SeasonResult.Bank bank = judged(season, replaced);
    SeasonResult.Cell third = bank.cells().get(2);
    assertEquals("B17", third.mark());
    assertEquals(6, third.months());
    assertFalse(third.isDrifting());
    SeasonResult.Effect effect = bank.effects().get(0);
    assertEquals(Quantity.CAPACITY_RELATIVE, effect.quantity());
    assertTrue(known(effect.change()).isAbove(0.05), effect.toString());
    assertTrue(effect.words().startsWith("It helped"), effect.words());
  }

  @Test
  void rangesThatReachFurtherDownDoSoInWhatAnEventChanged() {
    InventedSeason season = new InventedSeason(4);
    season.months = 14;
    season.replacedIn = 8;
    season.weak = season.common;
    season.shareSigma = 0.01;
    season.reachesDown = 5;
    DiaryEvent replaced = event(InventedSeason.day(8), DiaryEvent.Kind.CELL_REPLACED, 3, "B17");
    SeasonResult.Effect effect = judged(season, replaced).effects().get(0);
    for (Estimate side : List.of(effect.before(), effect.after())) {
      Estimate.Known range = known(side);
      assertTrue(range.value() - range.low() > 2 * (range.high() - range.value()), side.toString());
    }
    Estimate.Known change = known(effect.change());
    Estimate.Known before = known(effect.before());
    assertTrue(change.high() - change.value() > before.value() - before.low(), change.toString());
  }

  @Test
  void aMovedCellKeepsItsHistory() {
    InventedSeason season = new InventedSeason(4);
    List<sagbook.record.KeptMonth> months = season.make();
    List<DiaryEvent> swap =
        List.of(
            event(InventedSeason.day(4), DiaryEvent.Kind.CELL_MOVED, 3, "place 6"),
            event(InventedSeason.day(4), DiaryEvent.Kind.CELL_MOVED, 6, "place 3"));
    Places places = new Places(months, swap);
    assertEquals("place 3", places.markNow(6));
    List<Point> history = places.history(6, Quantity.CAPACITY_RELATIVE, kind -> false);
    assertEquals(8, history.size());
    assertEquals(
        months.get(0).bank().cells().get(2).estimate(Quantity.CAPACITY_RELATIVE),
        history.get(0).value());
    assertEquals(
        months.get(7).bank().cells().get(5).estimate(Quantity.CAPACITY_RELATIVE),
        history.get(7).value());
  }

  @Test
  void aMonthInWhichACellWasReplacedBelongsToNeither() {
    InventedSeason season = new InventedSeason(4);
    Places places =
        new Places(
            season.make(),
            List.of(
                event(InventedSeason.day(4).plusDays(12), DiaryEvent.Kind.CELL_REPLACED, 3, "B")));
    assertEquals(3, places.history(3, Quantity.CAPACITY_RELATIVE, kind -> false).size());
  }

  @Test
  void aTightenedJointBreaksResistanceButNotCapacity() {
    InventedSeason season = new InventedSeason(4);
    Places places =
        new Places(
            season.make(),
            List.of(event(InventedSeason.day(3), DiaryEvent.Kind.JOINT_TIGHTENED, 5, "")));
    assertEquals(
        5,
        places.history(5, Quantity.RESISTANCE_RELATIVE, DiaryEvent.Kind::breaksResistance).size());
    assertEquals(
        8, places.history(5, Quantity.CAPACITY_RELATIVE, DiaryEvent.Kind::breaksCapacity).size());
  }

  @Test
  void aNameGivenLaterHoldsFromTheBeginning() {
    Places places =
        new Places(
            new InventedSeason(1).make(),
            List.of(event(InventedSeason.day(5), DiaryEvent.Kind.CELL_MARKED, 2, "A02")));
    assertEquals("A02", places.mark(2, InventedSeason.day(0)));
    assertEquals("place 4", places.mark(4, InventedSeason.day(0)));
  }

  @Test
  void aStepIsFoundAndMatchedToTheDiary() {
    InventedSeason season = new InventedSeason(9);
    season.months = 24;
    season.weak = season.common;
    season.jointFailsIn = 13;
    season.stiffening = 0;
    SeasonResult.Bank bank =
        judged(season, event(InventedSeason.day(13), DiaryEvent.Kind.BOARD_CHANGED, 5, ""));
    assertEquals(1, bank.changes().size(), bank.changes().toString());
    SeasonResult.Change change = bank.changes().get(0);
    assertEquals(5, change.cell());
    assertEquals(0.5, change.change(), 0.05);
    assertTrue(change.words().contains("board changed"), change.words());
    SeasonResult.Bank silent = judged(season);
    assertTrue(
        silent.changes().get(0).words().contains("diary has nothing"), silent.changes().toString());
  }

  @Test
  void overTwoYearsLikeMonthsAreCompared() {
    InventedSeason season = new InventedSeason(2);
    season.months = 30;
    season.weak = season.common;
    SeasonResult.Bank bank = judged(season);
    Line.Result share =
        Line.through(
            new Places(season.make(), List.of())
                .history(1, Quantity.CAPACITY_RELATIVE, kind -> false),
            java.time.ZoneId.of("Etc/UTC"));
    assertTrue(assertInstanceOf(Line.Result.Drawn.class, share).line().seasonal());
    Estimate.Known rate = known(bank.capacityTrend());
    assertEquals(-2.5, rate.value(), 0.6);
    assertTrue(bank.isAgeing());
  }

  @Test
  void timesAreGivenOnlyAsFarAsTheRecordCarries() {
    SeasonResult.Bank bank = judged(new InventedSeason(6));
    Estimate.Known weak = known(bank.cells().get(2).yearsTo80());
    // 80 % is reached 20 / 16.5 = 1.21 years from the start; the last month's middle is at 0.62.
    assertEquals(0.59, weak.value(), 0.2);
    Estimate.Unknown sound =
        assertInstanceOf(Estimate.Unknown.class, bank.cells().get(0).yearsTo80());
    assertFalse(sound.reason().isBlank());
  }

  @Test
  void whatMonthsFoundIsPutTogether() {
    SeasonResult.Bank bank = judged(new InventedSeason(8));
    assertEquals(1, bank.findings().size(), bank.findings().toString());
    assertTrue(bank.findings().get(0).lasts());
    assertTrue(
        bank.findings().get(0).words().startsWith("Cell 3: low capacity since"),
        bank.findings().get(0).words());
  }

  /** No month told joint from cell, so the season must not either. */
  @Test
  void aJointThatMayBeTheCellIsNotCalledOneOverTheSeason() {
    InventedSeason season = new InventedSeason(8);
    season.jointFailsIn = 4;
    season.jointFound = true;
    assertTrue(
        judged(season).findings().stream()
            .anyMatch(f -> f.words().startsWith("Cell 5: bad joint")));
    season = new InventedSeason(8);
    season.jointFailsIn = 4;
    season.jointFound = true;
    season.jointTold = false;
    assertTrue(
        judged(season).findings().stream()
            .anyMatch(f -> f.words().startsWith("Cell 5: joint or cell")));
  }

  @Test
  void monthsWithAnotherNumberOfCellsAreLeftOut() {
    List<sagbook.record.KeptMonth> months =
        new java.util.ArrayList<>(
            sagbook.record.KeptMonth.of(sagbook.record.InventedResult.month(), "c".repeat(64)));
    months.addAll(new InventedSeason(1).make());
    assertEquals(8, Season.of(months, List.of()).banks().get(0).months().size());
  }

  @Test
  void sumsWhatTheBatteryWentThrough() {
    StressAccount stress = judged(new InventedSeason(1)).stress();
    assertEquals(8 * 720, stress.hours().orElseThrow());
    assertEquals(80, stress.fullCycles().orElseThrow(), 1e-9);
    assertTrue(stress.chargedKWh().isEmpty());
  }
}
