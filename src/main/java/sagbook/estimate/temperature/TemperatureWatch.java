package sagbook.estimate.temperature;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import sagbook.estimate.TemperatureFault;
import sagbook.evidence.ThinnedRecord;
import sagbook.numeric.Robust;
import sagbook.wording.Words;

/**
 * Compares each cell's temperature with its neighbours': cells of one string share a room and a
 * current, so what moves on its own, or not at all, or not with the load, is a reading and not a
 * cell ({@link HalfHours}, {@link LoadWarmth}), and what answers to another cell's bleeding is that
 * cell's ({@link BleedWarmth}). Limits are common practice, no source.
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

  private final double[] stuckHours;
  private final LoadWarmth load;
  private final Optional<BleedWarmth> bleed;
  private final double[] mean;
  private final double[] sd;
  private final double usualSd;

  private TemperatureWatch(ThinnedRecord record, double[] stuckHours) {
    this.stuckHours = stuckHours.clone();
    HalfHours halfHours = HalfHours.of(record);
    load = LoadWarmth.of(record);
    bleed = BleedWarmth.of(halfHours);
    mean = IntStream.range(0, record.cells()).mapToDouble(halfHours::mean).toArray();
    sd = IntStream.range(0, record.cells()).mapToDouble(halfHours::ownMovement).toArray();
    usualSd = Math.max(0.02, Robust.median(sd));
  }

  /**
   * What is wrong with each cell's temperature.
   *
   * @param stuckHours longest time for which it stood still while the others moved, one a cell, h
   */
  public static List<TemperatureFault> of(ThinnedRecord record, double[] stuckHours) {
    List<TemperatureFault> faults = new ArrayList<>();
    if (!record.hasTemperature()) {
      for (int c = 0; c < record.cells(); c++) {
        faults.add(new TemperatureFault.NotLogged());
      }
      return faults;
    }
    TemperatureWatch watch = new TemperatureWatch(record, stuckHours);
    for (int c = 0; c < record.cells(); c++) {
      faults.add(watch.judge(c));
    }
    return faults;
  }

  /** The plainest fault first: what is said of a cell is one thing. */
  private TemperatureFault judge(int cell) {
    if (Double.isNaN(mean[cell])) {
      return new TemperatureFault.NotLogged();
    }
    return stuck(cell)
        .or(() -> onAnother(cell))
        .or(() -> apart(cell))
        .or(() -> farOff(cell))
        .or(() -> onBoard(cell))
        .or(() -> restless(cell))
        .<TemperatureFault>map(TemperatureFault.Seen::new)
        .orElseGet(TemperatureFault.None::new);
  }

  private Optional<String> stuck(int cell) {
    return stuckHours[cell] > STUCK_HOURS
        ? Optional.of(WORDS.say("thermometer.stuck", WORDS.span(3600 * stuckHours[cell])))
        : Optional.empty();
  }

  private Optional<String> onAnother(int cell) {
    OptionalInt other = bleed.map(b -> b.sitsOn(cell)).orElse(OptionalInt.empty());
    return other.isPresent()
        ? Optional.of(
            WORDS.say(
                "thermometer.swapped",
                Integer.toString(other.getAsInt() + 1),
                bled(cell, other.getAsInt()),
                bled(cell, cell)))
        : Optional.empty();
  }

  private Optional<String> apart(int cell) {
    return load.isApart(cell)
        ? Optional.of(
            WORDS.say("thermometer.apart", Words.fixed(Math.max(0, 100 * load.share()[cell]), 0)))
        : Optional.empty();
  }

  private Optional<String> farOff(int cell) {
    return Math.abs(mean[cell]) > FAR_OFF_K
        ? Optional.of(
            WORDS.say(
                mean[cell] > 0 ? "thermometer.more" : "thermometer.less",
                Words.fixed(Math.abs(mean[cell]), 1)))
        : Optional.empty();
  }

  private Optional<String> onBoard(int cell) {
    return bleed.map(b -> b.isBoard(cell)).orElse(false)
        ? Optional.of(WORDS.say("thermometer.board", bled(cell, cell)))
        : Optional.empty();
  }

  /** What a cell's bleeding adds to a thermometer, K. */
  private String bled(int thermometer, int cell) {
    double kelvin = bleed.map(b -> b.kelvin()[thermometer][cell]).orElse(Double.NaN);
    return Words.fixed(Math.max(0, kelvin), 1);
  }

  private Optional<String> restless(int cell) {
    return sd[cell] > RESTLESS_RATIO * usualSd && sd[cell] > RESTLESS_K
        ? Optional.of(
            WORDS.say("thermometer.other", Words.fixed(sd[cell], 2), Words.fixed(usualSd, 2)))
        : Optional.empty();
  }
}
