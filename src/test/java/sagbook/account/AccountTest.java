package sagbook.account;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;
import sagbook.estimate.BankEstimates;
import sagbook.estimate.CellEstimates;
import sagbook.estimate.TemperatureFault;
import sagbook.evidence.Evidence;
import sagbook.evidence.EvidenceCollector;
import sagbook.model.CapacitySource;
import sagbook.model.Channels;
import sagbook.model.Chemistry;
import sagbook.model.Estimate;
import sagbook.model.Limits;
import sagbook.model.PackDescription;
import sagbook.model.SampleBlock;

/** Two cells of 280 Ah, logged every minute, told hour by hour. */
class AccountTest {
  private static final Estimate UNKNOWN = Estimate.unknown("not measured");
  private static final PackDescription PACK =
      PackDescription.of("Two", Chemistry.LFP, 2, 280, ZoneId.of("Etc/UTC"));

  private record Hours(
      IntToDoubleFunction ampere,
      IntToDoubleFunction volt,
      IntToDoubleFunction celsius,
      IntToDoubleFunction bleed) {

    Evidence evidence(int hours) {
      Channels channels = new Channels(2, true, true, true);
      EvidenceCollector collector =
          new EvidenceCollector(channels, Limits.of(Chemistry.LFP), 280, 3.3);
      SampleBlock block = new SampleBlock(channels, hours * 60);
      for (int r = 0; r < hours * 60; r++) {
        int hour = r / 60;
        block.timeS()[r] = 1_767_225_600 + 60.0 * r;
        block.currentA()[r] = ampere.applyAsDouble(hour);
        for (int c = 0; c < 2; c++) {
          block.voltageV()[c][r] = volt.applyAsDouble(hour);
          block.temperatureC()[c][r] = celsius.applyAsDouble(hour) + 3 * c;
          block.bleedFraction()[c][r] = c == 0 ? bleed.applyAsDouble(hour) : 0;
        }
      }
      block.setRows(hours * 60);
      collector.accept(block);
      return collector.finish();
    }
  }

  private static double in(int hour, double... values) {
    return values[Math.min(hour, values.length - 1)];
  }

  private static BankEstimates estimates(Estimate offset, Estimate drain) {
    List<CellEstimates> cells = new ArrayList<>();
    for (int cell = 1; cell <= 2; cell++) {
      cells.add(
          new CellEstimates(
              cell,
              UNKNOWN,
              UNKNOWN,
              UNKNOWN,
              UNKNOWN,
              UNKNOWN,
              UNKNOWN,
              cell == 1 ? offset : Estimate.of(0, 0.1),
              cell == 1 ? drain : UNKNOWN,
              UNKNOWN,
              new TemperatureFault.None(),
              Optional.empty()));
    }
    return new BankEstimates(
        10, UNKNOWN, UNKNOWN, UNKNOWN, UNKNOWN, Collections.nCopies(2, UNKNOWN), cells, List.of());
  }

  /** By hand: 4 h in and 20 h out at 10 A, 2 h of it cool; then 6 h out, too low. */
  @Test
  void addsUpTheDaysOneByOne() {
    Hours hours =
        new Hours(
            h -> h < 4 ? 10 : h < 30 ? -10 : 0,
            h -> h < 4 ? 3.45 : h < 24 ? 3.2 : h < 30 ? 2.4 : 3.2,
            h -> h < 2 ? 2 : 12,
            h -> 0);
    List<StressDay> days = StressCalendar.of(hours.evidence(48).thinned(), PACK);
    assertEquals(2, days.size());
    StressDay first = days.get(0);
    assertEquals(LocalDate.parse("2026-01-01"), first.day());
    assertEquals(40, first.chargedAh(), 0.5);
    assertEquals(200, first.dischargedAh(), 0.5);
    assertEquals(200, first.deepestAh(), 0.5);
    assertEquals(2, first.chargedCoolHours(), 0.05);
    assertEquals(4, first.nearFullHours(), 0.05);
    assertEquals(0, first.outsideHours(), 0);
    assertEquals(2, first.coldestC(), 0.01);
    assertEquals(15, first.warmestC(), 0.01);
    assertEquals(3.45, first.highestV(), 0.001);
    StressDay second = days.get(1);
    assertEquals(60, second.deepestAh(), 0.5);
    assertEquals(6, second.outsideHours(), 0.05);
    assertEquals(0, second.chargedCoolHours(), 0);
    assertEquals(2.4, second.lowestV(), 0.001);
  }

