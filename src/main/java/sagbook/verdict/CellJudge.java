package sagbook.verdict;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.distribution.continuous.NormalDistribution;
import sagbook.estimate.CellEstimates;
import sagbook.estimate.TemperatureFault;
import sagbook.model.Estimate;
import sagbook.model.Finding;

/**
 * Names the cause, one a cell. Order matters: a voltage that lies badly makes every other number of
 * that cell doubtful, while a few millivolt are reckoned with; a drain explains an imbalance, not
 * the other way round; imbalance comes last of the charge causes because it is the mildest, but for
 * a cell that is worn too little to be replaced: there levelling comes first, as it costs patience
 * only and shows whether wear hides behind it.
 */
final class CellJudge {
  /** Chance of being beyond a limit from which on nobody is called healthy. */
  private static final double MOST_CHANCE = 0.25;

  private static final NormalDistribution NORMAL = new NormalDistribution();

  private final Rules rules;

  CellJudge(Rules rules) {
    this.rules = rules;
  }

  /**
   * The most telling cause.
   *
   * @param temperatureDoubt share by which the resistance may be wrong for the cell's temperature
   */
  Finding find(CellEstimates cell, double temperatureDoubt) {
    List<Finding> found = new ArrayList<>();
    boolean worn = below(cell.capacityRelative(), rules.capacity());
    if (beyond(cell.voltageOffsetMillivolt(), rules.voltageMillivolt())) {
      found.add(Finding.VOLTAGE_SENSOR);
    }
    if (worn && !levelFirst(cell)) {
      found.add(hidesWear(cell) ? found.size() : 0, Finding.LOW_CAPACITY);
    }
    if (above(doubted(cell.resistanceRelative(), temperatureDoubt), rules.resistance())) {
      found.add(whereItSits(cell));
    }
    if (drains(cell)) {
      found.add(Finding.SELF_DISCHARGE);
    } else if (beyond(cell.chargeOffsetPercent(), rules.offsetPercent())) {
      found.add(Finding.OUT_OF_BALANCE);
    }
    if (cell.temperatureFault() instanceof TemperatureFault.Seen) {
      found.add(Finding.TEMPERATURE_SENSOR);
    }
    if (found.isEmpty()) {
      // Nobody is called healthy of whom charge or resistance is unknown (a loose joint shows in
      // nothing else), or of whom something may well be wrong.
      boolean told =
          cell.capacityRelative() instanceof Estimate.Known
              && cell.chargeOffsetPercent() instanceof Estimate.Known
              && cell.resistanceRelative() instanceof Estimate.Known
              && !anyLimit(cell, temperatureDoubt, CellJudge::mayWellLieBeyond);
      found.add(told ? Finding.HEALTHY : Finding.INSUFFICIENT_EVIDENCE);
    }
    return found.get(0);
  }

  private boolean levelFirst(CellEstimates cell) {
    return 1 - cell.capacityRelative().find().orElse(0) < rules.replaceCapacity()
        && beyond(cell.chargeOffsetPercent(), rules.offsetPercent())
        && !drains(cell);
  }

  /** Whether a voltage is surely so far off that it may pass for wear. */
  private boolean hidesWear(CellEstimates cell) {
    double worth = rules.voltageMillivolt().worth();
    return cell.voltageOffsetMillivolt() instanceof Estimate.Known k
        && (k.isAbove(worth) || k.isBelow(-worth));
  }

  /** Whether a value is worth acting on, were it only sure. */
  boolean suspected(CellEstimates cell) {
    return anyLimit(cell, 0, CellJudge::liesBeyond);
  }

  /** Something that is asked of an estimate and of the limits within which it asks for nothing. */
  private interface Question {
    boolean holds(Estimate estimate, double low, double high);
  }

  private boolean anyLimit(CellEstimates cell, double temperatureDoubt, Question question) {
    double charge = rules.offsetPercent().worth();
    double volt = rules.voltageMillivolt().worth();
    double most = Double.POSITIVE_INFINITY;
    Estimate resistance = doubted(cell.resistanceRelative(), temperatureDoubt);
    return question.holds(resistance, -most, 1 + rules.resistance().worth())
        || question.holds(cell.capacityRelative(), 1 - rules.capacity().worth(), most)
        || question.holds(cell.selfDischargeMilliamp(), -most, rules.drainMilliamp().worth())
        || question.holds(cell.chargeOffsetPercent(), -charge, charge)
        || question.holds(cell.voltageOffsetMillivolt(), -volt, volt);
  }

  private static boolean liesBeyond(Estimate estimate, double low, double high) {
    return estimate instanceof Estimate.Known k && (k.value() < low || k.value() > high);
  }

  /**
   * Whether the odds that the truth lies within the limits are below three to one, too little to
   * call a cell well. Each side of the range is taken for half of a normal distribution's.
   */
  private static boolean mayWellLieBeyond(Estimate estimate, double low, double high) {
    if (!(estimate instanceof Estimate.Known k)) {
      return false;
    }
    double below = beyond(k.value() - low, k.value() - k.low());
    double above = beyond(high - k.value(), k.high() - k.value());
    return liesBeyond(k, low, high) || below + above > MOST_CHANCE;
  }

  /** Chance that the truth lies farther off on one side than a limit does. */
  private static double beyond(double limitOff, double rangeOff) {
    return limitOff == 0
        ? 0.5
        : NORMAL.cumulativeProbability(-Estimate.HALF_WIDTH_IN_SD * limitOff / rangeOff);
  }

  /**
   * Whether neither size nor charge can be read from a cell whose neighbours' can: such a cell does
   * not follow the curve that the others share, which is a reason to look at it first.
   */
  static boolean standsApart(CellEstimates cell, List<CellEstimates> all) {
    return isUnread(cell) && 2 * all.stream().filter(CellJudge::isUnread).count() < all.size();
  }

  private static boolean isUnread(CellEstimates cell) {
    return cell.capacityRelative() instanceof Estimate.Unknown
        && cell.chargeOffsetPercent() instanceof Estimate.Unknown;
  }

  private static Estimate doubted(Estimate relative, double share) {
    return relative instanceof Estimate.Known k
        ? new Estimate.Known(k.value(), k.low() / (1 + share), k.high() * (1 + share))
        : relative;
  }

  private boolean drains(CellEstimates cell) {
    Rules.Limit limit = rules.drainMilliamp();
    return cell.selfDischargeMilliamp() instanceof Estimate.Known k
        && k.value() > limit.worth()
        && k.isAbove(limit.sure());
  }

  private static boolean beyond(Estimate estimate, Rules.Limit limit) {
    return estimate instanceof Estimate.Known k
        && Math.abs(k.value()) > limit.worth()
        && (k.isAbove(limit.sure()) || k.isBelow(-limit.sure()));
  }

  private static boolean below(Estimate relative, Rules.Limit limit) {
    return relative instanceof Estimate.Known k
        && k.value() < 1 - limit.worth()
        && k.isBelow(1 - limit.sure());
  }

  private static boolean above(Estimate relative, Rules.Limit limit) {
    return relative instanceof Estimate.Known k
        && k.value() > 1 + limit.worth()
        && k.isAbove(1 + limit.sure());
  }

  /** In the cell or in a joint; when that can't be told the joint, because looking is cheap. */
  private static Finding whereItSits(CellEstimates cell) {
    return Seat.of(cell) == Seat.CELL ? Finding.HIGH_RESISTANCE : Finding.CONNECTION;
  }
}
