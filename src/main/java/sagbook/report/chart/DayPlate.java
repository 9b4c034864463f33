package sagbook.report.chart;

import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import sagbook.evidence.Stress;
import sagbook.evidence.ThinnedRecord;
import sagbook.model.Limits;
import sagbook.report.words.Numbers;

/** The period as a calendar: how far the cells were driven each day. */
final class DayPlate {
  private static final int HEIGHT = 340;
  private static final double NEAR_V = 0.25;

  /** One day's extremes and sums. */
  private static final class Day {
    double highestV = Double.NEGATIVE_INFINITY;
    int highestCell;
    double lowestV = Double.POSITIVE_INFINITY;
    int lowestCell;
    double warmestC = Double.NEGATIVE_INFINITY;
    double coldestC = Double.POSITIVE_INFINITY;
    double chargedAh;
    double hoursOutside;
    double dischargedAh;
  }

  private final Subject subject;
  private final TreeMap<LocalDate, Day> days = new TreeMap<>();

  private DayPlate(Subject subject) {
    this.subject = subject;
    ThinnedRecord record = subject.bank().evidence().thinned();
    for (int row = 0; row < record.rows(); row++) {
      Instant time = Instant.ofEpochSecond((long) Math.floor(record.timeS()[row]));
      LocalDate date = LocalDate.ofInstant(time, subject.pack().timezone());
      take(days.computeIfAbsent(date, d -> new Day()), record, row);
    }
    days.values().removeIf(day -> day.highestCell == 0);
  }

  static Optional<Plate> of(Subject subject) {
    DayPlate calendar = new DayPlate(subject);
    return calendar.days.isEmpty() ? Optional.empty() : Optional.of(calendar.plate());
  }

  private void take(Day day, ThinnedRecord record, int row) {
    Limits limits = subject.pack().limits();
    boolean outside = false;
    for (int cell = 1; cell <= record.cells(); cell++) {
      float volts = record.voltageV()[cell - 1][row];
      outside |= volts > limits.cellMaxVoltage() || volts < limits.cellMinVoltage();
      if (volts > day.highestV) {
        day.highestV = volts;
        day.highestCell = cell;
      }
      if (volts < day.lowestV) {
        day.lowestV = volts;
        day.lowestCell = cell;
      }
    }
    for (float[] temperatures : record.temperatureC()) {
      if (Float.isFinite(temperatures[row])) {
        day.warmestC = Math.max(day.warmestC, temperatures[row]);
        day.coldestC = Math.min(day.coldestC, temperatures[row]);
        outside |= isOutside(limits, temperatures[row], record.currentA()[row]);
      }
    }
    double ah = record.currentA()[row] * record.seconds()[row] / 3600.0;
    day.hoursOutside += outside ? record.seconds()[row] / 3600.0 : 0;
    day.chargedAh += ah > 0 ? ah : 0;
    day.dischargedAh -= ah < 0 ? ah : 0;
  }

  private static boolean isOutside(Limits limits, double celsius, double ampere) {
    boolean charging =
        ampere > 0
            && (celsius < limits.chargeMinTemperatureC()
                || celsius > limits.chargeMaxTemperatureC());
    boolean discharging =
        ampere < 0
            && (celsius < limits.dischargeMinTemperatureC()
                || celsius > limits.dischargeMaxTemperatureC());
    return charging || discharging;
  }

  private Plate plate() {
    String title = title();
    DataTable table = table();
    List<String> items = new ArrayList<>();
    days.forEach(
        (date, day) ->
            items.add(
                subject
                    .words()
                    .say(
                        "plate.days.item",
                        subject.words().date(date),
                        Numbers.text(day.lowestV, 2),
                        Numbers.with(Numbers.text(day.highestV, 2), "V"))));
    String alternative = subject.inWords(words("plate.days.alternative"), items);
    String svg = PlotSvg.of(plot(), HEIGHT, title + " " + alternative);
    String caption =
        subject
            .words()
            .say(
                "plate.days.caption",
                Numbers.text(subject.pack().limits().cellMinVoltage(), 2),
                Numbers.text(subject.pack().limits().cellMaxVoltage(), 2));
    return new Plate("days", title, caption, svg, alternative, table);
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
        ? words("plate.days.title.within")
        : subject.words().say("plate.days.title", String.join(", ", stressed));
  }

