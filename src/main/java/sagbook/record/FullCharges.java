package sagbook.record;

import java.util.Set;
import java.util.TreeSet;
import sagbook.evidence.Turn;

/** Counts full charges by the voltage at which charging ended. */
final class FullCharges {
  /**
   * Chargers end somewhat below the rest voltage that counts as full. Common practice, no source.
   */
  private static final double BELOW_FULL_V = 0.2;

  private static final double DAY_S = 86_400;

  private FullCharges() {}

  /** Days on which a charge ended with the highest cell near its full rest voltage. */
  static double days(BankResult bank) {
    double near = bank.chemistry().fullVoltage() - BELOW_FULL_V;
    Set<Long> days = new TreeSet<>();
    for (Turn turn : bank.evidence().turns()) {
      if (turn.charge() && turn.extremeVoltageV() >= near) {
        double time = bank.evidence().thinned().timeS()[turn.toRow()];
        days.add((long) Math.floor(time / DAY_S));
      }
    }
    return days.size();
  }
}
