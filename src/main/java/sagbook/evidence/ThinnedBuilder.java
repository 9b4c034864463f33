package sagbook.evidence;

import java.util.Arrays;
import sagbook.model.Channels;
import sagbook.model.SampleBlock;

/**
 * Averages rows into bins of about a minute. When a very long log would need more than {@link
 * #MOST_ROWS} bins, neighbouring bins are merged and the bins become twice as wide.
 */
final class ThinnedBuilder {
  static final int MOST_ROWS = 100_000;

  private final Channels channels;
  private double binS = 60;
  private int rows;
  private double[] timeS = new double[1024];
  private float[] seconds = new float[1024];
  private int[] segment = new int[1024];
  private double[] chargeAh = new double[1024];

  /** Current first, then voltages, temperatures, bleed levels. */
  private final float[][] columns;

  private long bin = Long.MIN_VALUE;
  private int binRows;
  private double binTime;
  private double binSeconds;
  private double binCharge;
  private int binSegment;
  private final double[] sums;
  private final int[] counts;

  ThinnedBuilder(Channels channels) {
    this.channels = channels;
    int n = channels.seriesCells();
    int width = 1 + n + (channels.hasTemperature() ? n : 0) + (channels.hasBleed() ? n : 0);
    columns = new float[width][1024];
    sums = new double[width];
    counts = new int[width];
  }

  void start(double cadenceS) {
    binS = cadenceS > 30 ? cadenceS : Math.min(60, Math.max(10, 12 * cadenceS));
  }

  void take(SampleBlock block, int r, Stopwatch clock) {
    double t = block.timeS()[r];
    long place = (long) Math.floor(t / binS);
    if (place != bin || clock.segment() != binSegment) {
      flush();
      bin = place;
      binSegment = clock.segment();
    }
    binRows++;
    binTime += t;
    binCharge += clock.chargeAh();
    binSeconds += clock.follows() ? clock.elapsedS() : clock.cadenceS();
    int n = channels.seriesCells();
    add(0, channels.hasCurrent() ? block.currentA()[r] : Double.NaN);
    int column = addAll(1, block.voltageV(), r, n);
    if (channels.hasTemperature()) {
      column = addAll(column, block.temperatureC(), r, n);
    }
    if (channels.hasBleed()) {
      addAll(column, block.bleedFraction(), r, n);
    }
  }

  private int addAll(int column, double[][] from, int r, int n) {
    for (int c = 0; c < n; c++) {
      add(column + c, from[c][r]);
    }
    return column + n;
  }

  private void add(int column, double value) {
    if (!Double.isNaN(value)) {
      sums[column] += value;
      counts[column]++;
    }
  }

  private void flush() {
    if (binRows == 0) {
      return;
    }
    if (rows == MOST_ROWS) {
      halve();
    }
    if (rows == timeS.length) {
      grow();
    }
    timeS[rows] = binTime / binRows;
    seconds[rows] = (float) binSeconds;
    segment[rows] = binSegment;
    chargeAh[rows] = channels.hasCurrent() ? binCharge / binRows : Double.NaN;
    for (int c = 0; c < sums.length; c++) {
      columns[c][rows] = counts[c] == 0 ? Float.NaN : (float) (sums[c] / counts[c]);
    }
    rows++;
    binRows = 0;
    binTime = 0;
    binSeconds = 0;
    binCharge = 0;
    Arrays.fill(sums, 0);
    Arrays.fill(counts, 0);
  }

  private void grow() {
    int size = Math.min(MOST_ROWS, 2 * timeS.length);
    timeS = Arrays.copyOf(timeS, size);
    seconds = Arrays.copyOf(seconds, size);
    segment = Arrays.copyOf(segment, size);
    chargeAh = Arrays.copyOf(chargeAh, size);
    for (int c = 0; c < columns.length; c++) {
      columns[c] = Arrays.copyOf(columns[c], size);
    }
  }

  private void halve() {
    int to = 0;
    int from = 0;
    while (from < rows) {
      boolean pair =
          from + 1 < rows
              && segment[from] == segment[from + 1]
              && Math.floor(timeS[from] / (2 * binS)) == Math.floor(timeS[from + 1] / (2 * binS));
      int other = pair ? from + 1 : from;
      double whole = (double) seconds[from] + seconds[other];
      double share = pair && whole > 0 ? seconds[other] / whole : 0;
      timeS[to] = timeS[from] + share * (timeS[other] - timeS[from]);
      chargeAh[to] = chargeAh[from] + share * (chargeAh[other] - chargeAh[from]);
      segment[to] = segment[from];
      for (float[] column : columns) {
        column[to] = mix(column[from], column[other], share);
      }
      seconds[to] = pair ? (float) whole : seconds[from];
      to++;
      from = other + 1;
    }
    rows = to;
    binS *= 2;
  }

  private static float mix(float a, float b, double share) {
    if (Float.isNaN(a)) {
      return b;
    }
    return Float.isNaN(b) ? a : (float) (a + share * (b - a));
  }

  ThinnedRecord finish() {
    flush();
    int n = channels.seriesCells();
    float[][] cut = new float[columns.length][];
    for (int c = 0; c < columns.length; c++) {
      cut[c] = Arrays.copyOf(columns[c], rows);
    }
    int temperatures = channels.hasTemperature() ? n : 0;
    int bleeds = channels.hasBleed() ? n : 0;
    return new ThinnedRecord(
        Arrays.copyOf(timeS, rows),
        Arrays.copyOf(seconds, rows),
        Arrays.copyOf(segment, rows),
        cut[0],
        Arrays.copyOf(chargeAh, rows),
        Arrays.copyOfRange(cut, 1, 1 + n),
        Arrays.copyOfRange(cut, 1 + n, 1 + n + temperatures),
        Arrays.copyOfRange(cut, 1 + n + temperatures, 1 + n + temperatures + bleeds));
  }
}
