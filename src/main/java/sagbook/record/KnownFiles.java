package sagbook.record;

import java.time.Duration;
import java.time.Instant;
import java.time.YearMonth;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Log files that a record knows by the SHA-256 of their bytes, from checks made by the same program
 * with the same settings.
 */
public final class KnownFiles {
  private static final Duration A_DAY = Duration.ofDays(1);

  /** A check that read a file. */
  private record Use(InputFile input, Instant from, Instant to) {}

  private final Map<String, List<Use>> uses = new HashMap<>();

  /**
   * Those of a record.
   *
   * @param months all its months
   * @param software version that would check them now
   * @param settingsSha256 settings with which they would be checked now
   */
  public KnownFiles(List<KeptMonth> months, String software, String settingsSha256) {
    for (KeptMonth month : months) {
      if (month.battery().software().equals(software)
          && month.battery().settingsSha256().equals(settingsSha256)) {
        for (InputFile input : month.inputs()) {
          uses.computeIfAbsent(input.sha256(), hash -> new ArrayList<>())
              .add(new Use(input, month.bank().from(), month.bank().to()));
        }
      }
    }
  }

  /**
   * A file of which every calendar month that holds a day or more of it has been checked.
   *
   * @param zone of the calendar
   */
  public Optional<InputFile> find(String sha256, ZoneId zone) {
    List<Use> own = uses.getOrDefault(sha256, List.of());
    return own.stream().map(Use::input).findFirst().filter(input -> isComplete(input, own, zone));
  }

  private static boolean isComplete(InputFile input, List<Use> own, ZoneId zone) {
    YearMonth month = YearMonth.from(input.first().atZone(zone));
    for (Instant start = input.first(); start.isBefore(input.last()); month = month.plusMonths(1)) {
      Instant next = month.plusMonths(1).atDay(1).atStartOfDay(zone).toInstant();
      Instant end = next.isBefore(input.last()) ? next : input.last();
      Instant from = start;
      boolean covered = own.stream().anyMatch(u -> u.from().isBefore(end) && u.to().isAfter(from));
      if (!covered && Duration.between(start, end).compareTo(A_DAY) >= 0) {
        return false;
      }
      start = next;
    }
    return true;
  }
}
