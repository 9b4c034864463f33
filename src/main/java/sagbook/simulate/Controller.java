package sagbook.simulate;

/**
 * Decides what current the battery takes: charge at full strength, ease off as the first cell gets
 * full, hold for balancing, let the house draw until the string floats; and no discharge below the
 * cut-off or the day's reserve.
 */
final class Controller {
  private enum Phase {
    BULK,
    HOLD,
    DONE
  }

  private static final double EASE_EVERY_S = 45;
  private static final double EASE_TO = 0.72;

  private final ChargeRule rule;
  private final double nominalAh;
  private final double strongestA;
  private final double holdA;
  private Phase phase = Phase.BULK;
  private double acceptA;
  private boolean paused;
  private boolean floating;
  private boolean cut;
  private double heldS;
  private double sinceEaseS;
  private double belowFullAh;
  private double returnedAh;
  private double voltageLimitedAh;

  Controller(ChargeRule rule, double nominalAh) {
    this.rule = rule;
    this.nominalAh = nominalAh;
    this.strongestA = 0.29 * nominalAh;
    this.holdA = 0.014 * nominalAh;
    this.acceptA = strongestA;
    this.belowFullAh = nominalAh / 2;
    this.voltageLimitedAh = nominalAh;
  }

  /** Looks at the string and its last current, once a row. */
  void observe(double lowest, double highest, double mean, double amps, double seconds) {
    double movedAh = amps * seconds / 3600;
    belowFullAh = Math.max(0, belowFullAh - movedAh);
    returnedAh = cut ? returnedAh + Math.max(0, movedAh) : 0;
    if (lowest < rule.cutVolts() && amps < 0) {
      cut = true;
      voltageLimitedAh = belowFullAh;
    } else if (cut && returnedAh > 0.08 * nominalAh) {
      cut = false;
    }
    switch (phase) {
      case BULK -> bulk(highest, mean);
      case HOLD -> hold(lowest, highest, mean, amps, seconds);
      case DONE -> done(mean);
    }
  }

  /** Whether the charger holds the string at the top so that the boards can balance it. */
  boolean holding() {
    return phase == Phase.HOLD;
  }

  private void bulk(double highest, double mean) {
    if (highest > rule.easeVolts() || mean > rule.meanFullVolts()) {
      phase = Phase.HOLD;
      heldS = 0;
      sinceEaseS = EASE_EVERY_S;
    }
  }

  private void hold(double lowest, double highest, double mean, double amps, double seconds) {
    heldS += seconds;
    sinceEaseS += seconds;
    boolean eased = acceptA <= holdA;
    if (!eased
        && sinceEaseS >= EASE_EVERY_S
        && (highest > rule.easeVolts() || mean > rule.meanFullVolts())) {
      acceptA = Math.max(holdA, Math.min(acceptA, Math.max(amps, holdA)) * EASE_TO);
      sinceEaseS = 0;
    }
    paused = paused ? highest > rule.easeVolts() : highest > rule.cellStopVolts();
    boolean allFull = lowest > rule.easeVolts() && highest > rule.meanFullVolts();
    if (eased && (heldS > rule.holdSeconds() || allFull)) {
      phase = Phase.DONE;
      floating = false;
      acceptA = 0;
      paused = false;
      belowFullAh = 0;
    } else if (mean < rule.restartVolts() - 0.01) {
      phase = Phase.BULK;
      acceptA = strongestA;
      paused = false;
    }
  }

  private void done(double mean) {
    floating |= mean < rule.floatVolts();
    if (belowFullAh > 0.08 * nominalAh || mean < rule.restartVolts()) {
      phase = Phase.BULK;
      acceptA = strongestA;
    }
  }

  /**
   * Battery current, charge positive.
   *
   * @param solarA what the roof and the mains charger offer
   * @param loadA what the house asks
   * @param reserve share of the nominal charge that the owner keeps back, 0 to 1
   */
  double batteryAmps(double solarA, double loadA, double reserve) {
    boolean sinking = phase == Phase.DONE && !floating;
    double surplus = (sinking ? 0 : solarA) - loadA;
    if (surplus > 0) {
      return paused ? 0 : Math.min(surplus, acceptA);
    }
    boolean held = belowFullAh > (1 - reserve) * Math.max(nominalAh, voltageLimitedAh);
    return cut || held ? 0 : Math.max(surplus, -0.5 * nominalAh);
  }
}
