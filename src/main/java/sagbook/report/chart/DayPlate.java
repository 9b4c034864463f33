package sagbook.report.chart;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import java.util.stream.DoubleStream;
import sagbook.account.StressCalendar;
import sagbook.account.StressDay;
import sagbook.evidence.Stress;
import sagbook.model.Limits;
import sagbook.report.words.Numbers;

/** The period as a calendar of stress: a strip a burden, a column a day. */
final class DayPlate {
  private static final int FRAME = 82;
  private static final int STRIP = 62;

  /** Share of a strip that is drawn in; the rest holds its name. */
  private static final double DRAWN = 0.66;

  private static final double NEAR_V = 0.25;
  private static final int MOST_BARS = 40;

  private final Subject subject;
  private final List<StressDay> days;
  private final LocalDate first;
  private final boolean counted;
  private final boolean warm;

  private DayPlate(Subject subject, List<StressDay> days) {
    this.subject = subject;
    this.days = days;
    this.first = days.get(0).day();
    this.counted = subject.bank().evidence().channels().hasCurrent();
    this.warm = subject.bank().evidence().channels().hasTemperature();
  }

  static Optional<Plate> of(Subject subject) {
    List<StressDay> days = StressCalendar.of(subject.bank().evidence().thinned(), subject.pack());
    return days.isEmpty() ? Optional.empty() : Optional.of(new DayPlate(subject, days).plate());
  }

  private Plate plate() {
    String title = title();
    List<String> items = new ArrayList<>();
    for (StressDay day : days) {
      items.add(
          say(
              "plate.days.item",
              subject.words().date(day.day()),
              Numbers.text(day.lowestV(), 2),
              Numbers.with(Numbers.text(day.highestV(), 2), "V")));
    }
    String alternative = subject.inWords(say("plate.days.alternative"), items);
    List<Strip> strips = strips();
    String svg = PlotSvg.of(plot(strips), FRAME + STRIP * strips.size(), title + " " + alternative);
    String caption =
        say(
            "plate.days.caption",
            Numbers.text(subject.pack().limits().cellMinVoltage(), 2),
            Numbers.text(subject.pack().limits().cellMaxVoltage(), 2));
    return new Plate("days", title, caption, svg, alternative, table());
  }

  private String title() {
    Stress stress = subject.bank().evidence().stress();
    double above = most(stress.hoursAboveMax());
    double below = most(stress.hoursBelowMin());
    double cold = most(stress.hoursChargingCold());
    double hot = Math.max(most(stress.hoursChargingHot()), most(stress.hoursHot()));
    List<String> stressed = new ArrayList<>();
    add(stressed, "plate.days.above", above);
    add(stressed, "plate.days.below", below);
    add(stressed, "plate.days.cold", cold);
    add(stressed, "plate.days.hot", hot);
    return stressed.isEmpty()
        ? say("plate.days.title.within")
        : say("plate.days.title", String.join(", ", stressed));
  }

  private void add(List<String> stressed, String key, double hours) {
    if (hours > 0) {
      stressed.add(say(key, Numbers.with(Numbers.significant(hours, 2), "h")));
    }
  }

  private static double most(double[] hours) {
    double most = 0;
    for (double each : hours) {
      most = each > most ? each : most;
    }
    return most;
  }

  /**
   * One burden.
   *
   * @param name with unit
   * @param unit of its numbers
   * @param low where a day's line begins
   * @param high where it ends
   * @param from value at the strip's foot
   * @param to value at the top of what is drawn
   * @param decimals of its numbers
   * @param rules limits that lie within
   */
  private record Strip(
      String name,
      String unit,
      ToDoubleFunction<StressDay> low,
      ToDoubleFunction<StressDay> high,
      double from,
      double to,
      int decimals,
      List<Double> rules) {

    double place(double value) {
      return (value - from) / (to - from) * DRAWN;
    }
  }

