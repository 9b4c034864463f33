package sagbook.logfile;

import java.time.ZoneId;

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
    String words) {

  /** How a time column is written. */
  enum Kind {
    /** A written date and time. */
    MOMENT,
    /** A number counted from 1970. */
    UNIX,
    /** A number counted from the start of the log. */
    ELAPSED
  }

  ClockPlan withElapsed(int other, double elapsedUnitS, String otherWords) {
    return new ClockPlan(
        kind, field, dayField, other, elapsedUnitS, startS, order, zone, otherWords);
  }
}
