package sagbook.season;

import java.time.Instant;
import sagbook.model.Estimate;

/**
 * One month's value of a quantity.
 *
 * @param time middle of the month's log
 * @param value with its own interval
 */
public record Point(Instant time, Estimate.Known value) {
  private static final double YEAR_S = 365.25 * 86_400;

  /** Standard uncertainty of its value. */
  double sigma() {
    return value.sd();
  }

  /** Years since another time. */
  double yearsSince(Instant start) {
    return (time.getEpochSecond() - start.getEpochSecond()) / YEAR_S;
  }
}
