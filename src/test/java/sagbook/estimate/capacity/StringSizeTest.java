package sagbook.estimate.capacity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import sagbook.estimate.axis.AxisBuilder;
import sagbook.estimate.axis.ChargeAxis;
import sagbook.estimate.curve.ElectrodePair;
import sagbook.evidence.ThinnedRecord;
import sagbook.evidence.Turn;
import sagbook.model.CapacitySource;
import sagbook.model.Chemistry;
import sagbook.model.Estimate;
import sagbook.model.PackDescription;

/**
 * Eight cells on one published curve, worked once a day, a row every six minutes. Cell 2 holds 4 %
 * less, cell 3 is 0.6 % of charge behind.
 */
class StringSizeTest {
  private static final int CELLS = 8;
  private static final int DAYS = 20;
  private static final int ROWS_A_DAY = 240;

  /** What stands for a capacity that nobody told, Ah. */
  private static final double DEFAULT_AH = 100;

  private final double[] size = {1, 0.96, 1, 1, 1, 1, 1, 1};
  private final double[] behind = {0, 0, 0.006, 0, 0.002, 0, -0.003, 0};
  private double emptiest = 0.1;
  private double fullest = 0.995;

  private static PackDescription pack(Chemistry chemistry, double capacityAh) {
    return PackDescription.of("Barn", chemistry, CELLS, capacityAh, ZoneOffset.UTC);
  }

  private double charge(int row) {
    return emptiest + (fullest - emptiest) * (1 - Math.cos(2 * Math.PI * row / ROWS_A_DAY)) / 2;
  }

  private ThinnedRecord record(Chemistry chemistry, double sizeAh) {
    ElectrodePair pair = ElectrodePair.of(pack(chemistry, sizeAh)).get(0);
    int rows = DAYS * ROWS_A_DAY;
    SplittableRandom random = new SplittableRandom(7);
    double rowS = 86_400.0 / ROWS_A_DAY;
    double[] timeS = new double[rows];
    float[] seconds = new float[rows];
    float[] currentA = new float[rows];
    double[] chargeAh = new double[rows];
    float[][] voltageV = new float[CELLS][rows];
    for (int r = 0; r < rows; r++) {
      timeS[r] = r * rowS;
      seconds[r] = (float) rowS;
      double rate = (charge(r + 1) - charge(r)) * 3600 / rowS;
      currentA[r] = (float) (sizeAh * rate);
      chargeAh[r] = sizeAh * (charge(r) - charge(0));
      for (int c = 0; c < CELLS; c++) {
        double rest = pair.openCircuit(1 - (1 - charge(r) + behind[c]) / size[c]);
        voltageV[c][r] =
            (float) (Math.max(1.5, rest) + 0.1 * rate + 0.0005 * random.nextGaussian());
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

  private static double ohm(double sizeAh) {
    return 0.1 / sizeAh;
  }

  private static ChargeAxis axis(ThinnedRecord record, double reckonedAh, double sizeAh) {
    List<Turn> turns = new ArrayList<>();
    for (int d = 0; d < DAYS; d++) {
      int noon = d * ROWS_A_DAY + ROWS_A_DAY / 2;
      turns.add(new Turn(true, d * ROWS_A_DAY, noon, 3.4, 3.5, 1));
    }
    return AxisBuilder.build(record, turns, reckonedAh, ohm(sizeAh));
  }

  private Optional<StringSize> found(Chemistry chemistry, double sizeAh) {
    ThinnedRecord record = record(chemistry, sizeAh);
    ChargeAxis axis = axis(record, DEFAULT_AH, sizeAh);
    return StringSize.of(record, axis, ohm(sizeAh), pack(chemistry, DEFAULT_AH));
  }

  private List<CellCharge> cells(PackDescription pack, double sizeAh) {
    ThinnedRecord record = record(pack.chemistry(), sizeAh);
    ChargeAxis axis = axis(record, pack.nominalCapacityAh(), sizeAh);
    return new CapacityEstimator(record, pack, axis, ohm(sizeAh), Optional.of(0.0))
        .estimate()
        .cells();
  }

  @ParameterizedTest
  @ValueSource(doubles = {50, 280})
  void flatStringIsFoundAsLargeAsItIs(double sizeAh) {
    StringSize found = found(Chemistry.LFP, sizeAh).orElseThrow();
    assertTrue(found.isTold(), found::toString);
    assertEquals(sizeAh, found.ah(), 0.08 * sizeAh);
  }

  @ParameterizedTest
  @ValueSource(doubles = {50, 280})
  void slopingStringIsFoundAsLargeAsItIs(double sizeAh) {
    StringSize found = found(Chemistry.NMC, sizeAh).orElseThrow();
    assertTrue(found.isTold(), found::toString);
    assertEquals(sizeAh, found.ah(), 0.08 * sizeAh);
  }

  @ParameterizedTest
  @ValueSource(doubles = {50, 280})
  void sharesAreTheSameWhetherTheCapacityWasToldOrFound(double sizeAh) {
    PackDescription told = pack(Chemistry.LFP, sizeAh);
    double foundAh = found(Chemistry.LFP, sizeAh).orElseThrow().ah();
    List<CellCharge> one = cells(told, sizeAh);
    List<CellCharge> other = cells(told.reckonedWith(foundAh, CapacitySource.FOUND), sizeAh);
    IntStream.range(0, CELLS)
        .forEach(
            c -> {
              same(one.get(c).relative(), other.get(c).relative(), 0.004);
              same(one.get(c).offsetPercent(), other.get(c).offsetPercent(), 0.3);
            });
  }

  private static void same(Estimate told, Estimate found, double apart) {
    Estimate.Known a = assertInstanceOf(Estimate.Known.class, told, told::toString);
    Estimate.Known b = assertInstanceOf(Estimate.Known.class, found, found::toString);
    assertEquals(a.value(), b.value(), apart);
  }

  @Test
  void stringThatIsNeverFullTellsNoSize() {
    emptiest = 0.4;
    fullest = 0.7;
    assertFalse(found(Chemistry.LFP, 280).filter(StringSize::isTold).isPresent());
  }

  @Test
  void nothingIsSaidInSharesOfACapacityThatNobodyKnows() {
    PackDescription untold =
        pack(Chemistry.LFP, 280).reckonedWith(DEFAULT_AH, CapacitySource.ASSUMED);
    for (CellCharge cell : cells(untold, 280)) {
      assertInstanceOf(Estimate.Unknown.class, cell.relative());
      assertInstanceOf(Estimate.Unknown.class, cell.offsetPercent());
      assertInstanceOf(Estimate.Unknown.class, cell.capacityAh());
    }
  }
}
