package sagbook.season;

import java.time.Instant;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.List;
import sagbook.model.Estimate;
import sagbook.numeric.MannKendall;
import sagbook.numeric.Robust;
import sagbook.numeric.TheilSen;
import sagbook.numeric.Uncertainty;

/**
 * A straight line through the months of one quantity.
 *
 * <p>Slope by Theil–Sen. Its half-width is the widest of three: what the months' own intervals
 * allow (their standard uncertainties through least squares, times 1.96), what the scatter about
 * the line allows (the same with the residuals' standard deviation and Student's t of n − 2), and
 * Theil–Sen's own interval where there are enough months for it. With ten or more pairs of the same
 * calendar month in different years only these are compared, so that what follows the seasons drops
 * out.
 *
 * <p>Needs {@value #FEWEST} months over {@value #SHORTEST_DAYS} days. Months whose interval is more
 * than three times as wide as usual are left out.
 *
 * @param start time of the first month
 * @param atStart value of the line there
 * @param perYear slope, units of the quantity a year
 * @param halfWidth of the slope's 95 % interval
 * @param months used
 * @param spanYears from the first to the last
 * @param seasonal whether only pairs of the same calendar month were compared
 * @param test whether it rises or falls at all
 */
public record Line(
    Instant start,
    double atStart,
    double perYear,
    double halfWidth,
    int months,
    double spanYears,
    boolean seasonal,
    MannKendall test) {
  static final int FEWEST = 4;
  static final int SHORTEST_DAYS = 75;
  private static final int FEWEST_SEASONAL_PAIRS = 10;
  private static final double MUCH_WIDER = 3;

  /** Either a line or why there is none. */
  public sealed interface Result {
    /** A line. */
    record Drawn(Line line) implements Result {}

    /**
     * None.
     *
     * @param reason a plain sentence
     */
    record Missing(String reason) implements Result {}
  }

  /**
   * The line through points in time order.
   *
   * @param zone of the calendar
   */
  static Result through(List<Point> all, ZoneId zone) {
    List<Point> points = usable(all);
    double[] t = new double[points.size()];
    double[] y = new double[t.length];
    for (int i = 0; i < t.length; i++) {
      t[i] = points.get(i).yearsSince(points.get(0).time());
      y[i] = points.get(i).value().value();
    }
    if (t.length < FEWEST || t[t.length - 1] * 365.25 < SHORTEST_DAYS) {
      return new Result.Missing(
          SeasonWords.say(
              t.length == 1 ? "few.one" : "few",
              Integer.toString(FEWEST),
              SeasonWords.number(SHORTEST_DAYS, "%.0f"),
              Integer.toString(t.length)));
    }
    CalendarMonths year = CalendarMonths.of(points, zone);
    boolean seasonal = year.pairs() >= FEWEST_SEASONAL_PAIRS;
    TheilSen slope =
        seasonal
            ? TheilSen.seasonal(year.season(), year.t(), year.y(), 0.95)
            : TheilSen.of(t, y, 0.95);
    return new Result.Drawn(
        new Line(
            points.get(0).time(),
            slope.intercept(),
            slope.slope(),
            halfWidth(points, t, y, slope),
            t.length,
            t[t.length - 1],
            seasonal,
            seasonal ? MannKendall.seasonal(year.season(), year.y()) : MannKendall.of(y)));
  }

  private static List<Point> usable(List<Point> all) {
    double usual = Robust.median(all.stream().mapToDouble(p -> p.value().halfWidth()).toArray());
    return all.stream().filter(p -> p.value().halfWidth() <= MUCH_WIDER * usual).toList();
  }

  private static double halfWidth(List<Point> points, double[] t, double[] y, TheilSen slope) {
    double mean = Arrays.stream(t).average().orElseThrow();
    double sum = 0;
    double own = 0;
    double residuals = 0;
    for (int i = 0; i < t.length; i++) {
      double lever = t[i] - mean;
      sum += lever * lever;
      own += Math.pow(lever * points.get(i).sigma(), 2);
      residuals += Math.pow(y[i] - slope.intercept() - slope.slope() * t[i], 2);
    }
    int free = t.length - 2;
    double scatter = new Uncertainty(Math.sqrt(residuals / free / sum), free).halfWidth(0.95);
    double widest = Math.max(Uncertainty.known(Math.sqrt(own) / sum).halfWidth(0.95), scatter);
    double ranks = Math.max(slope.high() - slope.slope(), slope.slope() - slope.low());
    return Double.isFinite(ranks) ? Math.max(widest, ranks) : widest;
  }

  /** Slope in per cent of the first month's value a year. */
  Estimate.Known percentPerYear() {
    double value = 100 * perYear / atStart;
    return Estimate.within(value, 100 * halfWidth / atStart);
  }

  /** Value of the line at a time. */
  double at(Point point) {
    return atStart + perYear * point.yearsSince(start);
  }
}
