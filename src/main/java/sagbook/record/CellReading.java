package sagbook.record;

import sagbook.evidence.Stress;

/** What a cell's own readings went through over the period, read off rather than estimated. */
public enum CellReading {
  HIGHEST_VOLTAGE_V("highest_voltage_v", "V", Stress::highestVoltageV),
  LOWEST_VOLTAGE_V("lowest_voltage_v", "V", Stress::lowestVoltageV),
  HOURS_ABOVE_MAX_VOLTAGE("hours_above_max_voltage", "h", Stress::hoursAboveMax),
  HOURS_BELOW_MIN_VOLTAGE("hours_below_min_voltage", "h", Stress::hoursBelowMin),
  LOWEST_TEMPERATURE_C("lowest_temperature_c", "°C", Stress::lowestTemperatureC),
  MEAN_TEMPERATURE_C("mean_temperature_c", "°C", Stress::meanTemperatureC),
  HIGHEST_TEMPERATURE_C("highest_temperature_c", "°C", Stress::highestTemperatureC),
  HOURS_CHARGING_COLD("hours_charging_cold", "h", Stress::hoursChargingCold),
  HOURS_CHARGING_HOT("hours_charging_hot", "h", Stress::hoursChargingHot),
  HOURS_HOT("hours_hot", "h", Stress::hoursHot),
  BLED_AH("bled_ah", "Ah", Stress::bledAh);

  private interface Column {
    double[] of(Stress stress);
  }

  private final String key;
  private final String unit;

  @SuppressWarnings("ImmutableEnumChecker") // a function without state
  private final Column column;

  CellReading(String key, String unit, Column column) {
    this.key = key;
    this.unit = unit;
    this.column = column;
  }

  /** Name in results.json and in table headers. */
  public String key() {
    return key;
  }

  public String unit() {
    return unit;
  }

  /**
   * The reading of one cell.
   *
   * @param stress of the bank
   * @param cell 1 for the first
   * @return in {@link #unit()}; NaN when it was not logged
   */
  public double of(Stress stress, int cell) {
    double[] all = column.of(stress);
    return cell <= all.length ? all[cell - 1] : Double.NaN;
  }
}
