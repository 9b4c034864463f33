package sagbook.model;

/**
 * What the cells may see. Defaults are data-sheet practice, no single source; the cell maker's
 * sheet rules.
 *
 * @param cellFullVoltage rest voltage that counts as full, volt
 * @param cellEmptyVoltage rest voltage that counts as empty, volt
 * @param cellMaxVoltage above this a cell is over-charged, volt
 * @param cellMinVoltage below this a cell is over-discharged, volt
 * @param chargeMinTemperatureC no charging below this, °C
 * @param chargeMaxTemperatureC no charging above this, °C
 * @param chargeCoolTemperatureC charging below this counts as cool, to be gentle, °C
 * @param dischargeMinTemperatureC no discharging below this, °C
 * @param dischargeMaxTemperatureC no discharging above this, °C
 */
public record Limits(
    double cellFullVoltage,
    double cellEmptyVoltage,
    double cellMaxVoltage,
    double cellMinVoltage,
    double chargeMinTemperatureC,
    double chargeMaxTemperatureC,
    double chargeCoolTemperatureC,
    double dischargeMinTemperatureC,
    double dischargeMaxTemperatureC) {

  public Limits {
    if (!(cellEmptyVoltage < cellFullVoltage) || !(cellMinVoltage < cellMaxVoltage)) {
      throw new IllegalArgumentException("the lower voltage limit must be below the upper one");
    }
    if (!(chargeMinTemperatureC <= chargeCoolTemperatureC
            && chargeCoolTemperatureC <= chargeMaxTemperatureC)
        || !(chargeMinTemperatureC < chargeMaxTemperatureC)
        || !(dischargeMinTemperatureC < dischargeMaxTemperatureC)) {
      throw new IllegalArgumentException("the lower temperature limit must be below the upper one");
    }
  }

  public static Limits of(Chemistry chemistry) {
    return new Limits(
        chemistry.fullVoltage(),
        chemistry.emptyVoltage(),
        chemistry.fullVoltage(),
        chemistry.emptyVoltage(),
        0,
        45,
        5,
        -20,
        55);
  }
}
