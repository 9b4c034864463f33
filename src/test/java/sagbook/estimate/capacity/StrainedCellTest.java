package sagbook.estimate.capacity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import sagbook.estimate.axis.AxisBuilder;
import sagbook.estimate.axis.ChargeAxis;
import sagbook.estimate.curve.ElectrodePair;
import sagbook.estimate.curve.HalfCells;
import sagbook.estimate.curve.WornPair;
import sagbook.evidence.ThinnedRecord;
import sagbook.evidence.Turn;
import sagbook.issue.InputProblem;
import sagbook.model.Chemistry;
import sagbook.model.Estimate;
import sagbook.model.PackDescription;
import sagbook.packfile.PackFile;

/**
 * A month of eight LCO cells of 100 Ah that are charged to 84.5 %, of which one lost lithium. The
 * split of the string's curve by the published pair has the wrong graphite, so the usual fit of the
 * worn one leads nowhere.
 */
class StrainedCellTest {
  private static final int CELLS = 8;
  private static final int WORN = 2;
  private static final int DAYS = 30;
  private static final int ROWS_A_DAY = 360;
  private static final double SIZE_AH = 100;
  private static final double OHM = 0.001;
  private static final double USUALLY_LOST = 0.02;
  private static final double LOST = 0.17;
  private static final double FULLEST = 0.845;

  /** What the worn cell drains beyond the others, Ah a day. */
  private static final double DRAIN_AH_PER_DAY = 0.72;

  private static final double[] LEVEL = {0.3, -0.2, 0, 0.1, -0.4, 0.2, 0, -0.1};

  /**
   * An LCO electrode that is none of the published ones Sagbook knows: that of Doyle's program
   * dualfoil (1998), used by Marquis et al., J. Electrochem. Soc. 166 (2019) A3693. From memory.
   */
  private record Lco() implements ElectrodePair {
    private static final double FULL_Y = 0.435;
    private static final double EMPTY_Y = 0.952;

    @Override
    public double positive(double y) {
      double s = 1.062 * y;
      return 2.16216
          + 0.07645 * Math.tanh(30.834 - 54.4806 * s)
          + 2.1581 * Math.tanh(52.294 - 50.294 * s)
          - 0.14169 * Math.tanh(11.0923 - 19.8543 * s)
          + 0.2051 * Math.tanh(1.4684 - 5.4888 * s)
          + 0.2531 * Math.tanh((0.56478 - s) / 0.1316)
          - 0.02167 * Math.tanh((s - 0.525) / 0.006);
    }

    @Override
    public double negative(double x) {
      return HalfCells.SAFARI_DELACOURT.negative(x);
    }

    @Override
    public double positiveSize() {
      return 1 / (EMPTY_Y - FULL_Y);
    }

    @Override
    public double negativeSize() {
      return HalfCells.SAFARI_DELACOURT.negativeSize();
    }

    @Override
    public double fullPositive() {
      return FULL_Y;
    }

    @Override
    public double emptyNegative() {
      return HalfCells.SAFARI_DELACOURT.emptyNegative();
    }

    @Override
    public Chemistry chemistry() {
      return Chemistry.LCO;
    }
  }

  private static final ElectrodePair PAIR = new Lco();

  private static DoubleUnaryOperator cell(double lost) {
    return q ->
        PAIR.positive(PAIR.fullPositive() + (1 - q - lost) / PAIR.positiveSize())
            - PAIR.negative(PAIR.emptyNegative() + q / PAIR.negativeSize());
  }

  /** Charge of the usual cell, down to where the worn one is nearly empty. */
  private static double charge(int row) {
    int day = row / ROWS_A_DAY;
    double emptiest = day % 5 == 4 ? 0.18 : 0.2;
    double share = (1 - Math.cos(2 * Math.PI * row / ROWS_A_DAY)) / 2;
    return emptiest + (FULLEST - emptiest) * share;
  }

  private static double volt(int c, int row, double amp, boolean drains) {
    double day = row / (double) ROWS_A_DAY - DAYS / 2.0;
    double drainedAh = drains && c == WORN ? DRAIN_AH_PER_DAY * day : 0;
    double place = charge(row) - (LEVEL[c] + drainedAh) / SIZE_AH;
    // All were level when they were last full.
    double rest =
        c == WORN
            ? cell(USUALLY_LOST + LOST).applyAsDouble(place - LOST)
            : cell(USUALLY_LOST).applyAsDouble(place);
    return Math.max(2.5, rest) + OHM * amp;
  }

  private static CapacityResult result(boolean drains) throws InputProblem {
    PackDescription pack =
        PackFile.parse(
            "pack.toml",
            """
            [pack]
            name = "Barge"
            chemistry = "lco"
            series_cells = 8
            nominal_capacity_ah = 100
            """);
    ThinnedRecord record = record(drains);
    List<Turn> turns = new ArrayList<>();
    for (int d = 0; d < DAYS; d++) {
      int noon = d * ROWS_A_DAY + ROWS_A_DAY / 2;
      turns.add(new Turn(true, d * ROWS_A_DAY, noon, 4.0, 4.1, 1));
    }
    ChargeAxis axis = AxisBuilder.build(record, turns, SIZE_AH, OHM);
    return new CapacityEstimator(record, pack, axis, OHM, Optional.of(0.1)).estimate();
  }

  private static ThinnedRecord record(boolean drains) {
    int rows = DAYS * ROWS_A_DAY;
    SplittableRandom random = new SplittableRandom(11);
    double[] timeS = new double[rows];
    float[] seconds = new float[rows];
    float[] currentA = new float[rows];
    double[] chargeAh = new double[rows];
    float[][] voltageV = new float[CELLS][rows];
    double rowS = 86_400.0 / ROWS_A_DAY;
    for (int r = 0; r < rows; r++) {
      timeS[r] = r * rowS;
      seconds[r] = (float) rowS;
      double amp = SIZE_AH * (charge(r + 1) - charge(r)) * 3600 / rowS;
      currentA[r] = (float) amp;
      chargeAh[r] = SIZE_AH * (charge(r) - charge(0));
      for (int c = 0; c < CELLS; c++) {
        voltageV[c][r] = (float) (volt(c, r, amp, drains) + 0.0005 * random.nextGaussian());
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

  private static double truth() {
    return WornPair.charge(PAIR, USUALLY_LOST + LOST, 4.2, 3.0)
        / WornPair.charge(PAIR, USUALLY_LOST, 4.2, 3.0);
  }

  private static void told(double truth, Estimate estimate, double furthest) {
    Estimate.Known known = assertInstanceOf(Estimate.Known.class, estimate, estimate::toString);
    assertTrue(known.low() <= truth && truth <= known.high(), known + " for " + truth);
    assertEquals(truth, known.value(), furthest);
  }

  @Test
  void aWornCellThatTheUsualFitLosesIsToldByItsGraphite() throws InputProblem {
    told(truth(), result(false).cells().get(WORN).relative(), 0.01);
  }

  @Test
  void oneThatAlsoDrainsThirtyMilliampsIsToldBoth() throws InputProblem {
    CellCharge worn = result(true).cells().get(WORN);
    told(truth(), worn.relative(), 0.02);
    told(1000 * DRAIN_AH_PER_DAY / 24, worn.selfDischargeMilliamp(), 5);
  }
}
