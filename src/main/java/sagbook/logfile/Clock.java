package sagbook.logfile;

/** Reads the time of each row by a plan. One clock serves one pass over one file. */
final class Clock {
  private static final double SECONDS_A_DAY = 86_400;

  /** How far elapsed seconds may stray from the written time before they are tied to it anew. */
  private static final double MOST_STRAY_S = 2.5;

  private final ClockPlan plan;
  private final MomentReader moments;
  private final MomentReader days;
  private final ZoneClock zone;
  private final NumberReader numbers;
  private double previousS = Double.NaN;
  private double anchorS = Double.NaN;

  Clock(ClockPlan plan, boolean decimalComma) {
    this.plan = plan;
    this.moments = new MomentReader(plan.order());
    this.days = new MomentReader(plan.order());
    this.zone = new ZoneClock(plan.zone());
    this.numbers = new NumberReader(decimalComma);
  }

  /** Seconds since 1970; NaN when the row has no readable time. */
  double read(Fields row) {
    double time = coarse(row);
    if (plan.elapsedField() >= 0 && !Double.isNaN(time)) {
      time = finer(row, time);
    }
    if (!Double.isNaN(time)) {
      previousS = time;
    }
    return time;
  }

  /** How often a local clock was seen not to follow summer time. */
  int missedChanges() {
    return zone.missedChanges();
  }

  private double coarse(Fields row) {
    int field = plan.field();
    if (plan.kind() == ClockPlan.Kind.MOMENT) {
      return moment(row);
    }
    double number = numbers.read(row.text(), row.start(field), row.end(field));
    return plan.kind() == ClockPlan.Kind.UNIX
        ? number * plan.unitS()
        : plan.startS() + number * plan.unitS();
  }

  private double moment(Fields row) {
    int field = plan.field();
    if (!moments.read(row.text(), row.start(field), row.end(field))) {
      return Double.NaN;
    }
    double local = moments.localS();
    if (plan.dayField() >= 0) {
      int day = plan.dayField();
      if (!days.read(row.text(), row.start(day), row.end(day)) || !days.hasDate()) {
        return Double.NaN;
      }
      local = Math.floor(days.localS() / SECONDS_A_DAY) * SECONDS_A_DAY + local % SECONDS_A_DAY;
    } else if (!moments.hasDate()) {
      return Double.NaN;
    }
    return Double.isNaN(moments.offsetS())
        ? zone.moment(local, previousS)
        : local - moments.offsetS();
  }

  private double finer(Fields row, double coarse) {
    int field = plan.elapsedField();
    double elapsed = numbers.read(row.text(), row.start(field), row.end(field)) * plan.unitS();
    if (Double.isNaN(elapsed)) {
      return coarse;
    }
    if (!(Math.abs(anchorS + elapsed - coarse) <= MOST_STRAY_S)) {
      anchorS = coarse - elapsed;
    }
    return anchorS + elapsed;
  }
}
