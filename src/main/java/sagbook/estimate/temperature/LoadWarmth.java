package sagbook.estimate.temperature;

import java.util.Arrays;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import sagbook.evidence.ThinnedRecord;
import sagbook.numeric.Jackknife;
import sagbook.numeric.Robust;

/**
 * How much each thermometer warms with the load. One current heats all cells of a string, each by
 * its resistance times the current squared, and within an hour little of that heat is lost: a cell
 * that is cooled more than others warms as fast as they do at first. So each temperature less its
 * own mean of the last hour is put against the mean of the current squared over the last hour.
 *
 * @param share warming over the median thermometer's, one a cell; NaN where none was read
 * @param shareSd standard deviation of each share
 * @param clear warming of the median thermometer over its standard deviation
 */
record LoadWarmth(double[] share, double[] shareSd, double clear) {
  /** So long a cell keeps most of its heat, s. Common practice, no source. */
  private static final double KEEPS_S = 3600;

  /** What went on in a longer gap than this nobody knows, s. */
  private static final double GAP_S = 900;

  /** Stretches of the record, of a day or longer, of which one is left out at a time. */
  private static final int STRETCHES = 12;

  /** A shorter record than this has stretches of less than a day and says nothing, s. */
  private static final double SHORTEST_S = 12 * 86_400.0;

  /** What is said has to stand clear by so many standard deviations. */
  private static final double CLEAR = 4;

  /** So clearly has the median thermometer to warm, for there to be something to lack. */
  private static final double WARMS = 2;

  /**
   * No cell has less than half of the others' resistance, and one that is cooled well still warms
   * by more than half as much within an hour. Common practice, no source.
   */
  private static final double LEAST_SHARE = 0.5;

  /** So many of the thermometers have to warm like cells before one that doesn't stands apart. */
  private static final double MOST = 0.75;

  /** Whether a cell's thermometer hardly warms with the load, while most others do. */
  boolean isApart(int cell) {
    double[] read = Arrays.stream(share).filter(s -> !Double.isNaN(s)).toArray();
    long warming = Arrays.stream(read).filter(s -> s > LEAST_SHARE).count();
    return clear > WARMS
        && warming >= MOST * read.length
        && share[cell] + CLEAR * shareSd[cell] < LEAST_SHARE;
  }

  /** Measures a record; shares are NaN where it is too short or has no current. */
  static LoadWarmth of(ThinnedRecord record) {
    int cells = record.cells();
    double[] heat = lastHour(record, r -> record.currentA()[r] * record.currentA()[r]);
    Answer[] answer =
        IntStream.range(0, cells)
            .mapToObj(c -> Answer.of(record, heat, record.temperatureC()[c]))
            .toArray(Answer[]::new);
    double[][] left = new double[STRETCHES][];
    for (int k = 0; k < STRETCHES; k++) {
      left[k] = shares(answer, k);
    }
    double[] all = shares(answer, -1);
    if (!isLong(record)) {
      Arrays.fill(all, Double.NaN);
    }
    return new LoadWarmth(
        Arrays.copyOf(all, cells),
        IntStream.range(0, cells).mapToDouble(c -> Jackknife.sd(left, c)).toArray(),
        all[cells] / Jackknife.sd(left, cells));
  }

  private static boolean isLong(ThinnedRecord record) {
    int rows = record.rows();
    return rows > 0 && record.timeS()[rows - 1] - record.timeS()[0] >= SHORTEST_S;
  }

  /** The share of every cell, and behind them the warming of the median one, K/A². */
  private static double[] shares(Answer[] answer, int leftOut) {
    double[] warming = Arrays.stream(answer).mapToDouble(a -> a.without(leftOut)).toArray();
    double middle = Robust.median(warming);
    double[] shares = Arrays.copyOf(warming, warming.length + 1);
    for (int c = 0; c < warming.length; c++) {
      shares[c] /= middle;
    }
    shares[warming.length] = middle;
    return shares;
  }

  /** Mean over about the last hour, begun anew after a gap; NaN where there is no value. */
  private static double[] lastHour(ThinnedRecord record, IntToDoubleFunction value) {
    double[] mean = new double[record.rows()];
    double now = Double.NaN;
    double knownS = Double.NaN;
    for (int r = 0; r < mean.length; r++) {
      double one = value.applyAsDouble(r);
      mean[r] = Double.NaN;
      if (!Double.isNaN(one)) {
        double elapsedS = record.timeS()[r] - knownS;
        now = elapsedS <= GAP_S ? one + (now - one) * Math.exp(-elapsedS / KEEPS_S) : one;
        knownS = record.timeS()[r];
        mean[r] = now;
      }
    }
    return mean;
  }

  /**
   * What one thermometer does with the heat of the load. What both do at the same time of every day
   * is left out, or a room that cools as the evening's load begins would pass for a cell that the
   * load cools.
   *
   * @param moved products of heat and warming, K A², one a stretch
   * @param heat squares of the heat, A⁴, one a stretch
   */
  private record Answer(double[] moved, double[] heat) {
    private static final double DAY_S = 86_400;
    private static final double SLOT_S = 1800;
    private static final int SLOTS = 48;

    static Answer of(ThinnedRecord record, double[] heat, float[] celsius) {
      double[] before = lastHour(record, r -> celsius[r]);
      int[] seen =
          IntStream.range(0, heat.length)
              .filter(r -> !Double.isNaN(heat[r]) && !Double.isNaN(before[r]))
              .toArray();
      double[] usual = new double[SLOTS];
      int[] count = new int[SLOTS];
      for (int r : seen) {
        usual[slot(record, r)] += heat[r];
        count[slot(record, r)]++;
      }
      Answer answer = new Answer(new double[STRETCHES], new double[STRETCHES]);
      for (int r : seen) {
        int slot = slot(record, r);
        int stretch = (int) (stretchOf(record, r) * STRETCHES);
        double more = heat[r] - usual[slot] / count[slot];
        answer.moved[stretch] += more * (celsius[r] - before[r]);
        answer.heat[stretch] += more * more;
      }
      return answer;
    }

    private static int slot(ThinnedRecord record, int row) {
      return Math.floorMod((long) Math.floor(record.timeS()[row] / SLOT_S), SLOTS);
    }

    /** Place of a row's day in the record, 0 to below 1. */
    private static double stretchOf(ThinnedRecord record, int row) {
      double first = Math.floor(record.timeS()[0] / DAY_S);
      double last = Math.floor(record.timeS()[record.rows() - 1] / DAY_S);
      return (Math.floor(record.timeS()[row] / DAY_S) - first) / (last - first + 1);
    }

    /** Warming, K/A², of all stretches but one; NaN without heat. */
    double without(int leftOut) {
      double movedSum = 0;
      double heatSum = 0;
      for (int k = 0; k < STRETCHES; k++) {
        if (k != leftOut) {
          movedSum += moved[k];
          heatSum += heat[k];
        }
      }
      return movedSum / heatSum;
    }
  }
}
