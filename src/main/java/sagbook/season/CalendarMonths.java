package sagbook.season;

import java.time.YearMonth;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * A quantity with one value a calendar month, the mean of its points there. Compared within the
 * same calendar month, values are then a year or more apart (Hirsch, Slack and Smith 1982); of
 * points days apart the rate would be all chance.
 *
 * @param season calendar month of each, 1 to 12
 * @param t mean time, years since the first point
 * @param y mean value
 */
record CalendarMonths(int[] season, double[] t, double[] y) {
  static CalendarMonths of(List<Point> points, ZoneId zone) {
    Map<YearMonth, List<Point>> byMonth =
        points.stream()
            .collect(
                Collectors.groupingBy(
                    point -> YearMonth.from(point.time().atZone(zone)),
                    TreeMap::new,
                    Collectors.toList()));
    Point first = points.get(0);
    return new CalendarMonths(
        byMonth.keySet().stream().mapToInt(YearMonth::getMonthValue).toArray(),
        byMonth.values().stream()
            .mapToDouble(
                own ->
                    own.stream().mapToDouble(p -> p.yearsSince(first.time())).average().orElse(0))
            .toArray(),
        byMonth.values().stream()
            .mapToDouble(
                own -> own.stream().mapToDouble(p -> p.value().value()).average().orElse(0))
            .toArray());
  }

  /** How many pairs of the same calendar month there are. */
  int pairs() {
    int[] seen = new int[13];
    int pairs = 0;
    for (int month : season) {
      pairs += seen[month]++;
    }
    return pairs;
  }
}
