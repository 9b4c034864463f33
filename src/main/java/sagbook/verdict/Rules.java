package sagbook.verdict;

import java.util.Map;
import sagbook.model.Threshold;

/**
 * The limits at which a difference between neighbours becomes a finding. An estimate's whole
 * interval has to be beyond {@code sure}, and its value beyond {@code worth}, so that neither noise
 * nor a trifle opens a battery. Numbers and reasons stand in {@link Threshold}; what follows from a
 * finding stands in {@link DecisionRule}.
 *
 * @param capacity shortfall of capacity against the string's median, as a share
 * @param replaceCapacity shortfall from which a cell is to be replaced, as a share
 * @param resistance excess of resistance over the string's median, as a share
 * @param replaceResistance excess from which a cell is to be replaced, as a share
 * @param offsetPercent imbalance of charge, per cent of nominal capacity
 * @param drainMilliamp drain above the string's median, mA
 * @param drainStopMilliamp drain from which a cell is to be isolated, mA
 * @param voltageMillivolt constant error of a voltage reading, mV
 * @param allWorn share of nominal capacity below which the median cell means that all are worn
 * @param apart share of cells that may stand apart by charge in a log without current before the
 *     comparison itself is doubted
 * @param graceV what a voltage limit may be passed by before that counts, V
 * @param graceHours for how long a limit may be passed before that counts, h
 * @param coldGraceHours for how long a cell may be charged too cold before that counts, h
 * @param forGood share of its lower limit below which a cell is not to be charged again
 */
public record Rules(
    Limit capacity,
    double replaceCapacity,
    Limit resistance,
    double replaceResistance,
    Limit offsetPercent,
    Limit drainMilliamp,
    double drainStopMilliamp,
    Limit voltageMillivolt,
    double allWorn,
    double apart,
    double graceV,
    double graceHours,
    double coldGraceHours,
    double forGood) {

  /**
   * One limit.
   *
   * @param worth the value has to be beyond this to be worth acting on
   * @param sure the interval has to lie wholly beyond this to be sure
   */
  public record Limit(double worth, double sure) {
    public Limit {
      if (!(0 < sure && sure <= worth)) {
        throw new IllegalArgumentException("a limit needs 0 < sure <= worth");
      }
    }

    /** A limit whose {@code sure} is two thirds of what is worth acting on. */
    static Limit twoThirds(double worth) {
      return new Limit(worth, worth * 2 / 3);
    }
  }

  /**
   * The rules with what the keeper set.
   *
   * @param told thresholds that differ from the usual ones
   */
  public static Rules of(Map<Threshold, Double> told) {
    double resistance = value(Threshold.RESISTANCE, told) / 100;
    double voltage = value(Threshold.VOLTAGE, told);
    double drain = value(Threshold.DRAIN, told);
    return new Rules(
        Limit.twoThirds(value(Threshold.CAPACITY, told) / 100),
        value(Threshold.REPLACE_CAPACITY, told) / 100,
        new Limit(resistance, resistance * 5 / 9),
        value(Threshold.REPLACE_RESISTANCE, told) / 100,
        Limit.twoThirds(value(Threshold.OFFSET, told)),
        new Limit(drain, drain / 2),
        value(Threshold.DRAIN_STOP, told),
        Limit.twoThirds(voltage),
        value(Threshold.ALL_WORN, told) / 100,
        value(Threshold.APART, told) / 100,
        value(Threshold.LIMIT_GRACE_VOLTAGE, told) / 1000,
        value(Threshold.LIMIT_GRACE_TIME, told) / 60,
        value(Threshold.COLD_GRACE_TIME, told) / 60,
        value(Threshold.FOR_GOOD, told) / 100);
  }

  /** The limits used when nothing else is asked for. */
  public static Rules usual() {
    return of(Map.of());
  }

  private static double value(Threshold threshold, Map<Threshold, Double> told) {
    return told.getOrDefault(threshold, threshold.usual());
  }
}
