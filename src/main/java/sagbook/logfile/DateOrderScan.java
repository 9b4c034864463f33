package sagbook.logfile;

import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import sagbook.issue.InputProblem;
import sagbook.wording.Words;

/**
 * Settles whether day or month comes first by going through all dates of a file: a number above 12
 * must be a day; failing that, the order under which the dates jump about less is right.
 */
final class DateOrderScan {
  private static final Words WORDS = Words.english();
  private static final double CLEARLY_LESS = 3;

  private final FilePlan plan;
  private final MomentReader dayFirst = new MomentReader(DateOrder.DAY_FIRST);
  private final MomentReader monthFirst = new MomentReader(DateOrder.MONTH_FIRST);
  private double dayJumps;
  private double monthJumps;
  private double lastDay = Double.NaN;
  private double lastMonth = Double.NaN;

  private DateOrderScan(FilePlan plan) {
    this.plan = plan;
  }

  /** The plan with its order settled, or as it was when the dates do not tell. */
  static FilePlan settle(FilePlan plan) throws InputProblem {
    ClockPlan clock = plan.clock();
    if (clock.orderSettled() || clock.kind() != ClockPlan.Kind.MOMENT) {
      return plan;
    }
    return new DateOrderScan(plan).scan();
  }

  private FilePlan scan() throws InputProblem {
    int field = plan.clock().dateField();
    Fields fields = Fields.of(plan.dialect());
    try (InputStream raw = plan.source().openRaw();
        LineReader lines = Head.open(LogSource.unpack(raw), plan.charset(), plan.source().name())) {
      while (lines.next()) {
        if (lines.number() < plan.dialect().firstDataLine()) {
          continue;
        }
        fields.split(lines);
        if (field < fields.count() && compare(fields, field)) {
          DateOrder order =
              dayFirst.hasDate() && Double.isNaN(lastMonth)
                  ? DateOrder.DAY_FIRST
                  : DateOrder.MONTH_FIRST;
          return settled(order, WORDS.say("clock.by-line", Long.toString(lines.number())));
        }
      }
    } catch (IOException e) {
      throw Head.unreadable(plan.source(), e);
    }
    if (dayJumps * CLEARLY_LESS < monthJumps) {
      return settled(DateOrder.DAY_FIRST, WORDS.say("clock.by-rows"));
    }
    if (monthJumps * CLEARLY_LESS < dayJumps) {
      return settled(DateOrder.MONTH_FIRST, WORDS.say("clock.by-rows"));
    }
    return plan;
  }

  private FilePlan settled(DateOrder order, String why) {
    return plan.withClock(plan.clock().withOrder(order, why));
  }

  /** Takes a date under both orders; true when only one of them can read it. */
  private boolean compare(Fields fields, int field) {
    boolean day = dayFirst.read(fields.text(), fields.start(field), fields.end(field));
    boolean month = monthFirst.read(fields.text(), fields.start(field), fields.end(field));
    double nowDay = day ? dayFirst.localS() : Double.NaN;
    double nowMonth = month ? monthFirst.localS() : Double.NaN;
    if (day && month) {
      dayJumps += jump(lastDay, nowDay);
      monthJumps += jump(lastMonth, nowMonth);
    }
    lastDay = nowDay;
    lastMonth = nowMonth;
    return day != month;
  }

  private static double jump(double before, double now) {
    return Double.isNaN(before) || now == before ? 0 : Math.abs(now - before);
  }

  /** Lets files of one kind settle each other's order of dates. */
  static List<FilePlan> agree(List<FilePlan> plans) {
    List<FilePlan> agreed = new ArrayList<>();
    for (FilePlan plan : plans) {
      agreed.add(agree(plan, plans));
    }
    return agreed;
  }

  private static FilePlan agree(FilePlan plan, List<FilePlan> plans) {
    ClockPlan clock = plan.clock();
    if (clock.orderSettled()) {
      return plan;
    }
    for (FilePlan other : plans) {
      boolean alike =
          other.clock().orderSettled()
              && other.clock().kind() == clock.kind()
              && other.dialect().names().equals(plan.dialect().names());
      if (alike) {
        String why = WORDS.say("clock.by-file", InputProblem.quoted(other.source().name()));
        return plan.withClock(clock.withOrder(other.clock().order(), why));
      }
    }
    return plan;
  }
}
