package sagbook.verdict;

/**
 * The limits at which a difference between neighbours becomes a finding, each with its reason. An
 * estimate's whole interval has to be beyond {@code sure}, and its value beyond {@code worth}, so
 * that neither noise nor a trifle opens a battery.
 *
 * @param capacity shortfall of capacity against the string's median, as a share
 * @param resistance excess of resistance over the string's median, as a share
 * @param offsetPercent imbalance of charge, per cent of nominal capacity
 * @param drainMilliamp drain above the string's median, mA
 * @param voltageMillivolt constant error of a voltage reading, mV
 */
public record Rules(
    Limit capacity,
    Limit resistance,
    Limit offsetPercent,
    Limit drainMilliamp,
    Limit voltageMillivolt) {

  /**
   * One limit.
   *
   * @param worth the value has to be beyond this to be worth acting on
   * @param sure the interval has to lie wholly beyond this to be sure
   * @param reason why these numbers
   */
  public record Limit(double worth, double sure, String reason) {
    public Limit {
      if (!(0 < sure && sure <= worth)) {
        throw new IllegalArgumentException("a limit needs 0 < sure <= worth");
      }
    }
  }

  /** The limits used when nothing else is asked for. */
  public static Rules usual() {
    return new Rules(
        new Limit(
            0.03,
            0.02,
            "cells of one batch differ by about one per cent; three are a sign of wear"
                + " (common practice, no source)"),
        new Limit(
            0.18,
            0.10,
            "lead-acid practice remakes a joint 20 % above the average (makers citing IEEE 450 and"
                + " 484); cells of one batch differ by about 5 %"),
        new Limit(
            1.8,
            1.2,
            "two per cent of charge is what boards level out in a few full charges"
                + " (common practice, no source)"),
        new Limit(
            12,
            6,
            "a drain of 12 mA takes 9 Ah a month, as much as a board can bleed from the others in"
                + " about a day of bleeding (arithmetic)"),
        new Limit(
            9,
            6,
            "boards are usually right to a few millivolt; nine would hide a real imbalance"
                + " (common practice, no source)"));
  }
}
