package sagbook.season;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import sagbook.model.Estimate;
import sagbook.record.BankFigure;
import sagbook.record.KeptMonth;

/**
 * What the whole string does, through its median cell.
 *
 * @param capacity line of the median capacity, Ah
 * @param resistance line of the median resistance at 25 °C, mΩ
 */
record Common(Line.Result capacity, Line.Result resistance) {
  /**
   * What home storage loses in the field: 2 to 3 percentage points of usable capacity a year on
   * average over 21 systems (Figgener et al., Nature Energy 9 (2024) 1438).
   */
  private static final double FIELD_PERCENT_PER_YEAR = -2.5;

  /** How far a single battery may lie from that average; our choice. */
  private static final double FIELD_HALF_WIDTH = 2.5;

  static Common of(List<KeptMonth> months) {
    ZoneId zone = months.get(0).battery().zone();
    return new Common(
        Line.through(capacities(months), zone), Line.through(resistances(months), zone));
  }

  static List<Point> capacities(List<KeptMonth> months) {
    List<Point> points = new ArrayList<>();
    for (KeptMonth month : months) {
      if (month.figure(BankFigure.Estimated.MEDIAN_CAPACITY_AH) instanceof Estimate.Known known) {
        points.add(new Point(month.middle(), known));
      }
    }
    return points;
  }

  /** The median cell's, of months with the newest month's pulse time. */
  static List<Point> resistances(List<KeptMonth> months) {
    double pulse = months.get(months.size() - 1).conditions().resistancePulseS();
    List<Point> points = new ArrayList<>();
    for (KeptMonth month : months) {
      double then = month.conditions().resistancePulseS();
      if (Math.abs(then - pulse) <= 0.1 * pulse
          && MiddleCell.resistance(month) instanceof Estimate.Known known) {
        points.add(new Point(month.middle(), known));
      }
    }
    return points;
  }

  /** How the rate of the string's capacity came about. */
  enum Source {
    /** Measured. */
    MEASURED,
    /** Measured, but so roughly that what is published helps. */
    WEIGHED,
    /** Not measured; what is published is taken. */
    PUBLISHED
  }

  Source source() {
    if (!(rate(capacity) instanceof Estimate.Known measured)) {
      return Source.PUBLISHED;
    }
    double apart = Math.abs(measured.value() - FIELD_PERCENT_PER_YEAR);
    boolean believable =
        measured.value() > 0 || apart <= Math.hypot(measured.halfWidth(), FIELD_HALF_WIDTH);
    return measured.halfWidth() > FIELD_HALF_WIDTH && believable ? Source.WEIGHED : Source.MEASURED;
  }

  /**
   * Rate of the string's capacity, % a year. A rate that was measured more roughly than field rates
   * differ, and agrees with them or has capacity grow, which no cell does, is weighed with them by
   * inverse variance; no more certainty is claimed for it than for those.
   */
  Estimate.Known capacityRate() {
    double value = FIELD_PERCENT_PER_YEAR;
    if (rate(capacity) instanceof Estimate.Known measured) {
      if (source() == Source.MEASURED) {
        return measured;
      }
      double own = 1 / Math.pow(measured.halfWidth(), 2);
      double field = 1 / Math.pow(FIELD_HALF_WIDTH, 2);
      value = (own * measured.value() + field * value) / (own + field);
    }
    return new Estimate.Known(value, value - FIELD_HALF_WIDTH, value + FIELD_HALF_WIDTH);
  }

  /** Whether the string as a whole loses capacity beyond doubt. */
  boolean isAgeing() {
    return rate(capacity) instanceof Estimate.Known measured && measured.isBelow(0);
  }

  /** Rate of a line, % a year, or why there is none. */
  static Estimate rate(Line.Result result) {
    if (result instanceof Line.Result.Missing missing) {
      return Estimate.unknown(missing.reason());
    }
    return ((Line.Result.Drawn) result).line().percentPerYear();
  }
}