  private List<Strip> strips() {
    List<Strip> strips = new ArrayList<>();
    strips.add(voltages());
    if (warm) {
      double coldest = temperatures(StressDay::coldestC).min().orElse(Double.NaN);
      double warmest = temperatures(StressDay::warmestC).max().orElse(Double.NaN);
      if (Double.isFinite(coldest) && Double.isFinite(warmest)) {
        strips.add(
            new Strip(
                say("plate.days.temperature"),
                "°C",
                StressDay::coldestC,
                StressDay::warmestC,
                coldest - 1,
                warmest + 1,
                0,
                List.of()));
      }
    }
    double nominal = subject.pack().nominalCapacityAh();
    if (counted) {
      strips.add(amount("plate.days.depth", "%", day -> 100 * day.deepestAh() / nominal, 0));
    }
    strips.add(amount("plate.days.full", "h", StressDay::nearFullHours, 1));
    if (counted && warm) {
      String below = Numbers.with(limit(subject.pack().limits().chargeCoolTemperatureC()), "°C");
      strips.add(named(say("plate.days.cool", below), "h", StressDay::chargedCoolHours, 1));
    }
    strips.add(amount("plate.days.outside", "h", StressDay::outsideHours, 1));
    return strips;
  }

  private DoubleStream temperatures(ToDoubleFunction<StressDay> of) {
    return days.stream().mapToDouble(of).filter(Double::isFinite);
  }

  private static String limit(double celsius) {
    return Numbers.text(celsius, 0);
  }

  /** Lowest to highest cell, with the limits that are near. */
  private Strip voltages() {
    Limits limits = subject.pack().limits();
    double low = days.stream().mapToDouble(StressDay::lowestV).min().orElse(0);
    double high = days.stream().mapToDouble(StressDay::highestV).max().orElse(0);
    List<Double> rules = new ArrayList<>();
    if (low < limits.cellMinVoltage() + NEAR_V) {
      low = Math.min(low, limits.cellMinVoltage());
      rules.add(limits.cellMinVoltage());
    }
    if (high > limits.cellMaxVoltage() - NEAR_V) {
      high = Math.max(high, limits.cellMaxVoltage());
      rules.add(limits.cellMaxVoltage());
    }
    double air = Math.max(0.01, 0.05 * (high - low));
    return new Strip(
        say("axis.cell-voltage"),
        "V",
        StressDay::lowestV,
        StressDay::highestV,
        low - air,
        high + air,
        2,
        rules);
  }

  private Strip amount(String key, String unit, ToDoubleFunction<StressDay> of, int decimals) {
    return named(say(key), unit, of, decimals);
  }

  private Strip named(String name, String unit, ToDoubleFunction<StressDay> of, int decimals) {
    double most = days.stream().mapToDouble(of).max().orElse(0);
    return new Strip(name, unit, day -> 0, of, 0, most > 0 ? most : 1, decimals, List.of());
  }

  private Plot plot(List<Strip> strips) {
    Plot.Sketch sketch = new Plot.Sketch();
    Axis across = across();
    List<Axis.Tick> feet = new ArrayList<>();
    for (int i = 0; i < strips.size(); i++) {
      double foot = strips.size() - 1.0 - i;
      feet.add(new Axis.Tick(foot, ""));
      draw(strips.get(i), foot, across, sketch);
    }
    return sketch.on(across, new Axis("", 0, strips.size(), feet, true));
  }

