package sagbook.estimate.temperature;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import sagbook.estimate.TemperatureFault;
import sagbook.evidence.ThinnedRecord;

/**
 * Cells in a row on a shelf, minute by minute, with what their thermometers touch. Each stores
 * about 5 kJ/K, passes 0.7 W/K to each neighbour and 0.25 W/K to the room, the outer two 0.5 W/K
 * more; it is warmed by the square of the current times about 0.6 mΩ. The room swings by 3 K a day
 * and with the weather. The sun charges, more on some days than on others, evenings discharge, and
 * a kettle comes and goes. Boards bleed for a time of their own after a charge, 3.5 W into 8 K/W,
 * and pass a part of their warmth to the neighbours' boards. All these are its own numbers, without
 * a source.
 */
final class WarmShelf {
  static final int CELLS = 12;

  /** Beside the cells' own temperatures. */
  static final int ROOM = CELLS;

  private static final int DAY = 1440;
  private static final double BOARD_K = 28;

  private final int rows;
  private final double[][] celsius;
  private final double[][] boardK = new double[CELLS][];
  private final float[] currentA;
  private final float[][] bleed;
  private final Random random;

  /** What each thermometer touches: a cell, or the room. */
  final int[] place = IntStream.range(0, CELLS).toArray();

  /** How much of its board's warmth each thermometer takes up. */
  final double[] boardShare = new double[CELLS];

  double stepK = 0.5;
  boolean bleedLogged = true;

  WarmShelf(int days, long seed) {
    rows = days * DAY;
    random = new Random(seed);
    celsius = new double[CELLS + 1][rows];
    currentA = new float[rows];
    bleed = new float[CELLS][rows];
    for (int c = 0; c < CELLS; c++) {
      boardK[c] = new double[rows];
    }
    load(days);
    live();
  }

  private void load(int days) {
    for (int d = 0; d < days; d++) {
      double sun = 30 + 60 * random.nextDouble();
      double evening = 40 + 80 * random.nextDouble();
      int from = 540 + random.nextInt(120);
      int until = from + 200 + random.nextInt(120);
      int supper = 1020 + random.nextInt(120);
      for (int m = 0; m < DAY; m++) {
        double amps = m > from && m < until ? sun : m > supper && m < supper + 180 ? -evening : -4;
        currentA[d * DAY + m] = (float) amps;
      }
      for (int kettle = 0; kettle < 5; kettle++) {
        int at = 360 + random.nextInt(960);
        for (int m = at; m < at + 8; m++) {
          currentA[d * DAY + m] -= 70;
        }
      }
      for (int c = 0; c < CELLS; c++) {
        int minutes = random.nextInt(90);
        Arrays.fill(bleed[c], d * DAY + until, d * DAY + until + minutes, 1);
      }
    }
  }

  private void live() {
    double[] ohm = spread(0.0006, 0.05);
    double[] joulePerKelvin = spread(5000, 0.03);
    double[] now = new double[CELLS];
    Arrays.fill(now, 15);
    double[] boards = new double[CELLS];
    double weather = 0;
    for (int r = 0; r < rows; r++) {
      weather += 0.03 * random.nextGaussian() - weather / 4000;
      double room = 14 + weather + 3 * Math.sin(2 * Math.PI * (r - 560) / DAY);
      celsius[ROOM][r] = room;
      double[] before = now.clone();
      for (int c = 0; c < CELLS; c++) {
        double outer = c == 0 || c == CELLS - 1 ? 0.75 : 0.25;
        double watt = currentA[r] * currentA[r] * ohm[c] + outer * (room - before[c]);
        watt += c > 0 ? 0.7 * (before[c - 1] - before[c]) : 0;
        watt += c < CELLS - 1 ? 0.7 * (before[c + 1] - before[c]) : 0;
        now[c] += watt * 60 / joulePerKelvin[c];
        boards[c] += (BOARD_K * bleed[c][r] - boards[c]) / 6;
        celsius[c][r] = now[c];
      }
      for (int c = 0; c < CELLS; c++) {
        double beside = (c > 0 ? boards[c - 1] : 0) + (c < CELLS - 1 ? boards[c + 1] : 0);
        boardK[c][r] = boards[c] + 0.15 * beside;
      }
    }
  }

  private double[] spread(double usual, double share) {
    double[] values = new double[CELLS];
    Arrays.setAll(values, c -> usual * Math.exp(share * random.nextGaussian()));
    return values;
  }

  /** Two thermometers change places. */
  void swap(int one, int other) {
    int before = place[one];
    place[one] = place[other];
    place[other] = before;
  }

  /** What the thermometers read. */
  ThinnedRecord record() {
    float[][] read = new float[CELLS][rows];
    for (int c = 0; c < CELLS; c++) {
      int at = place[c];
      for (int r = 0; r < rows; r++) {
        double board = at == ROOM ? 0 : boardShare[c] * boardK[at][r];
        double shown = celsius[at][r] + board + 0.3 * Math.sin(7 * c) + 0.1 * random.nextGaussian();
        read[c][r] = (float) (stepK * Math.rint(shown / stepK));
      }
    }
    float[] seconds = new float[rows];
    Arrays.fill(seconds, 60);
    return new ThinnedRecord(
        IntStream.range(0, rows).mapToDouble(r -> 60.0 * r).toArray(),
        seconds,
        new int[rows],
        currentA,
        new double[rows],
        new float[CELLS][rows],
        read,
        bleedLogged ? bleed : new float[0][]);
  }

  List<TemperatureFault> judged() {
    return TemperatureWatch.of(record(), new double[CELLS]);
  }
}
