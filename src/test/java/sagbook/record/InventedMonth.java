package sagbook.record;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import sagbook.evidence.Edge;
import sagbook.evidence.Evidence;
import sagbook.evidence.ResponseBasis;
import sagbook.evidence.Stress;
import sagbook.evidence.ThinnedRecord;
import sagbook.evidence.Turn;
import sagbook.model.ChannelQuality;
import sagbook.model.Channels;

/**
 * Evidence of a month that never was, for the report's tests: sixteen cells of 280 Ah, charged by
 * day and emptied by night. Cell 12 holds less, cell 5 is fuller than the others, cell 7 has a bad
 * joint.
 */
final class InventedMonth {
  static final int CELLS = 16;
  static final double START_S = 1_777_593_600; // 2026-05-01T00:00:00Z
  private static final int DAYS = 31;
  private static final int ROWS_A_DAY = 288;
  private static final double ROW_S = 300;
  private static final double[] SOC = {-0.02, 0, 0.02, 0.05, 0.1, 0.3, 0.6, 0.9, 0.97, 0.99, 1};
  private static final double[] OCV = {
    2.3, 2.5, 2.8, 3.0, 3.18, 3.27, 3.30, 3.335, 3.345, 3.40, 3.62
  };

  private final boolean current;
  private final int rows = DAYS * ROWS_A_DAY;
  private final double[] timeS = new double[rows];
  private final float[] seconds = new float[rows];
  private final float[] currentA = new float[rows];
  private final double[] chargeAh = new double[rows];
  private final float[][] voltageV = new float[CELLS][rows];
  private final float[][] temperatureC = new float[CELLS][rows];
  private final SplittableRandom random = new SplittableRandom(20260501);
  private final double startS;

  private InventedMonth(boolean current, double startS) {
    this.current = current;
    this.startS = startS;
  }

  static Evidence evidence(boolean current) {
    return new InventedMonth(current, START_S).make();
  }

  /** Evidence of a log of two cells that has no rows. */
  static Evidence empty() {
    double nothing = Double.NaN;
    double[] unknown = {nothing, nothing};
    double[] none = {0, 0};
    return new Evidence(
        new Channels(2, false, false, false),
        0,
        0,
        0,
        0,
        nothing,
        new ThinnedRecord(
            new double[0],
            new float[0],
            new int[0],
            new float[0],
            new double[0],
            new float[2][0],
            new float[0][],
            new float[0][]),
        new ResponseBasis(new double[] {4}),
        List.of(),
        List.of(),
        new double[0],
        List.of(),
        List.of(),
        new Stress(
            0, nothing, nothing, nothing, nothing, none, none, unknown, unknown, none, none, none,
            unknown, unknown, unknown, unknown, nothing),
        new double[0]);
  }

  private Evidence make() {
    run();
    float[] logged = currentA;
    double[] counter = chargeAh;
    if (!current) {
      logged = new float[rows];
      Arrays.fill(logged, Float.NaN);
      counter = new double[rows];
      Arrays.fill(counter, Double.NaN);
    }
    ThinnedRecord thinned =
        new ThinnedRecord(
            timeS, seconds, new int[rows], logged, counter, voltageV, temperatureC, new float[0][]);
    return new Evidence(
        new Channels(CELLS, true, current, false),
        timeS[0],
        timeS[rows - 1],
        535_680,
        5,
        0,
        thinned,
        new ResponseBasis(new double[] {4, 20}),
        List.of(),
        List.of(),
        new double[0],
        List.of(edge()),
        turns(),
        stress(),
        new double[CELLS]);
  }

  static double capacityAh(int cell) {
    return cell == 12 ? 243 : 274 + (cell * 7) % 5;
  }

  static double resistanceMilliohm(int cell) {
    return (cell == 7 ? 0.62 : 0.31 + ((cell * 5) % 7) * 0.004) + (cell == 12 ? 0.06 : 0);
  }

  private void run() {
    double charge = 150;
    double counter = 0;
    for (int row = 0; row < rows; row++) {
      double hour = (row % ROWS_A_DAY) * 24.0 / ROWS_A_DAY;
      double amps = hour > 9 && hour < 16 ? 56 * Math.sin((hour - 9) / 7 * Math.PI) : -12;
      if (hour >= 17 && hour < 20) {
        amps = -28 - 10 * random.nextDouble();
      }
      if (charge > 246 && amps > 0) {
        amps *= Math.max(0, (251 - charge) / 5);
      }
      if (charge < 18 && amps < 0) {
        amps = 0;
      }
      double step = amps * ROW_S / 3600;
      charge += step;
      counter += step;
      timeS[row] = startS + row * ROW_S;
      seconds[row] = (float) ROW_S;
      currentA[row] = (float) amps;
      chargeAh[row] = counter;
      for (int cell = 1; cell <= CELLS; cell++) {
        double offset = cell == 5 ? 11 : cell == 12 ? -28 : (cell % 4) * 0.7;
        double soc = (charge + offset + 12) / capacityAh(cell);
        double volt = ocv(soc) + amps * resistanceMilliohm(cell) / 1000 * 1.6;
        voltageV[cell - 1][row] = (float) (volt + 0.0005 * random.nextDouble());
        temperatureC[cell - 1][row] =
            (float) (16 + 4 * Math.sin((hour - 9) / 12 * Math.PI) + cell * 0.15 + row / 2000.0);
      }
    }
  }

