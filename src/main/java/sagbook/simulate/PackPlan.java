package sagbook.simulate;

import sagbook.wording.Words;

/**
 * The battery of a scenario.
 *
 * @param electrodes open-circuit functions of its cells
 * @param cells in series
 * @param capacityAh of a place in the string when new (the nominal one)
 * @param capacitySpread standard deviation between cells, share
 * @param resistanceSpread standard deviation between cells, share
 * @param balanceSpreadAh standard deviation of the charge at the start
 * @param jointMilliohm a sound joint
 * @param bleed how the boards bleed
 * @param limits how the owner set charger and cut-off
 * @param ageingPercentPerYear capacity every cell loses
 */
public record PackPlan(
    Electrodes electrodes,
    int cells,
    double capacityAh,
    double capacitySpread,
    double resistanceSpread,
    double balanceSpreadAh,
    double jointMilliohm,
    BleedRule bleed,
    ChargeRule limits,
    double ageingPercentPerYear) {
  private static final Words WORDS = Words.english();

  public PackPlan {
    if (!(cells >= 2 && cells <= 32)) {
      throw new IllegalArgumentException(
          WORDS.say("problem.simulate.cells", Integer.toString(cells)));
    }
    if (!(capacityAh >= 1 && capacityAh <= 10_000)) {
      throw new IllegalArgumentException(
          WORDS.say("problem.simulate.capacity", Double.toString(capacityAh)));
    }
  }

  /** Large LFP cells with boards that bleed about one ampere. */
  public static PackPlan lfp(int cells, double capacityAh) {
    return new PackPlan(
        Electrodes.LFP_SAFARI,
        cells,
        capacityAh,
        0.008,
        0.04,
        0.002 * capacityAh,
        0.025 * 280 / capacityAh,
        new BleedRule(3.40, 0.05, 3.3),
        new ChargeRule(3.50, 3.45, 3.60, 3.37, 3.30, 2.85, 7_200),
        2.0);
  }

  /** NMC cells. */
  public static PackPlan nmc(int cells, double capacityAh) {
    return new PackPlan(
        Electrodes.NMC_CHEN,
        cells,
        capacityAh,
        0.008,
        0.04,
        0.002 * capacityAh,
        0.025 * 280 / capacityAh,
        new BleedRule(4.08, 0.05, 39),
        new ChargeRule(4.12, 4.08, 4.18, 4.09, 4.05, 3.20, 7_200),
        2.5);
  }

  public PackPlan with(Electrodes other) {
    return new PackPlan(
        other,
        cells,
        capacityAh,
        capacitySpread,
        resistanceSpread,
        balanceSpreadAh,
        jointMilliohm,
        bleed,
        limits,
        ageingPercentPerYear);
  }

  /** Same, but the charger stops this many seconds after the first cell is full. */
  public PackPlan withHoldSeconds(double seconds) {
    ChargeRule l = limits;
    return new PackPlan(
        electrodes,
        cells,
        capacityAh,
        capacitySpread,
        resistanceSpread,
        balanceSpreadAh,
        jointMilliohm,
        bleed,
        new ChargeRule(
            l.meanFullVolts(),
            l.easeVolts(),
            l.cellStopVolts(),
            l.floatVolts(),
            l.restartVolts(),
            l.cutVolts(),
            seconds),
        ageingPercentPerYear);
  }
}
