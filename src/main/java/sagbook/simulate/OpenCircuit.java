package sagbook.simulate;

/** Open-circuit voltage of two electrodes put together, without hysteresis. */
final class OpenCircuit {
  private final Electrodes electrodes;
  private final Curve positive;
  private final Curve negative;

  OpenCircuit(Electrodes electrodes) {
    this.electrodes = electrodes;
    this.positive = electrodes.positive().tabulated();
    this.negative = electrodes.negative().tabulated();
  }

  /**
   * Voltage at a charge.
   *
   * @param z charge, as a fraction of the design charge
   * @param lost cyclable lithium lost at the negative, as a fraction of the design charge
   */
  double volts(double z, double lost) {
    return positive.at(electrodes.lithiumInPositive(z))
        - negative.at(electrodes.lithiumInNegative(z - lost));
  }

  /** Charge of a full cell, as a fraction of the design charge. */
  double full(double lost) {
    return chargeAt(electrodes.chemistry().fullVoltage(), lost);
  }

  /** Charge of an empty cell, as a fraction of the design charge. */
  double empty(double lost) {
    return chargeAt(electrodes.chemistry().emptyVoltage(), lost);
  }

  /** Charge at which the voltage is {@code volts}, by bisection. */
  double chargeAt(double volts, double lost) {
    double low = -0.1;
    double high = 1.1;
    for (int i = 0; i < 60; i++) {
      double middle = (low + high) / 2;
      if (volts(middle, lost) < volts) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return (low + high) / 2;
  }
}
