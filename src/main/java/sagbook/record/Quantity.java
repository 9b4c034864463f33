package sagbook.record;

import java.util.function.Function;
import sagbook.model.Estimate;
import sagbook.verdict.CellVerdict;

/**
 * Every quantity that is estimated for a cell, under the name it has in results.json and in the
 * tables. One list, so that no output can forget one.
 */
public enum Quantity {
  CAPACITY_AH("capacity_ah", "Ah", v -> v.estimates().capacityAh()),
  CAPACITY_RELATIVE("capacity_relative", "1", v -> v.estimates().capacityRelative()),
  RESISTANCE_MOHM("resistance_mohm", "mΩ", v -> v.estimates().resistanceMilliohm()),
  RESISTANCE_RELATIVE("resistance_relative", "1", v -> v.estimates().resistanceRelative()),
  OHMIC_EXCESS_MOHM("ohmic_excess_mohm", "mΩ", v -> v.estimates().ohmicExcessMilliohm()),
  SLOW_RESPONSE_RELATIVE("slow_response_relative", "1", v -> v.estimates().slowResponseRelative()),
  CHARGE_OFFSET_PERCENT("charge_offset_percent", "%", v -> v.estimates().chargeOffsetPercent()),
  SELF_DISCHARGE_MA("self_discharge_ma", "mA", v -> v.estimates().selfDischargeMilliamp()),
  VOLTAGE_OFFSET_MV("voltage_offset_mv", "mV", v -> v.estimates().voltageOffsetMillivolt()),
  LOSS_AH("loss_ah", "Ah", CellVerdict::lossAh),
  COST_ALONE_AH("cost_alone_ah", "Ah", v -> v.cost().aloneAh()),
  SAG_MV("sag_mv", "mV", v -> v.cost().sagMillivolt());

  private final String key;
  private final String unit;

  @SuppressWarnings("ImmutableEnumChecker") // a function without state
  private final Function<CellVerdict, Estimate> of;

  Quantity(String key, String unit, Function<CellVerdict, Estimate> of) {
    this.key = key;
    this.unit = unit;
    this.of = of;
  }

  /** Name in results.json and in table headers. */
  public String key() {
    return key;
  }

  /** SI unit symbol; {@code 1} for a plain ratio. */
  public String unit() {
    return unit;
  }

  public Estimate of(CellVerdict cell) {
    return of.apply(cell);
  }
}
