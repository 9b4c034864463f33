package sagbook.report.chart;

import static java.util.Comparator.comparingDouble;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import sagbook.estimate.CellEstimates;
import sagbook.model.Estimate;
import sagbook.report.words.Numbers;

/**
 * The room each cell has left when the string must stop: above the line when charging ends because
 * the first cell is full, below it when discharging ends because the first cell is empty.
 *
 * <p>With charge offset {@code o} and capacity {@code C}, a cell is full when the string's charge
 * stands at {@code -o} and empty at {@code -o - C}; the string goes from the highest of the latter
 * to the lowest of the former. Holds for cells whose charging losses are alike, as lithium cells'
 * are.
 */
final class StringMapPlate {
  private static final int HEIGHT = 340;

  private final Subject subject;
  private final String unit;
  private final List<Integer> cells = new ArrayList<>();

  /** Charge that the string can take in from the start until each is full. */
  private final List<Estimate.Known> untilFull = new ArrayList<>();

  /** Charge that it can give from the start until each is empty. */
  private final List<Estimate.Known> untilEmpty = new ArrayList<>();

  private StringMapPlate(Subject subject, boolean absolute) {
    this.subject = subject;
    this.unit = absolute ? "Ah" : "%";
    double perPercent = absolute ? subject.pack().nominalCapacityAh() / 100 : 1;
    for (int cell = 1; cell <= subject.cells(); cell++) {
      CellEstimates estimates = subject.verdict(cell).estimates();
      Estimate capacity =
          absolute ? estimates.capacityAh() : estimates.capacityRelative().map(r -> r * 100);
      if (capacity instanceof Estimate.Known c
          && estimates.chargeOffsetPercent() instanceof Estimate.Known o) {
        cells.add(cell);
        Estimate.Known full =
            new Estimate.Known(
                -o.value() * perPercent, -o.high() * perPercent, -o.low() * perPercent);
        untilFull.add(full);
        untilEmpty.add(c.minus(full));
      }
    }
  }

  static Optional<Plate> of(Subject subject) {
    StringMapPlate absolute = new StringMapPlate(subject, true);
    StringMapPlate map =
        absolute.cells.size() * 2 >= subject.cells()
            ? absolute
            : new StringMapPlate(subject, false);
    return map.cells.size() < 2 ? Optional.empty() : Optional.of(map.plate());
  }

  private Plate plate() {
    double[] top = roomBeyondFirst(untilFull);
    double[] bottom = roomBeyondFirst(untilEmpty);
    String title =
        subject
            .words()
            .say(
                "plate.map.title",
                side("plate.map.top", untilFull),
                side("plate.map.bottom", untilEmpty));
    DataTable table = table(top, bottom);
    List<String> items = new ArrayList<>();
    for (List<String> row : table.rows()) {
      items.add(subject.words().say("plate.map.item", row.get(0), row.get(1), row.get(2)));
    }
    String alternative = subject.inWords(words("plate.map.alternative"), items);
    String svg = PlotSvg.of(plot(top, bottom), HEIGHT, title + " " + alternative);
    return new Plate(
        "map", title, subject.words().say("plate.map.caption", unit), svg, alternative, table);
  }

  private Plot plot(double[] top, double[] bottom) {
    Plot.Sketch sketch = new Plot.Sketch();
    double most = 0;
    double least = 0;
    Axis across = Axis.cells(words("axis.cell"), subject.cells());
    for (int i = 0; i < top.length; i++) {
      int cell = cells.get(i);
      String tip =
          subject
              .words()
              .say("plate.map.item", Integer.toString(cell), text(top[i]), text(bottom[i]));
      sketch.span(subject.picks().ink(Role.BAR, cell), cell, -bottom[i], top[i], tip);
      if (subject.picks().of(cell) > 0) {
        sketch.note(Plot.Place.ABOVE, cell, top[i], subject.words().cell(cell), true);
      }
      most = Math.max(most, top[i]);
      least = Math.min(least, -bottom[i]);
    }
    double[] ends = {across.low(), across.high()};
    sketch.line(new Ink(Role.RULE, 0, 0), ends, new double[] {0, 0}, "");
    Axis up = Axis.around(subject.words().say("plate.map.axis", unit), least, most, 8).unsigned();
    sketch.note(Plot.Place.MARGIN, 0, up.high() * 0.6, words("plate.map.up"), false);
    sketch.note(Plot.Place.MARGIN, 0, up.low() * 0.6, words("plate.map.down"), false);
    for (int cell = 1; cell <= subject.cells(); cell++) {
      if (!cells.contains(cell)) {
        String none = words("none");
        sketch.note(Plot.Place.FLOOR, cell, up.low(), none, false);
      }
    }
    return sketch.on(across, up);
  }

  /** The room that each cell has left when the first one ends. */
  private static double[] roomBeyondFirst(List<Estimate.Known> ends) {
    double[] at = ends.stream().mapToDouble(Estimate.Known::value).toArray();
    double first = Arrays.stream(at).min().orElseThrow();
    return Arrays.stream(at).map(end -> end - first).toArray();
  }

  /** Which cell stops the string on one side, or that none stands out. */
  private String side(String key, List<Estimate.Known> ends) {
    int first = ends.indexOf(Collections.min(ends, comparingDouble(Estimate.Known::value)));
    boolean standsOut =
        IntStream.range(0, ends.size())
            .filter(other -> other != first)
            .allMatch(other -> ends.get(other).minus(ends.get(first)).isAbove(0));
    return standsOut
        ? subject.words().say(key + ".cell", subject.words().cell(cells.get(first)))
        : words(key + ".none");
  }

  private DataTable table(double[] top, double[] bottom) {
    List<String> headers =
        List.of(
            words("column.cell"),
            subject.words().say("column.room-top", unit),
            subject.words().say("column.room-bottom", unit));
    List<List<String>> rows = new ArrayList<>();
    for (int cell = 1; cell <= subject.cells(); cell++) {
      int i = cells.indexOf(cell);
      rows.add(
          List.of(
              Integer.toString(cell),
              i < 0 ? words("none") : text(top[i]),
              i < 0 ? words("none") : text(bottom[i])));
    }
    return new DataTable(headers, rows);
  }

  private String text(double room) {
    return Numbers.text(room, 1);
  }

  private String words(String key) {
    return subject.words().say(key);
  }
}