  private void draw(Strip strip, double foot, Axis across, Plot.Sketch sketch) {
    double lowest = Double.POSITIVE_INFINITY;
    double highest = Double.NEGATIVE_INFINITY;
    Role role = strip.from() == 0 && days.size() <= MOST_BARS ? Role.DAY : Role.SPAN;
    for (StressDay day : days) {
      double low = strip.low().applyAsDouble(day);
      double high = strip.high().applyAsDouble(day);
      if (Double.isFinite(low) && high > low) {
        lowest = Math.min(lowest, low);
        highest = Math.max(highest, high);
        sketch.span(
            new Ink(role, 0, 0),
            (double) ChronoUnit.DAYS.between(first, day.day()),
            foot + strip.place(low),
            foot + strip.place(high),
            tip(strip, day, low, high));
      }
    }
    double[] ends = {across.low(), across.high()};
    for (double rule : strip.rules()) {
      double at = foot + strip.place(rule);
      sketch.line(new Ink(Role.RULE, 0, 0), ends, new double[] {at, at}, "");
    }
    sketch.note(Plot.Place.START, across.low(), foot + 0.8, strip.name(), false);
    sketch.note(Plot.Place.MARGIN, 0, foot + DRAWN / 2, extent(strip, lowest, highest), false);
  }

  /** The strip's extremes over the period. */
  private String extent(Strip strip, double lowest, double highest) {
    if (!(highest >= lowest)) {
      return say("plate.days.none");
    }
    String high = Numbers.with(Numbers.text(highest, strip.decimals()), strip.unit());
    return strip.from() == 0
        ? say("plate.days.most", high)
        : say("range", Numbers.text(lowest, strip.decimals()), high);
  }

  private String tip(Strip strip, StressDay day, double low, double high) {
    String top = Numbers.with(Numbers.text(high, strip.decimals()), strip.unit());
    String value = strip.from() == 0 ? top : say("range", Numbers.text(low, strip.decimals()), top);
    return say("plate.days.tip", subject.words().date(day.day()), strip.name(), value);
  }

  private Axis across() {
    long last = ChronoUnit.DAYS.between(first, days.get(days.size() - 1).day());
    long step = last <= 7 ? 1 : last <= 62 ? 7 : Math.max(7, (last / 8 + 6) / 7 * 7);
    List<Axis.Tick> ticks = new ArrayList<>();
    for (long day = 0; day <= last; day += step) {
      ticks.add(new Axis.Tick(day, subject.words().dayAndMonth(first.plusDays(day))));
    }
    return new Axis(say("axis.day"), -0.7, last + 0.7, ticks, true);
  }

  private DataTable table() {
    List<String> headers = new ArrayList<>(List.of(say("column.day")));
    if (counted) {
      headers.addAll(
          List.of(say("column.charged"), say("column.discharged"), say("column.deepest")));
    }
    headers.addAll(List.of(say("column.highest"), say("column.lowest")));
    if (warm) {
      headers.addAll(List.of(say("column.coldest"), say("column.warmest")));
    }
    headers.add(say("column.near-full"));
    if (counted && warm) {
      headers.add(say("column.cool"));
    }
    headers.add(say("column.outside"));
    return new DataTable(headers, days.stream().map(this::row).toList());
  }

  private List<String> row(StressDay day) {
    List<String> row = new ArrayList<>(List.of(subject.words().date(day.day())));
    if (counted) {
      row.add(Numbers.text(day.chargedAh(), 0));
      row.add(Numbers.text(day.dischargedAh(), 0));
      row.add(Numbers.text(day.deepestAh(), 0));
    }
    row.add(extreme(day.highestV(), day.highestCell()));
    row.add(extreme(day.lowestV(), day.lowestCell()));
    if (warm) {
      row.add(degrees(day.coldestC()));
      row.add(degrees(day.warmestC()));
    }
    row.add(hours(day.nearFullHours()));
    if (counted && warm) {
      row.add(hours(day.chargedCoolHours()));
    }
    row.add(hours(day.outsideHours()));
    return row;
  }

  private String degrees(double celsius) {
    return Double.isFinite(celsius) ? Numbers.text(celsius, 1) : say("not-logged");
  }

  private static String hours(double hours) {
    return Numbers.significant(hours, 2);
  }

  private String extreme(double volts, int cell) {
    return say("column.extreme", Numbers.text(volts, 3), subject.words().cell(cell));
  }

  private String say(String key, String... filled) {
    return subject.words().say(key, filled);
  }
}
