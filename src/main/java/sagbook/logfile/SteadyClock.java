package sagbook.logfile;

import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import sagbook.issue.InputProblem;
import sagbook.wording.Words;

/**
 * Finds loggers whose clock does not follow summer time and reads them with one offset all year:
 * the one that the zone has at the first row, when the clock is taken to have been right.
 */
final class SteadyClock {
  private SteadyClock() {}

  static List<FileSurvey> settle(List<FileSurvey> files) throws InputProblem {
    double earliest = Double.POSITIVE_INFINITY;
    boolean steady = false;
    for (FileSurvey file : files) {
      if (isLocal(file.plan())) {
        steady |= file.missedChanges() > 0;
        earliest = Math.min(earliest, file.firstS());
      }
    }
    if (!steady) {
      return files;
    }
    List<FileSurvey> settled = new ArrayList<>();
    for (FileSurvey file : files) {
      settled.add(isLocal(file.plan()) ? again(file, earliest) : file);
    }
    return settled;
  }

  private static boolean isLocal(FilePlan plan) {
    return plan.clock().kind() == ClockPlan.Kind.MOMENT
        && !(plan.clock().zone() instanceof ZoneOffset);
  }

  private static FileSurvey again(FileSurvey file, double firstS) throws InputProblem {
    ZoneId zone = file.plan().clock().zone();
    ZoneOffset offset = zone.getRules().getOffset(Instant.ofEpochSecond((long) firstS));
    ClockPlan clock = file.plan().clock();
    String utc = "UTC" + (offset.getTotalSeconds() == 0 ? "" : offset.getId());
    String words = Words.english().say("clock.steady", clock.words(), utc);
    FilePlan plan = file.plan().withClock(clock.withZone(offset, words));
    return new Surveyor(plan, file.slots()).survey();
  }
}
