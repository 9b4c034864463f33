package sagbook.estimate.capacity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sagbook.estimate.axis.AxisBuilder;
import sagbook.estimate.axis.ChargeAxis;
import sagbook.estimate.axis.VoltageObserver;
import sagbook.estimate.curve.ElectrodePair;
import sagbook.evidence.ThinnedRecord;
import sagbook.evidence.Turn;
import sagbook.issue.InputProblem;
import sagbook.model.Estimate;
import sagbook.model.PackDescription;
import sagbook.packfile.PackFile;

/**
 * Eight cells on one published curve, emptied and filled once a day for a month, a row every four
 * minutes; what differs between cells is known.
 */
class CapacityEstimatorTest {
  private static final int CELLS = 8;
  private static final int DAYS = 30;
  private static final int ROWS_A_DAY = 360;
  private static final double SIZE_AH = 100;
  private static final double OHM = 0.001;

  /** Charge of a cell below that of the string at the start of the log, Ah. */
  private final double[] behindAh = {0.3, -0.2, 0, 0.1, -0.4, 0.2, 0, -0.1};

  /** What a cell drains beyond the others, Ah a day. */
  private final double[] drainAhPerDay = new double[CELLS];

  /** Size of a cell over that of a usual one; a smaller one is full when the others are. */
  private final double[] size = {1, 1, 1, 1, 1, 1, 1, 1};

  /** Constant error of a cell's voltage, V. */
  private final double[] offsetV = new double[CELLS];

  /** Cells whose voltage was logged. */
  private int readable = CELLS;

  /** Lowest and highest charge of a day, shares. */
  private double emptiest = 0.12;

  private double fullest = 0.995;

  /** What a cell that is charged past its end stays at, V. */
  private double mostV = Double.POSITIVE_INFINITY;

  /** What the counter wanders from row to row, one standard deviation, Ah. */
  private double wanderAh;

  private final PackDescription pack;
  private final ElectrodePair pair;

  CapacityEstimatorTest() throws InputProblem {
    pack =
        PackFile.parse(
            "pack.toml",
            """
            [pack]
            name = "Barn"
            chemistry = "lfp"
            series_cells = 8
            nominal_capacity_ah = 100
            """);
    pair = ElectrodePair.of(pack).get(0);
  }

  private double charge(int row) {
    double share = (1 - Math.cos(2 * Math.PI * row / ROWS_A_DAY)) / 2;
    return emptiest + (fullest - emptiest) * share;
  }

  private double cellVolt(int cell, int row, double amp) {
    double day = row / (double) ROWS_A_DAY;
    double lackAh = behindAh[cell] + drainAhPerDay[cell] * day;
    // Below empty the published function falls without end; a cell is at 1.5 V by then.
    double rest = pair.openCircuit(1 - (1 - charge(row) + lackAh / SIZE_AH) / size[cell]);
    return Math.min(mostV, Math.max(1.5, rest)) + OHM * amp + offsetV[cell];
  }

  private CapacityResult result() {
    ThinnedRecord record = record();
    double wanderAhInADay = wanderAh * Math.sqrt(ROWS_A_DAY);
    return result(record, record, Optional.of(wanderAhInADay));
  }

  private CapacityResult resultWithoutCurrent() {
    VoltageObserver observer = VoltageObserver.of(record(), List.of(pair), SIZE_AH).get(0);
    return result(observer.observed(), observer.trusted(), Optional.empty());
  }

  private CapacityResult result(
      ThinnedRecord forAxis, ThinnedRecord record, Optional<Double> wanderAhInADay) {
    List<Turn> turns = new ArrayList<>();
    for (int d = 0; d < DAYS; d++) {
      int noon = d * ROWS_A_DAY + ROWS_A_DAY / 2;
      turns.add(new Turn(true, d * ROWS_A_DAY, noon, 3.4, 3.5, 1));
    }
    ChargeAxis axis = AxisBuilder.build(forAxis, turns, SIZE_AH, OHM);
    return new CapacityEstimator(record, pack, axis, OHM, wanderAhInADay).estimate();
  }

