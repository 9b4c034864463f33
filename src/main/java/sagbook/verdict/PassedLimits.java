package sagbook.verdict;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import sagbook.evidence.Stress;
import sagbook.model.Finding;
import sagbook.model.Limits;

/** Which limits a cell passed, as sentences; what a sensor says that lies is not counted. */
final class PassedLimits {
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
          String.format(
              Locale.ROOT,
              "Cell %d was charged to %.2f V, above the limit of %.2f V, for %.1f h: stop charging"
                  + " until the cause is found.",
              c + 1,
              stress.highestVoltageV()[c],
              limits.cellMaxVoltage(),
              stress.hoursAboveMax()[c]));
    }
    if (stress.hoursBelowMin()[c] > HOURS_GRACE
        && stress.lowestVoltageV()[c] < limits.cellMinVoltage() - VOLTAGE_GRACE) {
      all.add(
          String.format(
              Locale.ROOT,
              "Cell %d was drained to %.2f V, below the limit of %.2f V, for %.1f h: do not"
                  + " discharge further, recharge slowly and find the cause.",
              c + 1,
              stress.lowestVoltageV()[c],
              limits.cellMinVoltage(),
              stress.hoursBelowMin()[c]));
    }
  }

  private void temperature(int c, List<String> all) {
    if (stress.hoursHot()[c] > HOURS_GRACE) {
      all.add(
          String.format(
              Locale.ROOT,
              "Cell %d was at up to %.0f °C, above the limit of %.0f °C: stop and let it cool, then"
                  + " look for a bad joint.",
              c + 1,
              stress.highestTemperatureC()[c],
              limits.dischargeMaxTemperatureC()));
    }
    if (stress.hoursChargingCold()[c] > COLD_HOURS_GRACE) {
      all.add(
          String.format(
              Locale.ROOT,
              "Cell %d was charged for %.1f h below %.0f °C, which damages it for good: block"
                  + " charging in the cold.",
              c + 1,
              stress.hoursChargingCold()[c],
              limits.chargeMinTemperatureC()));
    }
  }
}
