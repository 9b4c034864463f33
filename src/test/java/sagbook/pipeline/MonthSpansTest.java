package sagbook.pipeline;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Instant;
import java.time.YearMonth;
import java.time.ZoneId;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import sagbook.model.Channels;
import sagbook.model.SampleBlock;

class MonthSpansTest {
  @Test
  void countsMonthsInThePacksZoneAndDropsShortOnes() {
    MonthSpans spans = new MonthSpans(ZoneId.of("+01:00"));
    SampleBlock block = new SampleBlock(new Channels(2, false, false, false), 4);
    String[] times = {
      "2026-02-28T22:00:00Z", "2026-02-28T23:00:00Z", "2026-03-30T00:00:00Z", "2026-04-02T00:00:00Z"
    };
    for (int i = 0; i < times.length; i++) {
      block.timeS()[i] = Instant.parse(times[i]).getEpochSecond();
    }
    block.setRows(times.length);
    spans.accept(block);
    var found = spans.ofADayOrMore();
    assertEquals(List.of(YearMonth.of(2026, 3)), List.copyOf(found.keySet()));
    MonthSpans.Span march = Objects.requireNonNull(found.get(YearMonth.of(2026, 3)));
    assertEquals(Instant.parse("2026-02-28T23:00:00Z"), march.from());
    assertEquals(Instant.parse("2026-03-31T23:00:00Z"), march.to());
  }
}
