package sagbook.pipeline;

import java.time.Instant;
import java.time.YearMonth;
import java.time.ZoneId;
import java.util.SortedMap;
import java.util.TreeMap;
import sagbook.model.SampleBlock;
import sagbook.model.SampleSink;

/** Notes which calendar months a log touches and from when to when. */
final class MonthSpans implements SampleSink {
  private static final double DAY_S = 86_400;

  /**
   * A calendar month.
   *
   * @param from its first moment
   * @param to the first moment of the next one
   */
  record Span(Instant from, Instant to) {}

  private final ZoneId zone;
  private final SortedMap<YearMonth, double[]> firstAndLast = new TreeMap<>();
  private double[] current = new double[2];
  private double currentFrom = Double.NaN;
  private double currentTo = Double.NaN;

  MonthSpans(ZoneId zone) {
    this.zone = zone;
  }

  @Override
  public void accept(SampleBlock block) {
    for (int r = 0; r < block.rows(); r++) {
      double time = block.timeS()[r];
      if (!(time >= currentFrom && time < currentTo)) {
        open(time);
      }
      current[0] = Math.min(current[0], time);
      current[1] = Math.max(current[1], time);
    }
  }

  private void open(double time) {
    YearMonth month = YearMonth.from(Instant.ofEpochSecond((long) Math.floor(time)).atZone(zone));
    Span span = span(month);
    currentFrom = span.from().getEpochSecond();
    currentTo = span.to().getEpochSecond();
    current = firstAndLast.computeIfAbsent(month, m -> new double[] {time, time});
  }

  private Span span(YearMonth month) {
    return new Span(
        month.atDay(1).atStartOfDay(zone).toInstant(),
        month.plusMonths(1).atDay(1).atStartOfDay(zone).toInstant());
  }

  /** The months in order whose rows lie a day or more apart. */
  SortedMap<YearMonth, Span> ofADayOrMore() {
    SortedMap<YearMonth, Span> spans = new TreeMap<>();
    firstAndLast.forEach(
        (month, times) -> {
          if (times[1] - times[0] >= DAY_S) {
            spans.put(month, span(month));
          }
        });
    return spans;
  }
}
