package sagbook.estimate.temperature;

import java.util.ArrayList;
import java.util.List;
import sagbook.estimate.TemperatureFault;
import sagbook.evidence.Evidence;
import sagbook.evidence.ThinnedRecord;
import sagbook.numeric.Robust;
import sagbook.wording.Words;

/**
 * Compares each cell's temperature with its neighbours': cells of one string share a room and a
 * current, so what moves on its own, or not at all, is a reading and not a cell. Limits are common
 * practice, no source.
 */
public final class TemperatureWatch {
  private static final Words WORDS = Words.english();

  /** Standstill that no cell shows while its neighbours move, h. */
  private static final double STUCK_HOURS = 20;

  /** How far a cell may lie from the string's median for good, K. */
  private static final double FAR_OFF_K = 6;

  /** How much more than its neighbours a reading may move on its own, as a ratio and in K. */
  private static final double RESTLESS_RATIO = 3;

  private static final double RESTLESS_K = 0.22;

  /** Means over this long take resolution and noise away, s. */
  private static final double MEAN_S = 1800;

  private TemperatureWatch() {}

  /** What is wrong with each cell's temperature. */
  public static List<TemperatureFault> of(Evidence evidence) {
    ThinnedRecord record = evidence.thinned();
    int cells = record.cells();
    List<TemperatureFault> faults = new ArrayList<>();
    if (!record.hasTemperature()) {
      for (int c = 0; c < cells; c++) {
        faults.add(new TemperatureFault.NotLogged());
      }
      return faults;
    }
    double[] mean = new double[cells];
    double[] sd = new double[cells];
    deviations(record, mean, sd);
    double usualSd = Math.max(0.02, Robust.median(sd));
    for (int c = 0; c < cells; c++) {
      faults.add(judge(evidence, c, mean[c], sd[c], usualSd));
    }
    return faults;
  }

  private static TemperatureFault judge(
      Evidence evidence, int c, double mean, double sd, double usualSd) {
    if (Double.isNaN(mean)) {
      return new TemperatureFault.NotLogged();
    }
    double stuck = evidence.temperatureStuckHours()[c];
    if (stuck > STUCK_HOURS) {
      return new TemperatureFault.Seen(WORDS.say("thermometer.stuck", WORDS.span(3600 * stuck)));
    }
    if (Math.abs(mean) > FAR_OFF_K) {
      return new TemperatureFault.Seen(
          WORDS.say(
              mean > 0 ? "thermometer.more" : "thermometer.less", Words.fixed(Math.abs(mean), 1)));
    }
    if (sd > RESTLESS_RATIO * usualSd && sd > RESTLESS_K) {
      return new TemperatureFault.Seen(
          WORDS.say("thermometer.other", Words.fixed(sd, 2), Words.fixed(usualSd, 2)));
    }
    return new TemperatureFault.None();
  }

  /** Mean and standard deviation of each cell's half-hourly means about the string's median, K. */
  private static void deviations(ThinnedRecord record, double[] mean, double[] sd) {
    int cells = record.cells();
    double[] sum = new double[cells];
    double[] squares = new double[cells];
    int[] blocks = new int[cells];
    double[] one = new double[cells];
    double[] blockSum = new double[cells];
    int[] blockRows = new int[cells];
    double blockStart = Double.NaN;
    for (int r = 0; r <= record.rows(); r++) {
      boolean end = r == record.rows();
      if (end || !(record.timeS()[r] - blockStart < MEAN_S)) {
        close(blockSum, blockRows, sum, squares, blocks);
        blockStart = end ? Double.NaN : record.timeS()[r];
      }
      if (end) {
        break;
      }
      for (int c = 0; c < cells; c++) {
        one[c] = record.temperatureC()[c][r];
      }
      double middle = Robust.median(one);
      for (int c = 0; c < cells; c++) {
        if (!Double.isNaN(one[c])) {
          blockSum[c] += one[c] - middle;
          blockRows[c]++;
        }
      }
    }
    for (int c = 0; c < cells; c++) {
      mean[c] = blocks[c] == 0 ? Double.NaN : sum[c] / blocks[c];
      sd[c] =
          blocks[c] == 0
              ? Double.NaN
              : Math.sqrt(Math.max(0, squares[c] / blocks[c] - mean[c] * mean[c]));
    }
  }

  private static void close(
      double[] blockSum, int[] blockRows, double[] sum, double[] squares, int[] blocks) {
    for (int c = 0; c < sum.length; c++) {
      if (blockRows[c] > 0) {
        double m = blockSum[c] / blockRows[c];
        sum[c] += m;
        squares[c] += m * m;
        blocks[c]++;
      }
      blockSum[c] = 0;
      blockRows[c] = 0;
    }
  }
}
