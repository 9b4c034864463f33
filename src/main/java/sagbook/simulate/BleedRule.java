package sagbook.simulate;

/**
 * When a board bleeds its cell and how much.
 *
 * @param startVolts begins above this
 * @param spanVolts reaches 100 % this much higher
 * @param resistorOhm what it bleeds through
 */
public record BleedRule(double startVolts, double spanVolts, double resistorOhm) {
  private static final double HELD_BACK_FROM_C = 65;
  private static final double OFF_AT_C = 80;

  /** Level 0 to 1 at a cell voltage, held back when the board is hot. */
  double level(double volts, double boardC) {
    double wanted = clamp((volts - startVolts) / spanVolts);
    return wanted * clamp((OFF_AT_C - boardC) / (OFF_AT_C - HELD_BACK_FROM_C));
  }

  double amps(double volts, double level) {
    return level * volts / resistorOhm;
  }

  private static double clamp(double share) {
    return Math.max(0, Math.min(1, share));
  }
}