  private ThinnedRecord record() {
    int rows = DAYS * ROWS_A_DAY;
    SplittableRandom random = new SplittableRandom(7);
    double[] timeS = new double[rows];
    float[] seconds = new float[rows];
    float[] currentA = new float[rows];
    double[] chargeAh = new double[rows];
    float[][] voltageV = new float[CELLS][rows];
    double wanderedAh = 0;
    for (int r = 0; r < rows; r++) {
      double rowS = 86_400.0 / ROWS_A_DAY;
      timeS[r] = r * rowS;
      seconds[r] = (float) rowS;
      double amp = SIZE_AH * (charge(r + 1) - charge(r)) * 3600 / rowS;
      currentA[r] = (float) amp;
      wanderedAh += wanderAh * random.nextGaussian();
      chargeAh[r] = SIZE_AH * (charge(r) - charge(0)) + wanderedAh;
      for (int c = 0; c < CELLS; c++) {
        double read = cellVolt(c, r, amp) + 0.0005 * random.nextGaussian();
        voltageV[c][r] = c < readable ? (float) read : Float.NaN;
      }
    }
    return new ThinnedRecord(
        timeS,
        seconds,
        new int[rows],
        currentA,
        chargeAh,
        voltageV,
        new float[0][],
        new float[0][]);
  }

  private static Estimate.Known known(Estimate estimate) {
    return assertInstanceOf(Estimate.Known.class, estimate, estimate::toString);
  }

  private void holds(double truth, Estimate estimate, double farthest, String what) {
    Estimate.Known k = known(estimate);
    assertTrue(k.low() <= truth && truth <= k.high(), what + ": " + k + " for " + truth);
    assertEquals(truth, k.value(), farthest, what);
  }

  @Test
  void aCounterThatWandersByPerCentsADayLeavesAlikeCellsAlike() {
    wanderAh = 0.08;
    CapacityResult result = result();
    for (int c = 0; c < CELLS; c++) {
      holds(1, result.cells().get(c).relative(), 0.01, "size of cell " + (c + 1));
      holds(-behindAh[c], result.cells().get(c).offsetPercent(), 0.3, "charge of " + (c + 1));
    }
  }

  @Test
  void aCellThatDrainsNineTenthsOfItsChargeInAMonthIsSeenToDrain() {
    drainAhPerDay[2] = 0.9 * SIZE_AH / DAYS;
    CapacityResult result = result();
    holds(
        1000 * drainAhPerDay[2] / 24,
        result.cells().get(2).selfDischargeMilliamp(),
        0.1 * 1000 * drainAhPerDay[2] / 24,
        "drain");
    for (int c : new int[] {0, 1, 3, 4, 5, 6, 7}) {
      holds(0, result.cells().get(c).selfDischargeMilliamp(), 3, "drain of " + (c + 1));
      holds(1, result.cells().get(c).relative(), 0.01, "size of cell " + (c + 1));
    }
  }

  @Test
  void inAShallowMonthACellFarBehindIsNotTakenForOneThatIsMisread() {
    emptiest = 0.4;
    fullest = 0.7;
    behindAh[5] = 12;
    assertTrue(
        !(result().cells().get(5).voltageOffsetMillivolt() instanceof Estimate.Known k)
            || k.low() < 6,
        () -> "no error, but " + result().cells().get(5).voltageOffsetMillivolt());
  }

  @Test
  void aMisreadCellIsToldItsErrorInAFullMonth() {
    offsetV[4] = 0.015;
    holds(15, result().cells().get(4).voltageOffsetMillivolt(), 1, "error");
  }

  /** Its steps alone place it badly; that it never rose with the others is sure. */
  @Test
  void cellThatNeverRisesWithTheOthersIsSurelyBehind() {
    behindAh[3] = 3.5;
    emptiest = 0.3;
    Estimate.Known offset = known(result().cells().get(3).offsetPercent());
    assertTrue(offset.isBelow(-0.3), offset.toString());
    assertTrue(offset.low() <= -3.5 && -3.5 <= offset.high(), offset.toString());
  }

  @Test
  void aCellThatEndsTheChargesAloneIsToldAheadThoughNoSizeIs() {
    fullest = 0.87;
    behindAh[3] = -12.5;
    CapacityResult result = result();
    Estimate.Known ahead =
        assertInstanceOf(Estimate.Known.class, result.cells().get(3).offsetPercent());
    assertTrue(ahead.low() <= 12.5 && 12.5 <= ahead.high(), ahead::toString);
    assertEquals(12.5, ahead.value(), 2);
    assertTrue(ahead.isAbove(8), ahead::toString);
    for (CellCharge cell : result.cells()) {
      assertInstanceOf(Estimate.Unknown.class, cell.relative());
    }
    assertInstanceOf(Estimate.Unknown.class, result.cells().get(4).offsetPercent());
  }

