package sagbook.logfile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Against java.time: what a wall clock shows, read back, is the moment it showed it. */
class ZoneClockTest {
  private static final long DAY_S = 86_400;

  @ParameterizedTest
  @ValueSource(
      strings = {
        "Europe/Berlin",
        "America/St_Johns",
        "Australia/Lord_Howe",
        "America/Santiago",
        "Asia/Kathmandu",
        "Africa/Casablanca",
        "Etc/UTC"
      })
  void aWholeYearOfWallClockTimesReadsBackThroughBothChangesOfTheClock(String name) {
    ZoneId zone = ZoneId.of(name);
    ZoneClock clock = new ZoneClock(zone);
    long from = Instant.parse("2025-01-01T00:00:00Z").getEpochSecond();
    double previous = Double.NaN;
    for (long s = from; s < from + 366 * DAY_S; s += 300) {
      long local =
          Instant.ofEpochSecond(s).atZone(zone).toLocalDateTime().toEpochSecond(ZoneOffset.UTC);
      double read = clock.moment((double) local, previous);
      assertEquals((double) s, read, () -> name + " at " + Instant.ofEpochSecond((long) read));
      previous = read;
    }
    assertEquals(0, clock.missedChanges(), "a clock that follows summer time misses no change");
  }

  @ParameterizedTest
  @ValueSource(strings = {"Europe/Berlin", "America/Santiago"})
  void aClockThatKeepsItsOffsetAllYearIsNoticed(String name) {
    ZoneId zone = ZoneId.of(name);
    ZoneClock clock = new ZoneClock(zone);
    long from = Instant.parse("2025-01-01T00:00:00Z").getEpochSecond();
    int offset = zone.getRules().getOffset(Instant.ofEpochSecond(from)).getTotalSeconds();
    double previous = Double.NaN;
    for (long s = from; s < from + 366 * DAY_S; s += 300) {
      previous = clock.moment((double) (s + offset), previous);
    }
    assertTrue(clock.missedChanges() > 0);
  }
}
