package sagbook.verdict;

import java.util.ArrayList;
import java.util.List;
import sagbook.evidence.Stress;
import sagbook.model.Finding;
import sagbook.model.Limits;
import sagbook.wording.Words;

/** Which limits a cell passed, as sentences; what a sensor says that lies is not counted. */
final class PassedLimits {
  private static final Words WORDS = Words.english();

  /** What a limit may be passed by before it counts: a board's error and a moment. */
  private static final double VOLTAGE_GRACE = 0.03;

  private static final double HOURS_GRACE = 0.03;
  private static final double COLD_HOURS_GRACE = 0.25;

  private final Stress stress;
  private final Limits limits;

  PassedLimits(Stress stress, Limits limits) {
    this.stress = stress;
    this.limits = limits;
  }

  /** Sentences about one cell, 1 for the first. */
  List<String> of(int cell, Finding finding) {
    List<String> all = new ArrayList<>();
    int c = cell - 1;
    if (finding != Finding.VOLTAGE_SENSOR) {
      voltage(c, all);
    }
    if (finding != Finding.TEMPERATURE_SENSOR) {
      temperature(c, all);
    }
    return all;
  }

  private void voltage(int c, List<String> all) {
    if (stress.hoursAboveMax()[c] > HOURS_GRACE
        && stress.highestVoltageV()[c] > limits.cellMaxVoltage() + VOLTAGE_GRACE) {
      all.add(
          WORDS.say(
              "limit.high",
              Integer.toString(c + 1),
              Words.fixed(stress.highestVoltageV()[c], 2),
              Words.fixed(limits.cellMaxVoltage(), 2),
              Words.fixed(stress.hoursAboveMax()[c], 1)));
    }
    if (stress.hoursBelowMin()[c] > HOURS_GRACE
        && stress.lowestVoltageV()[c] < limits.cellMinVoltage() - VOLTAGE_GRACE) {
      all.add(
          WORDS.say(
              "limit.low",
              Integer.toString(c + 1),
              Words.fixed(stress.lowestVoltageV()[c], 2),
              Words.fixed(limits.cellMinVoltage(), 2),
              Words.fixed(stress.hoursBelowMin()[c], 1)));
    }
  }

  private void temperature(int c, List<String> all) {
    if (stress.hoursHot()[c] > HOURS_GRACE) {
      all.add(
          WORDS.say(
              "limit.hot",
              Integer.toString(c + 1),
              Words.fixed(stress.highestTemperatureC()[c], 0),
              Words.fixed(limits.dischargeMaxTemperatureC(), 0)));
    }
    if (stress.hoursChargingCold()[c] > COLD_HOURS_GRACE) {
      all.add(
          WORDS.say(
              "limit.cold",
              Integer.toString(c + 1),
              Words.fixed(stress.hoursChargingCold()[c], 1),
              Words.fixed(limits.chargeMinTemperatureC(), 0)));
    }
  }
}