  /** Some where the others hardly leave the flat part, and some where they climb with it. */
  @ParameterizedTest
  @CsvSource({"0.9863, 8", "0.9866, 11", "0.988, 11", "0.992, 5"})
  void aCellThatIsChargedPastItsEndIsAheadByWhatItsRangeSays(double fullest, double aheadAh) {
    this.fullest = fullest;
    mostV = 3.75;
    behindAh[3] = -aheadAh;
    Estimate.Known ahead = known(result().cells().get(3).offsetPercent());
    assertTrue(ahead.low() <= aheadAh && aheadAh <= ahead.high(), ahead::toString);
    assertEquals(aheadAh, ahead.value(), 1);
  }

  @Test
  void oneThatIsAheadButWasSeenOnNoKneeIsNotTold() {
    fullest = 0.78;
    behindAh[3] = -12.5;
    assertInstanceOf(Estimate.Unknown.class, result().cells().get(3).offsetPercent());
  }

  @Test
  void aReadingThatIsTooHighPutsNoCellOnTheKnee() {
    fullest = 0.87;
    offsetV[3] = 0.12;
    assertInstanceOf(Estimate.Unknown.class, result().cells().get(3).offsetPercent());
  }

  @Test
  void withoutCurrentAMisreadCellIsToldThoughAnotherAloneEndsTheCharges() {
    fullest = 0.92;
    behindAh[3] = -7;
    offsetV[5] = 0.03;
    List<CellCharge> cells = resultWithoutCurrent().cells();
    Estimate.Known misread =
        assertInstanceOf(Estimate.Known.class, cells.get(5).voltageOffsetMillivolt());
    assertTrue(misread.low() <= 30 && 30 <= misread.high(), misread::toString);
    assertTrue(misread.isAbove(9), misread::toString);
    Estimate.Known sound =
        assertInstanceOf(Estimate.Known.class, cells.get(1).voltageOffsetMillivolt());
    assertTrue(sound.low() <= 0 && 0 <= sound.high(), sound::toString);
    assertInstanceOf(Estimate.Unknown.class, cells.get(5).relative());
  }

  @Test
  void withoutCurrentAlikeCellsComeOutAlike() {
    CapacityResult result = resultWithoutCurrent();
    for (int c = 0; c < CELLS; c++) {
      holds(1, result.cells().get(c).relative(), 0.02, "size of cell " + (c + 1));
    }
  }

  @Test
  void withoutCurrentSizesThatMostlyDisagreeAreToldOfNoCell() {
    System.arraycopy(new double[] {0.8, 0.85, 0.9, 0.95, 1, 1.05, 1.1, 1.15}, 0, size, 0, CELLS);
    for (CellCharge cell : resultWithoutCurrent().cells()) {
      for (Estimate told : List.of(cell.relative(), cell.offsetPercent())) {
        Estimate.Unknown unknown = assertInstanceOf(Estimate.Unknown.class, told);
        assertTrue(unknown.reason().contains("one curve"), unknown.reason());
      }
    }
  }

  @Test
  void withoutCurrentACellThatStaysBehindWhenTheOthersAreFullIsNotTakenForMisread() {
    behindAh[3] = 5;
    CellCharge behind = resultWithoutCurrent().cells().get(3);
    Estimate.Known offset = known(behind.offsetPercent());
    assertTrue(offset.low() <= -5 && -5 <= offset.high() && offset.isBelow(0), offset.toString());
    assertInstanceOf(Estimate.Unknown.class, behind.relative());
  }

  @Test
  void withoutCurrentAWornCellIsNotTakenForMisread() {
    size[3] = 0.92;
    CellCharge worn = resultWithoutCurrent().cells().get(3);
    Estimate.Known relative = known(worn.relative());
    assertTrue(
        relative.low() <= 0.92 && 0.92 <= relative.high() && relative.isBelow(0.98),
        relative.toString());
    Estimate.Known error = known(worn.voltageOffsetMillivolt());
    assertTrue(error.low() < 0 && 0 < error.high(), error::toString);
  }

  @Test
  void ofTwoCellsTheCapacityIsToldThoughNoThreeShowedIt() {
    readable = 2;
    emptiest = 0.04;
    holds(SIZE_AH, result().medianCapacityAh(), 3, "capacity");
  }
}