  private void add(List<String> stressed, String key, double hours) {
    if (hours > 0) {
      stressed.add(subject.words().say(key, Numbers.with(Numbers.significant(hours, 2), "h")));
    }
  }

  private static double most(double[] hours) {
    double most = 0;
    for (double each : hours) {
      most = each > most ? each : most;
    }
    return most;
  }

  private Plot plot() {
    LocalDate first = days.firstKey();
    Plot.Sketch sketch = new Plot.Sketch();
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (var entry : days.entrySet()) {
      Day day = entry.getValue();
      double x = ChronoUnit.DAYS.between(first, entry.getKey());
      String tip =
          subject
              .words()
              .say(
                  "plate.days.tip",
                  subject.words().date(entry.getKey()),
                  Numbers.with(Numbers.text(day.lowestV, 3), "V"),
                  subject.words().cell(day.lowestCell),
                  Numbers.with(Numbers.text(day.highestV, 3), "V"),
                  subject.words().cell(day.highestCell));
      sketch.span(new Ink(Role.SPAN, 0, 0), x, day.lowestV, day.highestV, tip);
      if (day.hoursOutside > 0) {
        sketch.point(new Ink(Role.MARK, 0, 1), x, day.highestV, tip);
      }
      low = Math.min(low, day.lowestV);
      high = Math.max(high, day.highestV);
    }
    double max = subject.pack().limits().cellMaxVoltage();
    double min = subject.pack().limits().cellMinVoltage();
    high = high > max - NEAR_V ? Math.max(high, max) : high;
    low = low < min + NEAR_V ? Math.min(low, min) : low;
    Axis up = Axis.around(words("axis.cell-voltage"), low, high, 7);
    Axis across = across(first);
    limit(sketch, across, up, max, "plate.days.upper");
    limit(sketch, across, up, min, "plate.days.lower");
    return sketch.on(across, up);
  }

  private void limit(Plot.Sketch sketch, Axis across, Axis up, double at, String key) {
    if (up.low() < at && at < up.high()) {
      double[] ends = {across.low(), across.high()};
      sketch.line(new Ink(Role.RULE, 0, 0), ends, new double[] {at, at}, "");
      sketch.note(Plot.Place.MARGIN, 0, at, words(key), false);
    }
  }

  private Axis across(LocalDate first) {
    long last = ChronoUnit.DAYS.between(first, days.lastKey());
    long step = last <= 7 ? 1 : last <= 62 ? 7 : Math.max(7, (last / 8 + 6) / 7 * 7);
    List<Axis.Tick> ticks = new ArrayList<>();
    for (long day = 0; day <= last; day += step) {
      ticks.add(new Axis.Tick(day, subject.words().dayAndMonth(first.plusDays(day))));
    }
    return new Axis(words("axis.day"), -0.7, last + 0.7, ticks, true);
  }

  private DataTable table() {
    boolean counted = subject.bank().evidence().channels().hasCurrent();
    boolean warm = subject.bank().evidence().channels().hasTemperature();
    List<String> headers = new ArrayList<>(List.of(words("column.day")));
    if (counted) {
      headers.addAll(List.of(words("column.charged"), words("column.discharged")));
    }
    headers.addAll(List.of(words("column.highest"), words("column.lowest")));
    if (warm) {
      headers.addAll(List.of(words("column.coldest"), words("column.warmest")));
    }
    headers.add(words("column.outside"));
    List<List<String>> rows = new ArrayList<>();
    days.forEach(
        (date, day) -> {
          List<String> row = new ArrayList<>(List.of(subject.words().date(date)));
          if (counted) {
            row.add(Numbers.text(day.chargedAh, 0));
            row.add(Numbers.text(day.dischargedAh, 0));
          }
          row.add(extreme(day.highestV, day.highestCell));
          row.add(extreme(day.lowestV, day.lowestCell));
          if (warm) {
            boolean seen = day.warmestC >= day.coldestC;
            row.add(seen ? Numbers.text(day.coldestC, 1) : words("not-logged"));
            row.add(seen ? Numbers.text(day.warmestC, 1) : words("not-logged"));
          }
          row.add(Numbers.text(day.hoursOutside, 1));
          rows.add(row);
        });
    return new DataTable(headers, rows);
  }

  private String extreme(double volts, int cell) {
    return subject
        .words()
        .say("column.extreme", Numbers.text(volts, 3), subject.words().cell(cell));
  }

  private String words(String key) {
    return subject.words().say(key);
  }
}
