package sagbook.estimate.temperature;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import sagbook.estimate.TemperatureFault;
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

  /** How much more than its neighbours a reading may move on its own, as a ratio. */
  private static final double RESTLESS_RATIO = 3;

  /**
   * The least that counts, K: two boards that round to whole degrees, the coarsest that is usual,
   * scatter by up to half a degree against each other.
   */
  private static final double RESTLESS_K = 0.5;

  private TemperatureWatch() {}

  /**
   * What is wrong with each cell's temperature.
   *
   * @param stuckHours longest time for which it stood still while the others moved, one a cell, h
   */
  public static List<TemperatureFault> of(ThinnedRecord record, double[] stuckHours) {
    int cells = record.cells();
    List<TemperatureFault> faults = new ArrayList<>();
    if (!record.hasTemperature()) {
      for (int c = 0; c < cells; c++) {
        faults.add(new TemperatureFault.NotLogged());
      }
      return faults;
    }
    HalfHours halfHours = HalfHours.of(record);
    double[] mean = IntStream.range(0, cells).mapToDouble(halfHours::mean).toArray();
    double[] sd = IntStream.range(0, cells).mapToDouble(halfHours::ownMovement).toArray();
    double usualSd = Math.max(0.02, Robust.median(sd));
    for (int c = 0; c < cells; c++) {
      faults.add(judge(stuckHours[c], mean[c], sd[c], usualSd));
    }
    return faults;
  }

  private static TemperatureFault judge(double stuck, double mean, double sd, double usualSd) {
    if (Double.isNaN(mean)) {
      return new TemperatureFault.NotLogged();
    }
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
}
