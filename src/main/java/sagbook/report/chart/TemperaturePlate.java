package sagbook.report.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import sagbook.evidence.Stress;
import sagbook.report.words.Numbers;

/** Coldest, mean and warmest reading of every cell. */
final class TemperaturePlate {
  private static final int HEIGHT = 300;
  private static final double APART_C = 1.5;

  private TemperaturePlate() {}

  static Optional<Plate> of(Subject subject) {
    Stress stress = subject.bank().evidence().stress();
    double middle = Subject.median(stress.meanTemperatureC());
    if (!Double.isFinite(middle)) {
      return Optional.empty();
    }
    String title = title(subject, stress, middle);
    DataTable table = table(subject, stress);
    List<String> items = new ArrayList<>();
    for (List<String> row : table.rows()) {
      items.add(
          subject
              .words()
              .say("plate.temperature.item", row.get(0), row.get(1), row.get(2), row.get(3)));
    }
    String alternative =
        subject.inWords(subject.words().say("plate.temperature.alternative"), items);
    String svg = PlotSvg.of(plot(subject, stress), HEIGHT, title + " " + alternative);
    String caption = subject.words().say("plate.temperature.caption");
    return Optional.of(new Plate("temperature", title, caption, svg, alternative, table));
  }

  private static Plot plot(Subject subject, Stress stress) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    Plot.Sketch sketch = new Plot.Sketch();
    for (int cell = 1; cell <= subject.cells(); cell++) {
      int i = cell - 1;
      double coldest = stress.lowestTemperatureC()[i];
      double warmest = stress.highestTemperatureC()[i];
      if (!Double.isFinite(coldest) || !Double.isFinite(warmest)) {
        continue;
      }
      low = Math.min(low, coldest);
      high = Math.max(high, warmest);
      String tip =
          subject
              .words()
              .say(
                  "plate.temperature.item",
                  Integer.toString(cell),
                  degrees(coldest),
                  degrees(stress.meanTemperatureC()[i]),
                  degrees(warmest));
      sketch.span(subject.picks().ink(Role.SPAN, cell), cell, coldest, warmest, tip);
      sketch.point(subject.picks().ink(Role.MARK, cell), cell, stress.meanTemperatureC()[i], tip);
      if (subject.picks().of(cell) > 0) {
        sketch.note(Plot.Place.ABOVE, cell, warmest, subject.words().cell(cell), true);
      }
    }
    Axis across = Axis.cells(subject.words().say("axis.cell"), subject.cells());
    Axis up = Axis.around(subject.words().say("axis.temperature"), low, high, 6);
    rule(sketch, across, up, subject.pack().limits().chargeMaxTemperatureC());
    rule(sketch, across, up, subject.pack().limits().chargeMinTemperatureC());
    return sketch.on(across, up);
  }

  private static void rule(Plot.Sketch sketch, Axis across, Axis up, double at) {
    if (up.low() < at && at < up.high()) {
      double[] ends = {across.low(), across.high()};
      sketch.line(new Ink(Role.RULE, 0, 0), ends, new double[] {at, at}, "");
    }
  }

  private static String title(Subject subject, Stress stress, double middle) {
    double[] mean = stress.meanTemperatureC();
    int furthest = 1;
    double apart = 0;
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < mean.length; i++) {
      if (Double.isFinite(mean[i])) {
        low = Math.min(low, stress.lowestTemperatureC()[i]);
        high = Math.max(high, stress.highestTemperatureC()[i]);
        if (Math.abs(mean[i] - middle) > Math.abs(apart)) {
          apart = mean[i] - middle;
          furthest = i + 1;
        }
      }
    }
    String from = degrees(low);
    String to = Numbers.with(degrees(high), "°C");
    if (!(Math.abs(apart) >= APART_C)) {
      return subject.words().say("plate.temperature.title.alike", from, to);
    }
    return subject
        .words()
        .say(
            apart > 0 ? "plate.temperature.title.warm" : "plate.temperature.title.cold",
            from,
            to,
            subject.words().cell(furthest),
            Numbers.with(degrees(Math.abs(apart)), "°C"));
  }

  private static DataTable table(Subject subject, Stress stress) {
    List<String> headers =
        List.of(
            subject.words().say("column.cell"),
            subject.words().say("column.coldest"),
            subject.words().say("column.mean-temperature"),
            subject.words().say("column.warmest"));
    List<List<String>> rows = new ArrayList<>();
    for (int i = 0; i < subject.cells(); i++) {
      String none = subject.words().say("not-logged");
      rows.add(
          List.of(
              Integer.toString(i + 1),
              degrees(stress.lowestTemperatureC()[i], none),
              degrees(stress.meanTemperatureC()[i], none),
              degrees(stress.highestTemperatureC()[i], none)));
    }
    return new DataTable(headers, rows);
  }

  private static String degrees(double celsius, String none) {
    return Double.isFinite(celsius) ? degrees(celsius) : none;
  }

  private static String degrees(double celsius) {
    return Numbers.text(celsius, 1);
  }
}
