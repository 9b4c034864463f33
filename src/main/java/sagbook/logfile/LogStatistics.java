package sagbook.logfile;

import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import sagbook.model.ChannelQuality;
import sagbook.wording.Words;

/** What a bank's rows show of the quality of each channel. */
final class LogStatistics {
  private static final Words WORDS = Words.english();
  private static final double VOLTS_MOVED = 0.02;
  private static final double LEAST_VOLT_STEP = 5e-5;
  private static final double CELSIUS_MOVED = 1.5;
  private static final double LEAST_CELSIUS_STEP = 1e-3;
  private static final double LEAST_STUCK_S = 6 * 3600.0;

  /**
   * A cell that is not bled stays cool for an hour while those that are warm up. Common practice,
   * no source.
   */
  private static final double CELSIUS_LAG_S = 2 * 3600.0;

  private final Slots slots;
  private final ChannelStatistics[] voltages;
  private final ChannelStatistics[] temperatures;
  private final ChannelStatistics current = new ChannelStatistics(Double.NaN, 1e-6, 0);
  private final SkewMeter skew;
  private final SmearMeter smear = new SmearMeter();

  LogStatistics(Slots slots, double cadenceS) {
    this.slots = slots;
    this.skew = new SkewMeter(slots.cells(), cadenceS);
    this.voltages = new ChannelStatistics[slots.cells()];
    this.temperatures = new ChannelStatistics[slots.cells()];
    for (int i = 0; i < slots.cells(); i++) {
      voltages[i] = new ChannelStatistics(VOLTS_MOVED, LEAST_VOLT_STEP, 0);
      temperatures[i] = new ChannelStatistics(CELSIUS_MOVED, LEAST_CELSIUS_STEP, CELSIUS_LAG_S);
    }
  }

  void add(Row row, double currentA) {
    double meanVoltage = mean(row.values, slots.voltage(1));
    double meanTemperature = mean(row.values, slots.temperature(1));
    for (int i = 0; i < voltages.length; i++) {
      voltages[i].add(row.timeS, row.values[slots.voltage(i + 1)], meanVoltage);
      temperatures[i].add(row.timeS, row.values[slots.temperature(i + 1)], meanTemperature);
    }
    current.add(row.timeS, currentA, Double.NaN);
    skew.add(row.timeS, row.values, slots);
    smear.add(currentA);
  }

  private double mean(double[] values, int from) {
    double sum = 0;
    int count = 0;
    for (int slot = from; slot < from + slots.cells(); slot++) {
      if (!Double.isNaN(values[slot])) {
        sum += values[slot];
        count++;
      }
    }
    return count == 0 ? Double.NaN : sum / count;
  }

  boolean isSmeared() {
    return smear.isSmeared();
  }

  /** One a channel, cells first, then temperatures, then current. */
  List<ChannelQuality> qualities() {
    double[] delays = skew.delaysS();
    List<ChannelQuality> found = new ArrayList<>();
    for (int i = 0; i < voltages.length; i++) {
      add(
          found,
          WORDS.say("channel.voltage", Integer.toString(i + 1)),
          "V",
          voltages[i],
          delays[i]);
    }
    for (int i = 0; i < temperatures.length; i++) {
      add(
          found,
          WORDS.say("channel.temperature", Integer.toString(i + 1)),
          "°C",
          temperatures[i],
          Double.NaN);
    }
    add(found, WORDS.say("channel.current"), "A", current, Double.NaN);
    return found;
  }

  private static void add(
      List<ChannelQuality> found, String name, String unit, ChannelStatistics s, double delay) {
    if (s.isPresent()) {
      found.add(
          new ChannelQuality(
              name, unit, s.validShare(), s.resolution(), s.noise(), s.stuckS() / 3600, delay));
    }
  }

  /** What is odd about the rows, in plain sentences. */
  List<String> sentences(ZoneId zone) {
    List<String> sentences = new ArrayList<>();
    if (smear.isSmeared()) {
      sentences.add(WORDS.say("reading.smeared"));
    }
    double most = 0;
    for (double delay : skew.delaysS()) {
      most = delay > most ? delay : most;
    }
    if (most > 0) {
      sentences.add(WORDS.say("reading.one-after-another", Words.fixed(most, 1)));
    }
    for (int i = 0; i < slots.cells(); i++) {
      addStuck(sentences, "reading.stuck.voltage", i + 1, voltages[i], zone);
      addStuck(sentences, "reading.stuck.temperature", i + 1, temperatures[i], zone);
    }
    return sentences;
  }

  private static void addStuck(
      List<String> sentences, String key, int place, ChannelStatistics channel, ZoneId zone) {
    if (channel.stuckS() >= LEAST_STUCK_S) {
      sentences.add(
          WORDS.say(
              key,
              Integer.toString(place),
              WORDS.span(channel.stuckS()),
              WORDS.time(Instant.ofEpochSecond((long) channel.stuckFromS()), zone)));
    }
  }

  /** What to change in the logging to get better answers, in plain sentences. */
  List<String> advice(double cadenceS, boolean hasCurrent) {
    List<String> advice = new ArrayList<>();
    if (!hasCurrent) {
      advice.add(WORDS.say("logging.current"));
    }
    if (cadenceS > 10) {
      advice.add(WORDS.say("logging.faster"));
    }
    if (smear.isSmeared()) {
      advice.add(WORDS.say("logging.momentary"));
    }
    double coarsest = 0;
    for (ChannelStatistics voltage : voltages) {
      coarsest = Math.max(coarsest, voltage.resolution());
    }
    if (coarsest > 0.004) {
      advice.add(WORDS.say("logging.finer"));
    }
    for (int i = 0; i < temperatures.length; i++) {
      if (temperatures[i].stuckS() >= LEAST_STUCK_S) {
        advice.add(WORDS.say("logging.thermometer", Integer.toString(i + 1)));
      }
    }
    return advice;
  }
}
