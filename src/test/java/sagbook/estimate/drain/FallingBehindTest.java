package sagbook.estimate.drain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.ZoneId;
import java.util.Arrays;
import java.util.List;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import sagbook.estimate.axis.VoltageObserver;
import sagbook.estimate.curve.ElectrodePair;
import sagbook.evidence.ThinnedRecord;
import sagbook.model.Chemistry;
import sagbook.model.Estimate;
import sagbook.model.PackDescription;
import sagbook.numeric.MonotoneCurve;

/**
 * Eight LFP cells of 280 Ah for 24 days: charged each noon until the first is at 3.6 V, emptied
 * each evening by 70 to 80 % or until the first is at 2.9 V, on an open-circuit curve that is none
 * of the published ones (its own numbers, no source). No current is logged.
 */
class FallingBehindTest {
  private static final int CELLS = 8;
  private static final int ODD = 3;
  private static final int DAYS = 24;
  private static final int ROWS = DAYS * 1440;
  private static final double AH = 280;
  private static final PackDescription PACK =
      PackDescription.of("Eight", Chemistry.LFP, CELLS, AH, ZoneId.of("Etc/UTC"));

  private static final MonotoneCurve OPEN_CIRCUIT =
      new MonotoneCurve(
          new double[] {0, 0.02, 0.05, 0.1, 0.2, 0.3, 0.5, 0.7, 0.9, 0.97, 0.99, 1},
          new double[] {2.5, 2.78, 3.0, 3.18, 3.22, 3.26, 3.29, 3.3, 3.33, 3.34, 3.37, 3.65});

  private final double[] capacityAh = {280, 281, 279, 280, 280.5, 279.5, 281.2, 280.3};
  private final double[] charge = {0.6, 0.602, 0.599, 0.6, 0.601, 0.6, 0.598, 0.603};
  private final double[] misreadV = {0, 0.001, -0.001, 0, 0.002, -0.002, 0, 0.001};
  private final double[] bledAh = new double[CELLS];
  private IntToDoubleFunction drainA = day -> 0;
  private IntToDoubleFunction oddOhm = day -> 0.0004;

  private List<Estimate> found() {
    float[][] volt = new float[CELLS][ROWS];
    double highest = 0;
    double lowest = 9;
    boolean full = false;
    for (int r = 0; r < ROWS; r++) {
      int minute = r % 1440;
      int day = r / 1440;
      full = minute > 540 && (full || highest > 3.6);
      boolean noon = minute > 600 && minute < 900 && !full;
      boolean evening = minute > 1080 && minute < 1320 && lowest > 2.9;
      double currentA = noon ? 50 : evening ? -50 - 2 * (day % 5) : -1;
      highest = 0;
      lowest = 9;
      for (int c = 0; c < CELLS; c++) {
        double lostA = c == ODD ? drainA.applyAsDouble(day) : 0;
        charge[c] += (currentA - lostA) / 60 / capacityAh[c];
        double ohm = c == ODD ? oddOhm.applyAsDouble(day) : 0.0004;
        double v = OPEN_CIRCUIT.at(charge[c]) + currentA * ohm + misreadV[c];
        volt[c][r] = (float) (Math.rint(v * 1000) / 1000);
        highest = Math.max(highest, v);
        lowest = Math.min(lowest, v);
      }
    }
    float[] seconds = new float[ROWS];
    Arrays.fill(seconds, 60);
    float[] unlogged = new float[ROWS];
    Arrays.fill(unlogged, Float.NaN);
    ThinnedRecord record =
        new ThinnedRecord(
            IntStream.range(0, ROWS).mapToDouble(r -> 60.0 * r).toArray(),
            seconds,
            new int[ROWS],
            unlogged,
            new double[ROWS],
            volt,
            new float[0][],
            new float[0][]);
    return FallingBehind.of(
        VoltageObserver.of(record, ElectrodePair.of(PACK), AH).get(0).observed(),
        PACK,
        VoltageObserver.slowOhm(AH),
        bledAh);
  }

  private void assertNoneFallsBehind() {
    for (Estimate drain : found()) {
      assertInstanceOf(Estimate.Unknown.class, drain);
    }
  }

  @Test
  void cellThatLosesChargeByItselfIsToldAsTheLeastThatItLoses() {
    drainA = day -> 0.08;
    List<Estimate> found = found();
    Estimate.Known drain = assertInstanceOf(Estimate.Known.class, found.get(ODD));
    assertTrue(drain.isOpen());
    assertTrue(drain.low() > 12 && drain.low() <= 80, drain.toString());
    assertEquals(CELLS - 1, found.stream().filter(Estimate.Unknown.class::isInstance).count());
  }

  @Test
  void soundCellsDoNotFallBehind() {
    assertNoneFallsBehind();
  }

  @Test
  void cellThatIsBehindAllTheTimeIsOutOfBalanceAndNotDrained() {
    charge[ODD] -= 0.06;
    assertNoneFallsBehind();
  }

  @Test
  void wornCellThatIsEmptyFirstEachTimeIsNotDrained() {
    capacityAh[ODD] = 245;
    charge[ODD] = 0.55;
    assertNoneFallsBehind();
  }

  @Test
  void cellThatIsMisreadAllTheTimeIsNotDrained() {
    misreadV[ODD] = -0.025;
    assertNoneFallsBehind();
  }

  @Test
  void cellThatWasAheadAndIsBledUntilItIsLevelIsNotDrained() {
    charge[ODD] += 0.05;
    drainA = day -> day < 20 ? 0.029 : 0;
    assertNoneFallsBehind();
  }

  @Test
  void wornCellThatWasAheadAndIsBledUntilItIsLevelIsNotDrained() {
    capacityAh[ODD] = 245;
    charge[ODD] += 0.05;
    drainA = day -> day < 20 ? 0.029 : 0;
    assertNoneFallsBehind();
  }

  @Test
  void whatABoardIsKnownToHaveBledIsNoDrain() {
    drainA = day -> 0.08;
    bledAh[ODD] = 0.08 * 24 * DAYS;
    assertNoneFallsBehind();
  }

  @Test
  void ofACellThatCatchesUpByLessThanItsNeighboursWereBledTheRestIsTheLeastThatItLoses() {
    charge[ODD] -= 0.06;
    drainA = day -> -0.03;
    Arrays.fill(bledAh, 0.12 * 24 * DAYS);
    bledAh[ODD] = 0;
    Estimate.Known drain = assertInstanceOf(Estimate.Known.class, found().get(ODD));
    assertTrue(drain.isOpen());
    assertTrue(drain.low() > 12 && drain.low() <= 120 - 30, drain.toString());
    assertTrue(drain.value() > drain.low(), drain.toString());
  }

  @Test
  void jointThatGetsLooserIsNoDrain() {
    oddOhm = day -> 0.0004 + day * 0.00002;
    assertNoneFallsBehind();
  }
}
