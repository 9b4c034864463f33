package sagbook.verdict;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import sagbook.estimate.BankEstimates;
import sagbook.estimate.CellEstimates;
import sagbook.estimate.TemperatureFault;
import sagbook.evidence.Stress;
import sagbook.model.Chemistry;
import sagbook.model.Estimate;
import sagbook.model.Finding;
import sagbook.model.PackDescription;
import sagbook.whatif.Prospect;
import sagbook.whatif.Spare;
import sagbook.whatif.Use;
import sagbook.whatif.WhatIf;

/** Estimates in, decision out; four cells, of which the second is the odd one. */
class JudgeTest {
  private static final Estimate UNKNOWN = Estimate.unknown("not seen");

  private record Odd(
      Estimate capacity,
      Estimate resistance,
      Estimate slow,
      Estimate offset,
      Estimate drain,
      Estimate volt) {
    static Odd sound() {
      return new Odd(
          Estimate.of(1, 0.003),
          Estimate.of(1, 0.01),
          Estimate.of(1, 0.03),
          Estimate.of(0, 0.1),
          Estimate.of(0, 1),
          Estimate.of(0, 1));
    }

    Odd capacity(Estimate e) {
      return new Odd(e, resistance, slow, offset, drain, volt);
    }

    Odd resistance(Estimate whole, Estimate slowPart) {
      return new Odd(capacity, whole, slowPart, offset, drain, volt);
    }

    Odd offset(Estimate e) {
      return new Odd(capacity, resistance, slow, e, drain, volt);
    }

    Odd drain(Estimate e) {
      return new Odd(capacity, resistance, slow, offset, e, volt);
    }

    Odd volt(Estimate e) {
      return new Odd(capacity, resistance, slow, offset, drain, e);
    }

    CellEstimates cell(int place) {
      return new CellEstimates(
          place,
          UNKNOWN,
          capacity,
          UNKNOWN,
          resistance,
          UNKNOWN,
          slow,
          offset,
          drain,
          volt,
          new TemperatureFault.None(),
          Optional.empty());
    }
  }

  private static BankVerdict judged(UnaryOperator<Odd> change, String... advice) {
    List<CellEstimates> cells = new ArrayList<>();
    for (int place = 1; place <= 4; place++) {
      cells.add((place == 2 ? change.apply(Odd.sound()) : Odd.sound()).cell(place));
    }
    BankEstimates estimates =
        new BankEstimates(
            10,
            UNKNOWN,
            UNKNOWN,
            UNKNOWN,
            UNKNOWN,
            Collections.nCopies(4, Estimate.of(0, 0)),
            cells,
            List.of());
    return new Judge(PackDescription.of("Four", Chemistry.LFP, 4, 280, ZoneId.of("Etc/UTC")))
        .judge(estimates, prospect(cells), calm(), List.of(advice));
  }

  private static Prospect prospect(List<CellEstimates> cells) {
    Use use = new Use(OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty());
    Spare spare = new Spare(280, OptionalDouble.empty(), false);
    return new WhatIf(cells, UNKNOWN, 280, Chemistry.LFP, 2.5, use, spare).prospect();
  }

  private static Stress calm() {
    double[] none = new double[4];
    double[] volt = new double[4];
    Arrays.fill(volt, 3.3);
    return new Stress(
        700, 0, 0, 0, 0, none, none, volt, volt, none, none, none, none, none, none, none, 0);
  }

  private static Finding finding(UnaryOperator<Odd> change) {
    return judged(change).cells().get(1).finding();
  }

  @Test
  void soundCellsAreFine() {
    BankVerdict verdict = judged(odd -> odd);
    assertEquals(Severity.WELL, verdict.severity());
    assertEquals("All 4 cells are fine.", verdict.headline());
  }

  @Test
  void aCellIsWornOnlyWhenTheWholeIntervalSaysSo() {
    assertEquals(Finding.LOW_CAPACITY, finding(odd -> odd.capacity(Estimate.of(0.92, 0.01))));
    assertEquals(
        Finding.INSUFFICIENT_EVIDENCE, finding(odd -> odd.capacity(Estimate.of(0.92, 0.05))));
    assertEquals(Finding.HEALTHY, finding(odd -> odd.capacity(Estimate.of(0.98, 0.01))));
    assertEquals(
        Finding.INSUFFICIENT_EVIDENCE, finding(odd -> odd.capacity(Estimate.of(0.98, 0.05))));
  }

  @Test
  void aJointLeavesTheSlowPartAloneAWornCellDoesNot() {
    Estimate high = Estimate.of(1.5, 0.03);
    assertEquals(Finding.CONNECTION, finding(odd -> odd.resistance(high, Estimate.of(1.02, 0.1))));
    assertEquals(
        Finding.HIGH_RESISTANCE, finding(odd -> odd.resistance(high, Estimate.of(1.45, 0.1))));
  }

  @Test
  void aDrainExplainsAnImbalanceAndALyingVoltageEverything() {
    assertEquals(
        Finding.SELF_DISCHARGE,
        finding(odd -> odd.offset(Estimate.of(-5, 0.3)).drain(Estimate.of(60, 2))));
    assertEquals(
        Finding.VOLTAGE_SENSOR,
        finding(odd -> odd.volt(Estimate.of(20, 1)).capacity(Estimate.of(0.9, 0.01))));
  }

  @Test
  void aFewMillivoltDoNotHideWear() {
    assertEquals(
        Finding.LOW_CAPACITY,
        finding(odd -> odd.volt(Estimate.of(10, 1)).capacity(Estimate.of(0.9, 0.01))));
    assertEquals(Finding.VOLTAGE_SENSOR, finding(odd -> odd.volt(Estimate.of(10, 1))));
  }

  @Test
  void imbalanceIsNotWearAndSaysSoOnlyWhereTheCapacityIsKnown() {
    BankVerdict known = judged(odd -> odd.offset(Estimate.of(-5, 0.3)));
    assertTrue(known.headline().startsWith("Cell 2 is out of balance, not worn"));
    assertTrue(known.cells().get(1).action().contains("need not be replaced"));
    BankVerdict unknown = judged(odd -> odd.offset(Estimate.of(-5, 0.3)).capacity(UNKNOWN));
    assertTrue(unknown.headline().startsWith("Cell 2 is out of balance"));
    assertFalse(unknown.headline().contains("not worn"));
    assertFalse(unknown.cells().get(1).action().contains("need not be replaced"));
  }

  @Test
  void aCellOfWhichHalfIsUnknownIsNotCalledHealthy() {
    assertEquals(Finding.INSUFFICIENT_EVIDENCE, finding(odd -> odd.capacity(UNKNOWN)));
    assertEquals(Finding.INSUFFICIENT_EVIDENCE, finding(odd -> odd.offset(UNKNOWN)));
  }

  @Test
  void adviceOnLoggingReachesTheKeeperOnce() {
    BankVerdict verdict = judged(odd -> odd, "Log the current.", "Log the current.");
    assertEquals(List.of("Log the current."), verdict.nextMonth().subList(1, 2));
    assertEquals(2, verdict.nextMonth().size());
  }
}
