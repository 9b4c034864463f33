package sagbook.logfile;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import sagbook.issue.InputProblem;
import sagbook.model.LogMapping;
import sagbook.wording.Words;

/** Finds when a log that counts from its start began. */
final class StartFinder {
  private static final Words WORDS = Words.english();
  private static final Pattern IN_NAME =
      Pattern.compile(
          "(20[0-9]{2})[-_.]?([01][0-9])[-_.]?([0-3][0-9])"
              + "(?:[T_ -]?([0-2][0-9])[-:_.h]?([0-5][0-9])(?:[-:_.m]?([0-5][0-9]))?)?(?![0-9])");
  private static final Pattern IN_PREAMBLE =
      Pattern.compile("(20[0-9]{2}-[01][0-9]-[0-3][0-9](?:[T ][0-9:.]+(?:Z|[-+][0-9:]+)?)?)");

  private final LogSource source;
  private final ZoneId zone;

  StartFinder(LogSource source, ZoneId zone) {
    this.source = source;
    this.zone = zone;
  }

  /** The plan with its start, if anything names one. */
  ClockPlan settle(ClockPlan plan, Head head, Dialect dialect, Optional<LogMapping> mapping)
      throws InputProblem {
    if (plan.kind() != ClockPlan.Kind.ELAPSED) {
      return plan;
    }
    Optional<String> told = mapping.flatMap(LogMapping::start);
    if (told.isPresent()) {
      double start = moment(told.get());
      if (Double.isNaN(start)) {
        throw InputProblem.usage("problem.mapping.start", InputProblem.quoted(told.get()));
      }
      return plan.withStart(start, WORDS.say("clock.start.told", plan.words(), told.get()));
    }
    int preamble = Math.min(dialect.headerLine(), head.lines().size());
    for (int i = 0; i < preamble; i++) {
      Matcher matcher = IN_PREAMBLE.matcher(head.lines().get(i));
      double start = matcher.find() ? moment(matcher.group(1)) : Double.NaN;
      if (!Double.isNaN(start)) {
        return plan.withStart(
            start,
            WORDS.say("clock.start.line", plan.words(), Integer.toString(i + 1), matcher.group(1)));
      }
    }
    return fromName(plan)
        .orElseGet(() -> plan.withStart(0, WORDS.say("clock.start.none", plan.words())));
  }

  private double moment(String text) {
    MomentReader reader = new MomentReader(DateOrder.YEAR_FIRST);
    char[] c = text.strip().toCharArray();
    if (!reader.read(c, 0, c.length) || !reader.hasDate()) {
      return Double.NaN;
    }
    return Double.isNaN(reader.offsetS())
        ? new ZoneClock(zone).moment(reader.localS(), Double.NaN)
        : reader.localS() - reader.offsetS();
  }

  private Optional<ClockPlan> fromName(ClockPlan plan) {
    String name = source.name().substring(source.name().lastIndexOf('/') + 1);
    Matcher matcher = IN_NAME.matcher(name);
    if (!matcher.find()) {
      return Optional.empty();
    }
    try {
      LocalDate day = LocalDate.of(number(matcher, 1), number(matcher, 2), number(matcher, 3));
      LocalTime time = LocalTime.of(number(matcher, 4), number(matcher, 5), number(matcher, 6));
      double start = day.atTime(time).atZone(zone).toEpochSecond();
      String words = WORDS.say("clock.start.name", plan.words(), day.toString(), time.toString());
      return Optional.of(plan.withStart(start, words));
    } catch (DateTimeException e) {
      return Optional.empty();
    }
  }

  private static int number(Matcher matcher, int group) {
    return matcher.group(group) == null ? 0 : Integer.parseInt(matcher.group(group));
  }
}
