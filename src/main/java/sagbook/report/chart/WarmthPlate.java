package sagbook.report.chart;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import sagbook.model.Estimate;
import sagbook.report.words.Numbers;

/** Resistance of every cell over its mean temperature: does warmth go with it? */
final class WarmthPlate {
  private static final int HEIGHT = 320;
  private static final double APART_C = 1;

  private final Subject subject;
  private final List<Integer> cells = new ArrayList<>();
  private final List<Double> celsius = new ArrayList<>();
  private final List<Estimate.Known> resistance = new ArrayList<>();

  private WarmthPlate(Subject subject) {
    this.subject = subject;
    double[] mean = subject.bank().evidence().stress().meanTemperatureC();
    for (int cell = 1; cell <= subject.cells(); cell++) {
      Estimate estimate = subject.verdict(cell).estimates().resistanceMilliohm();
      if (Double.isFinite(mean[cell - 1]) && estimate instanceof Estimate.Known known) {
        cells.add(cell);
        celsius.add(mean[cell - 1]);
        resistance.add(known);
      }
    }
  }

  static Optional<Plate> of(Subject subject) {
    WarmthPlate warmth = new WarmthPlate(subject);
    return warmth.cells.size() < 3 ? Optional.empty() : Optional.of(warmth.plate());
  }

  private Plate plate() {
    String title = title();
    List<List<String>> rows = new ArrayList<>();
    List<String> items = new ArrayList<>();
    for (int i = 0; i < cells.size(); i++) {
      rows.add(
          List.of(
              Integer.toString(cells.get(i)),
              Numbers.text(celsius.get(i), 1),
              Numbers.value(resistance.get(i))));
      items.add(tip(i));
    }
    DataTable table =
        new DataTable(
            List.of(
                words("column.cell"), words("column.mean-temperature"), words("column.value-mohm")),
            rows);
    String alternative = subject.inWords(words("plate.warmth.alternative"), items);
    String svg = PlotSvg.of(plot(), HEIGHT, title + " " + alternative);
    return new Plate("warmth", title, words("plate.warmth.caption"), svg, alternative, table);
  }

  private String tip(int i) {
    return subject
        .words()
        .say(
            "plate.warmth.item",
            subject.words().cell(cells.get(i)),
            degrees(celsius.get(i)),
            Numbers.with(Numbers.value(resistance.get(i)), "mΩ"));
  }

  private Plot plot() {
    Plot.Sketch sketch = new Plot.Sketch();
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    double cold = Double.POSITIVE_INFINITY;
    double warm = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < cells.size(); i++) {
      int cell = cells.get(i);
      Estimate.Known known = resistance.get(i);
      low = Math.min(low, known.low());
      high = Math.max(high, known.high());
      cold = Math.min(cold, celsius.get(i));
      warm = Math.max(warm, celsius.get(i));
      Ink span = subject.picks().ink(Role.SPAN, cell);
      sketch.span(span, celsius.get(i), known.low(), known.high(), tip(i));
      sketch.point(subject.picks().ink(Role.MARK, cell), celsius.get(i), known.value(), tip(i));
      if (span.pick() > 0 || (i == highest() && isClear(i))) {
        String name = subject.words().cell(cell);
        sketch.note(Plot.Place.ABOVE, celsius.get(i), known.high(), name, span.pick() > 0);
      }
    }
    Axis across = Axis.around(words("axis.mean-temperature"), cold, warm, 8);
    return sketch.on(across, Axis.around(words("plate.resistance.axis"), low, high, 6));
  }

  /** The place of the cell with the highest resistance. */
  private int highest() {
    int highest = 0;
    for (int i = 1; i < cells.size(); i++) {
      highest = resistance.get(i).value() > resistance.get(highest).value() ? i : highest;
    }
    return highest;
  }

  /** Whether a resistance stands clear of the middle one. */
  private boolean isClear(int i) {
    return resistance
        .get(i)
        .isAbove(Subject.median(resistance.stream().mapToDouble(Estimate.Known::value).toArray()));
  }

  private String title() {
    int highest = highest();
    if (!isClear(highest)) {
      return words("plate.warmth.title.none");
    }
    double middle = Subject.median(celsius.stream().mapToDouble(d -> d).toArray());
    double apart = celsius.get(highest) - middle;
    String cell = subject.words().cellFirst(cells.get(highest));
    if (Math.abs(apart) < APART_C) {
      return subject
          .words()
          .say("plate.warmth.title.same", cell, degrees(celsius.get(highest)), degrees(middle));
    }
    String key = apart > 0 ? "plate.warmth.title.warmer" : "plate.warmth.title.colder";
    return subject.words().say(key, cell, degrees(Math.abs(apart)));
  }

  private String words(String key) {
    return subject.words().say(key);
  }

  private static String degrees(double celsius) {
    return Numbers.with(Numbers.text(celsius, 1), "°C");
  }
}