  /** By hand: 2 h at 10 A below 0 °C, one more below 5 °C, two warm; then as long back. */
  @Test
  void countsChargingInTheColdAndTheHeat() {
    Hours hours =
        new Hours(
            h -> h < 5 ? 10 : -10,
            h -> h < 5 ? 3.4 : 3.23,
            h -> in(h, -2, -2, 3, 20, 47, 20),
            h -> 0);
    StressAccount account = StressAccount.of(hours.evidence(10), PACK, UNKNOWN);
    near(account.chargedFrozen(), 2, 20);
    near(account.chargedCool(), 3, 30);
    near(account.chargedHot(), 1, 10);
    assertEquals(50.0 / 280, account.fullCycles().orElseThrow(), 0.002);
    assertEquals(3.23 / 3.4, account.efficiency().orElseThrow(), 0.002);
    assertEquals(5, account.heldFullHours(), 0.1);
    assertEquals(5 / 24.0, account.daysSinceFull().orElseThrow(), 0.01);
    assertEquals(3, account.usualSpreadK().orElseThrow(), 1e-3);
  }

  private static void near(Optional<Exposure> exposure, double hours, double ah) {
    assertEquals(hours, exposure.orElseThrow().hours(), 0.05);
    assertEquals(ah, exposure.orElseThrow().chargedAh(), 0.5);
  }

  /** One ampere into 280 Ah is what a sensor's zero may be off by, not charging. */
  @Test
  void aSensorsNoiseIsNoCharging() {
    Evidence evidence = new Hours(h -> 1, h -> 3.3, h -> -5, h -> 0).evidence(5);
    near(StressAccount.of(evidence, PACK, UNKNOWN).chargedFrozen(), 0, 0);
    assertEquals(0, evidence.stress().hoursChargingCold()[0]);
  }

  /** 3.3 Ω at 3.45 V takes 1.045 A; one per cent of 280 Ah takes 2 h 41 min (arithmetic). */
  @Test
  void bleedingOnePerCentTakesTwoHoursAndFortyOneMinutes() {
    double ampere = BalancingAccount.ampere(3.45, 3.3);
    assertEquals(1.045, ampere, 0.0005);
    Limits base = Limits.of(Chemistry.LFP);
    Limits lower =
        new Limits(
            3.45,
            base.cellEmptyVoltage(),
            base.cellMaxVoltage(),
            base.cellMinVoltage(),
            0,
            45,
            5,
            -20,
            55);
    PackDescription pack =
        new PackDescription(
            "Two",
            Chemistry.LFP,
            2,
            280,
            CapacitySource.TOLD,
            PACK.timezone(),
            Optional.of(3.3),
            Optional.empty(),
            lower,
            PACK.rules(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            List.of(),
            List.of());
    Evidence evidence = new Hours(h -> 0, h -> 3.45, h -> 20, h -> 1).evidence(3);
    BalancingAccount account =
        BalancingAccount.of(evidence, estimates(Estimate.of(1, 0), UNKNOWN), pack).orElseThrow();
    double hours = account.boards().get(0).hoursToLevel().find().orElseThrow();
    assertEquals(2 + 41 / 60.0, hours, 0.01);
    assertEquals(3 * 1.045, account.boards().get(0).bledAh(), 0.03);
    assertEquals(0, account.boards().get(1).hoursToLevel().find().orElseThrow());
  }

  @Test
  void tellsWhatWasBledNearFullFromWhatWasWasted() {
    Evidence evidence =
        new Hours(h -> 0, h -> h < 1 ? 3.45 : 3.3, h -> 20, h -> h < 4 ? 1 : 0).evidence(8);
    BalancingAccount account =
        BalancingAccount.of(evidence, estimates(Estimate.of(0, 0.1), UNKNOWN), PACK).orElseThrow();
    BalancingAccount.Board board = account.boards().get(0);
    assertEquals(4, board.hours(), 0.1);
    assertEquals(3.45 / (3.45 + 3 * 3.3), board.nearFullShare(), 0.02);
    assertFalse(board.isHeldBackByWarmth());
    assertTrue(Double.isNaN(account.boards().get(1).lastS()));
    assertTrue(account.keepsUp().isEmpty());
  }

  /** By hand: one hour in eight near full at 3.65 V over 3.3 Ω is 138 mA on average. */
  @Test
  void saysWhetherTheBoardsKeepUp() {
    Evidence evidence = new Hours(h -> 0, h -> h < 1 ? 3.45 : 3.3, h -> 20, h -> 0).evidence(8);
    BalancingAccount slow =
        BalancingAccount.of(evidence, estimates(UNKNOWN, Estimate.of(50, 5)), PACK).orElseThrow();
    assertEquals(138, slow.mostMilliamp(), 2);
    assertEquals(Optional.of(true), slow.keepsUp());
    assertEquals(
        Optional.of(false),
        BalancingAccount.of(evidence, estimates(UNKNOWN, Estimate.of(120, 20)), PACK)
            .orElseThrow()
            .keepsUp());
  }

  @Test
  void aBoardThatWeakensWhileWarmIsHeldBack() {
    Evidence evidence =
        new Hours(h -> 0, h -> 3.45, h -> h < 2 ? 20 : 35, h -> h < 2 ? 1 : 0.4).evidence(4);
    assertTrue(
        BalancingAccount.of(evidence, estimates(UNKNOWN, UNKNOWN), PACK)
            .orElseThrow()
            .boards()
            .get(0)
            .isHeldBackByWarmth());
  }
}