  private static double ocv(double soc) {
    int i = 1;
    while (i < SOC.length - 1 && SOC[i] < soc) {
      i++;
    }
    return OCV[i - 1] + (soc - SOC[i - 1]) / (SOC[i] - SOC[i - 1]) * (OCV[i] - OCV[i - 1]);
  }

  private List<Turn> turns() {
    List<Turn> turns = new ArrayList<>();
    for (int day = 0; day < DAYS; day++) {
      turns.add(turn(true, day * ROWS_A_DAY + 108, day * ROWS_A_DAY + 191));
      if (day < DAYS - 1) {
        turns.add(turn(false, day * ROWS_A_DAY + 204, (day + 1) * ROWS_A_DAY + 106));
      }
    }
    return turns;
  }

  private Turn turn(boolean charge, int from, int to) {
    int extreme = 0;
    double sum = 0;
    for (int cell = 0; cell < CELLS; cell++) {
      sum += voltageV[cell][to];
      boolean further =
          charge
              ? voltageV[cell][to] > voltageV[extreme][to]
              : voltageV[cell][to] < voltageV[extreme][to];
      if (further) {
        extreme = cell;
      }
    }
    return new Turn(charge, from, to, sum / CELLS, voltageV[extreme][to], extreme + 1);
  }

  private Edge edge() {
    int samples = 30;
    double[] offset = new double[samples];
    double[] amps = new double[samples];
    double[][] volts = new double[CELLS][samples];
    for (int i = 0; i < samples; i++) {
      offset[i] = (i - 6) * 5;
      amps[i] = offset[i] < 0 ? -12 : -64;
      for (int cell = 1; cell <= CELLS; cell++) {
        double slow = offset[i] < 0 ? 0 : 0.35 * (1 - Math.exp(-offset[i] / 25));
        volts[cell - 1][i] =
            3.29
                + amps[i] * resistanceMilliohm(cell) / 1000 * (0.7 + slow)
                + 0.0003 * random.nextDouble();
      }
    }
    return new Edge(
        startS + 20.4 * 86_400,
        offset,
        current ? amps : new double[0],
        volts,
        current ? -52 : Double.NaN,
        true);
  }

  private Stress stress() {
    double[] high = new double[CELLS];
    double[] low = new double[CELLS];
    double[] hottest = new double[CELLS];
    double[] coldest = new double[CELLS];
    double[] mean = new double[CELLS];
    for (int cell = 0; cell < CELLS; cell++) {
      high[cell] = extreme(voltageV[cell], 1);
      low[cell] = extreme(voltageV[cell], -1);
      hottest[cell] = extreme(temperatureC[cell], 1);
      coldest[cell] = extreme(temperatureC[cell], -1);
      mean[cell] = (hottest[cell] + coldest[cell]) / 2;
    }
    double[] none = new double[CELLS];
    double[] over = new double[CELLS];
    over[4] = 1.25;
    double[] notLogged = new double[CELLS];
    Arrays.fill(notLogged, Double.NaN);
    double charged = current ? 5210.4 : Double.NaN;
    return new Stress(
        743.2,
        charged,
        current ? 5188.2 : Double.NaN,
        current ? 280.1 : Double.NaN,
        current ? 268.9 : Double.NaN,
        over,
        none,
        high,
        low,
        none,
        none,
        none,
        coldest,
        hottest,
        mean,
        notLogged,
        current ? 64.2 : Double.NaN);
  }

  private static double extreme(float[] values, int sign) {
    double extreme = -sign * 1e9;
    for (float value : values) {
      if (sign * value > sign * extreme) {
        extreme = value;
      }
    }
    return extreme;
  }

  static List<ChannelQuality> quality() {
    List<ChannelQuality> quality = new ArrayList<>();
    for (int cell = 1; cell <= CELLS; cell++) {
      quality.add(
          new ChannelQuality(
              "cell " + cell + " voltage",
              "V",
              cell == 3 ? 0.99996 : 1,
              0.001,
              0.0006,
              cell == 9 ? 7.5 : 0.4,
              0.2 * cell));
      quality.add(
          new ChannelQuality("temperature " + cell, "°C", 0.98, 0.5, Double.NaN, 3, Double.NaN));
    }
    return quality;
  }
}
