package sagbook.simulate;

/** How ageing and faults have left one place in the string; a scratch record, refilled hourly. */
final class Condition {
  /** Share of the new cell's capacity lost as cyclable lithium, 0 to 1. */
  double lostCapacity;

  /** Leak beyond the natural self-discharge, mA. */
  double leakMilliamp;

  /** Factor on the cell's resistance. */
  double resistanceFactor;

  /** Resistance of the joint beyond a sound one's, milliohm. */
  double looseMilliohm;

  /** Voltage reading minus truth beyond the board's own error, mV. */
  double sensorOffsetMillivolt;

  /** What a stuck temperature sensor shows, °C; NaN while it works. */
  double stuckC;

  void reset() {
    lostCapacity = 0;
    leakMilliamp = 0;
    resistanceFactor = 1;
    looseMilliohm = 0;
    sensorOffsetMillivolt = 0;
    stuckC = Double.NaN;
  }
}
