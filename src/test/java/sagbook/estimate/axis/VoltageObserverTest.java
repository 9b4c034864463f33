package sagbook.estimate.axis;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import sagbook.estimate.curve.ElectrodePair;
import sagbook.evidence.ThinnedRecord;
import sagbook.issue.InputProblem;
import sagbook.model.Chemistry;
import sagbook.model.PackDescription;
import sagbook.packfile.PackFile;

/**
 * A day of one cell on the first published LFP curve, emptied and filled once at a tenth of its
 * capacity an hour, a row a minute.
 */
class VoltageObserverTest {
  private static final int ROWS = 1080;

  /** Rows by which the observer has found where the cell is. */
  private static final int FOUND = 60;

  private static final double NOMINAL_AH = 100;
  private static final double OHM = 0.0011;
  private static final double HYSTERESIS_V = 0.009;

  private final List<ElectrodePair> published;
  private final ThinnedRecord trusted;
  private ElectrodePair pair;

  VoltageObserverTest() throws InputProblem {
    published = published("lfp");
    pair = published.get(0);
    trusted = VoltageObserver.of(record(), List.of(pair), NOMINAL_AH).get(0).trusted();
  }

  private static List<ElectrodePair> published(String chemistry) throws InputProblem {
    PackDescription pack =
        PackFile.parse(
            "pack.toml",
            """
            [pack]
            name = "Mill"
            chemistry = "%s"
            series_cells = 4
            nominal_capacity_ah = 100
            """
                .formatted(chemistry));
    return ElectrodePair.of(pack);
  }

  /** Full at the first and last row, a tenth full in the middle. */
  private static double charge(int row) {
    return 0.1 + 0.895 * Math.abs(row - ROWS / 2) / (ROWS / 2.0);
  }

  private static boolean charging(int row) {
    return row > ROWS / 2;
  }

  private ThinnedRecord record() {
    double[] timeS = new double[ROWS];
    float[] seconds = new float[ROWS];
    float[][] voltageV = new float[1][ROWS];
    float[] none = new float[ROWS];
    double[] unknown = new double[ROWS];
    double drop = HYSTERESIS_V + OHM * NOMINAL_AH / 10;
    for (int r = 0; r < ROWS; r++) {
      timeS[r] = 60.0 * r;
      seconds[r] = 60;
      none[r] = Float.NaN;
      unknown[r] = Double.NaN;
      double volt = pair.openCircuit(charge(r)) + (charging(r) ? drop : -drop);
      voltageV[0][r] = (float) volt;
    }
    return new ThinnedRecord(
        timeS, seconds, new int[ROWS], none, unknown, voltageV, new float[0][], new float[0][]);
  }

  private boolean told(int row) {
    return !Float.isNaN(trusted.voltageV()[0][row]);
  }

  @Test
  void everyDischargingRowIsTrusted() {
    for (int r = FOUND; r < ROWS / 2; r++) {
      assertTrue(told(r), "row " + r);
    }
  }

  @Test
  void whileChargingAlongTheFlatPartNoneIs() {
    for (int r = 0; r < ROWS; r++) {
      if (charging(r) && charge(r) > 0.4 && charge(r) < 0.6) {
        assertFalse(told(r), "row " + r + " at " + charge(r));
      }
    }
  }

  @Test
  void onTheKneeAtTheEndOfChargeItIsAgain() {
    assertTrue(told(ROWS - 1));
  }

  @Test
  void whatIsTrustedIsAsItWasRead() {
    for (int r = FOUND; r < ROWS / 2; r++) {
      assertEquals(record().voltageV()[0][r], trusted.voltageV()[0][r]);
    }
  }

  @Test
  void onASlopingCurveEveryRowIs() throws InputProblem {
    List<ElectrodePair> sloping = published("nmc");
    VoltageObserver observer = VoltageObserver.of(record(), sloping, NOMINAL_AH).get(0);
    ThinnedRecord all = observer.trusted();
    assertArrayEquals(record().voltageV(), all.voltageV());
    assertArrayEquals(record().timeS(), all.timeS());
    assertArrayEquals(observer.observed().chargeAh(), all.chargeAh());
  }

  /** Root mean square error of the made-up charge over the discharge, share of capacity. */
  private double error(List<ElectrodePair> mayHold) {
    return error(VoltageObserver.of(record(), mayHold, NOMINAL_AH).get(0));
  }

  private static double error(VoltageObserver observer) {
    double[] charge = observer.observed().chargeAh();
    return Math.sqrt(
        IntStream.range(FOUND, ROWS / 2)
            .mapToDouble(r -> charge[r] / NOMINAL_AH - charge(r))
            .map(e -> e * e)
            .average()
            .orElseThrow());
  }

  @Test
  void cellsOnTheFirstPublishedCurveAreFollowedAlongIt() {
    assertTrue(error(published) < 0.03);
  }

  @Test
  void cellsOnTheLastPublishedCurveAreFollowedAlongThatOne() {
    pair = published.get(published.size() - 1);
    assertTrue(error(published) < 0.03);
    assertTrue(error(published.subList(0, 1)) > 0.1);
  }

  @Test
  void ofSlopingCurvesTheOneByWhichLeastIsMovedIsAskedAfterTheMostUsual() throws InputProblem {
    List<ElectrodePair> sloping = published("nmc");
    pair = sloping.get(3);
    List<VoltageObserver> observers = VoltageObserver.of(record(), sloping, NOMINAL_AH);
    assertEquals(2, observers.size());
    assertTrue(error(observers.get(1)) < 0.02, "" + error(observers.get(1)));
    assertTrue(error(observers.get(1)) < 0.5 * error(observers.get(0)));
  }

  @Test
  void aTableOfTheKeepersOwnIsFollowedAlone() {
    assertEquals(1, VoltageObserver.of(record(), List.of(pair), NOMINAL_AH).size());
  }

  @Test
  void cellsOnACurveBetweenThePublishedOnesAreFollowedAlongThat() {
    pair = new Between(published.get(0), published.get(published.size() - 1));
    assertTrue(error(published) < 0.03);
    assertTrue(error(published.subList(0, 1)) > 2 * error(published));
  }

  /** Half of one pair's voltage and half of another's at any charge. */
  private record Between(ElectrodePair one, ElectrodePair other) implements ElectrodePair {
    @Override
    public double openCircuit(double charge) {
      return (one.openCircuit(charge) + other.openCircuit(charge)) / 2;
    }

    @Override
    public double positive(double y) {
      throw new UnsupportedOperationException();
    }

    @Override
    public double negative(double x) {
      throw new UnsupportedOperationException();
    }

    @Override
    public double positiveSize() {
      return one.positiveSize();
    }

    @Override
    public double negativeSize() {
      return one.negativeSize();
    }

    @Override
    public double fullPositive() {
      return one.fullPositive();
    }

    @Override
    public double emptyNegative() {
      return one.emptyNegative();
    }

    @Override
    public Chemistry chemistry() {
      return one.chemistry();
    }
  }
}
