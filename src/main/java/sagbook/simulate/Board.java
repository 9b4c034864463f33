package sagbook.simulate;

/** The monitoring board on a cell: reads voltage and temperature, bleeds near full, gets warm. */
final class Board {
  private static final double KELVIN_PER_WATT = 9;
  private static final double WARM_UP_S = 240;
  private static final double SEEN_BY_THERMOMETER = 0.05;

  private final BoardMake make;
  private final BleedRule rule;
  private final Noise noise;
  private double level;
  private double riseK;

  Board(BoardMake make, BleedRule rule, Noise noise) {
    this.make = make;
    this.rule = rule;
    this.noise = noise;
  }

  /** Voltage reading in whole millivolt. */
  int readMillivolt(double volts, Condition condition) {
    double millivolt =
        volts * 1000 * make.gain()
            + make.offsetMillivolt()
            + condition.sensorOffsetMillivolt
            + make.noiseMillivolt() * noise.normal();
    return (int) Math.floor(millivolt + 0.5);
  }

  /** What a reading of 3.3 V is off by, mV, noise and rounding left aside. */
  double errorMillivolt(Condition condition) {
    return 3300 * (make.gain() - 1) + make.offsetMillivolt() + condition.sensorOffsetMillivolt;
  }

  /** Temperature reading in half degrees (the number of halves). */
  int readHalfDegrees(double cellC, Condition condition) {
    if (!Double.isNaN(condition.stuckC)) {
      return (int) Math.floor(condition.stuckC * 2 + 0.5);
    }
    double celsius =
        cellC + make.temperatureOffsetC() + SEEN_BY_THERMOMETER * riseK + 0.008 * noise.normal();
    return (int) Math.floor(celsius * 2 + 0.5);
  }

  int bleedPercent() {
    return (int) Math.floor(level * 100 + 0.5);
  }

  /**
   * Sets the bleed level from what the board itself believes the voltage to be.
   *
   * @param allowed whether the charger is at work; boards don't bleed a cell that only rests
   */
  void decide(double volts, double cellC, Condition condition, boolean allowed) {
    if (!allowed) {
      level = 0;
      return;
    }
    double believed =
        volts * make.gain() + (make.offsetMillivolt() + condition.sensorOffsetMillivolt) / 1000;
    level = Math.floor(rule.level(believed, cellC + riseK) * 100 + 0.5) / 100;
  }

  /** Charge taken from the cell now, A. */
  double bleedAmps(double volts) {
    return rule.amps(volts, level);
  }

  void warm(double volts, double seconds) {
    double target = KELVIN_PER_WATT * volts * rule.amps(volts, level);
    riseK += (target - riseK) * (seconds / (WARM_UP_S + seconds));
  }

  double readDelayS() {
    return make.readDelayS();
  }
}
