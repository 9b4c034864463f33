package sagbook.logfile;

import sagbook.issue.RowIssue;

/**
 * What a sensor can have measured. Outside it a value stands for "no reading": 0, full scale of 16
 * bits, -127, -40 and 85 °C are common practice, no source.
 */
final class Plausible {
  private static final double LEAST_VOLT = 0.2;
  private static final double MOST_VOLT = 6;
  private static final double LEAST_CELSIUS = -40;
  private static final double MOST_CELSIUS = 125;
  private static final double MOST_AMPERE = 3000;
  private static final double MOST_BLEED = 1.05;
  private static final double MOST_BLEED_UNSETTLED = 105;

  private Plausible() {}

  static boolean accepts(Quantity quantity, double value) {
    return switch (quantity) {
      case CELL_VOLTAGE -> value > LEAST_VOLT && value < MOST_VOLT;
      case CELL_TEMPERATURE -> value > LEAST_CELSIUS && value < MOST_CELSIUS;
      case CELL_BLEED -> value >= 0 && value <= MOST_BLEED_UNSETTLED;
      case CURRENT, CHARGE_CURRENT, DISCHARGE_CURRENT -> Math.abs(value) < MOST_AMPERE;
      case PACK_VOLTAGE -> value > 0 && value < 32 * MOST_VOLT;
      default -> true;
    };
  }

  /** Whether a bleed level, once its unit is settled, can be one. */
  static boolean acceptsBleed(double fraction) {
    return fraction <= MOST_BLEED;
  }

  static RowIssue issue(Quantity quantity) {
    return switch (quantity) {
      case CELL_TEMPERATURE -> RowIssue.IMPLAUSIBLE_TEMPERATURE;
      case CELL_BLEED -> RowIssue.IMPLAUSIBLE_BLEED;
      case CURRENT, CHARGE_CURRENT, DISCHARGE_CURRENT, POWER -> RowIssue.IMPLAUSIBLE_CURRENT;
      default -> RowIssue.IMPLAUSIBLE_VOLTAGE;
    };
  }
}
