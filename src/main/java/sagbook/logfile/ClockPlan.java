package sagbook.logfile;

import java.time.ZoneId;
import sagbook.wording.Words;

/**
 * How a file tells time.
 *
 * @param kind of its main column
 * @param field index of the main column
 * @param dayField index of a date column beside a time-of-day column; -1 when there is none
 * @param elapsedField index of a column of elapsed seconds that is finer than the main one; -1 when
 *     there is none
 * @param unitS one unit of a numeric column, s
 * @param startS moment at which elapsed time is 0, s since 1970
 * @param order of day, month and year in written dates
 * @param zone for written times without offset
 * @param orderSettled whether the dates themselves settle their order
 * @param words how the clock was read, for the keeper
 */
record ClockPlan(
    Kind kind,
    int field,
    int dayField,
    int elapsedField,
    double unitS,
    double startS,
    DateOrder order,
    ZoneId zone,
    boolean orderSettled,
    String words) {
  private static final Words WORDS = Words.english();

  /** How a time column is written. */
  enum Kind {
    /** A written date and time. */
    MOMENT,
    /** A number counted from 1970. */
    UNIX,
    /** A number counted from the start of the log. */
    ELAPSED
  }

  /** Takes a column of elapsed time as the finer clock. */
  ClockPlan withElapsed(int other, double elapsedUnitS, String otherWords) {
    return new ClockPlan(
        kind, field, dayField, other, elapsedUnitS, startS, order, zone, orderSettled, otherWords);
  }

  /** The same with the order of dates settled. */
  ClockPlan withOrder(DateOrder other, String why) {
    String otherWords =
        words.replace(assumption(order), WORDS.say("clock.settled", other.spoken(), why));
    return new ClockPlan(
        kind, field, dayField, elapsedField, unitS, startS, other, zone, true, otherWords);
  }

  ClockPlan withZone(ZoneId other, String otherWords) {
    return new ClockPlan(
        kind, field, dayField, elapsedField, unitS, startS, order, other, orderSettled, otherWords);
  }

  ClockPlan withStart(double otherStartS, String otherWords) {
    return new ClockPlan(
        kind,
        field,
        dayField,
        elapsedField,
        unitS,
        otherStartS,
        order,
        zone,
        orderSettled,
        otherWords);
  }

  /** How an order is worded that the dates do not settle. */
  static String assumption(DateOrder order) {
    return WORDS.say("clock.assumed", order.spoken());
  }

  /** Index of the column that holds the date. */
  int dateField() {
    return dayField >= 0 ? dayField : field;
  }
}
