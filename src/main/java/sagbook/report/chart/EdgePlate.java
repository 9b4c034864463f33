package sagbook.report.chart;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import sagbook.evidence.Edge;
import sagbook.report.words.Numbers;

/** How every cell's voltage answers one clean current step: what a resistance is made from. */
final class EdgePlate {
  private static final int HEIGHT = 340;

  private final Subject subject;
  private final Edge edge;
  private final double[][] change;
  private final int at;

  private EdgePlate(Subject subject, Edge edge) {
    this.subject = subject;
    this.edge = edge;
    this.change = new double[edge.voltageV().length][];
    for (int i = 0; i < change.length; i++) {
      change[i] = change(edge, edge.voltageV()[i]);
    }
    double pulse = subject.bank().estimates().resistancePulseS();
    int last = 0;
    for (int i = 0; i < edge.offsetS().length; i++) {
      if (edge.offsetS()[i] >= 0 && (edge.offsetS()[i] <= pulse || edge.offsetS()[last] < 0)) {
        last = i;
      }
    }
    this.at = last;
  }

  /** The plate of the largest of the kept clean steps. */
  static Optional<Plate> of(Subject subject) {
    Edge best = null;
    double most = 0;
    for (Edge edge : subject.bank().evidence().edges()) {
      EdgePlate tried = new EdgePlate(subject, edge);
      double size = Math.abs(tried.middle());
      if (edge.clean() && edge.offsetS()[tried.at] >= 0 && size > most) {
        most = size;
        best = edge;
      }
    }
    return best == null ? Optional.empty() : Optional.of(new EdgePlate(subject, best).plate());
  }

  /** Change against the mean before the step, mV; NaN where a sample is missing. */
  private static double[] change(Edge edge, double[] volts) {
    double sum = 0;
    int count = 0;
    for (int i = 0; i < volts.length; i++) {
      if (edge.offsetS()[i] < 0 && Double.isFinite(volts[i])) {
        sum += volts[i];
        count++;
      }
    }
    double before = count == 0 ? Double.NaN : sum / count;
    return Arrays.stream(volts).map(v -> (v - before) * 1000).toArray();
  }

  private double middle() {
    return Subject.median(Arrays.stream(change).mapToDouble(c -> c[at]).toArray());
  }

  private Plate plate() {
    String title = title();
    DataTable table = table();
    List<String> items = new ArrayList<>();
    for (List<String> row : table.rows()) {
      items.add(subject.words().say("plate.edge.item", row.get(0), row.get(1)));
    }
    String after = moment();
    String alternative =
        subject.inWords(subject.words().say("plate.edge.alternative", after), items);
    String svg = PlotSvg.of(plot(), HEIGHT, title + " " + alternative);
    String when =
        subject
            .words()
            .time(Instant.ofEpochSecond(Math.round(edge.timeS())), subject.pack().timezone());
    String caption = subject.words().say("plate.edge.caption", when);
    return new Plate("edge", title, caption, svg, alternative, table);
  }

  /** When the change was read, in words. */
  private String moment() {
    double after = edge.offsetS()[at];
    return after == 0
        ? subject.words().say("plate.edge.first")
        : subject.words().say("plate.edge.later", Numbers.with(Numbers.significant(after, 2), "s"));
  }

  private Plot plot() {
    Plot.Sketch sketch = new Plot.Sketch();
    double low = 0;
    double high = 0;
    for (double[] course : change) {
      for (double millivolt : course) {
        if (Double.isFinite(millivolt)) {
          low = Math.min(low, millivolt);
          high = Math.max(high, millivolt);
        }
      }
    }
    double[] offset = edge.offsetS();
    Axis across =
        Axis.between(
            subject.words().say("axis.seconds-after"), offset[0], offset[offset.length - 1], 8);
    Axis up = Axis.around(subject.words().say("axis.voltage-change"), low, high, 6);
    for (int cell = 1; cell <= change.length; cell++) {
      Ink ink = subject.picks().ink(Role.CURVE, cell);
      String name = subject.words().cell(cell);
      sketch.line(ink, offset, change[cell - 1], name);
      if (ink.pick() > 0 && Double.isFinite(change[cell - 1][offset.length - 1])) {
        sketch.note(Plot.Place.MARGIN, 0, change[cell - 1][offset.length - 1], name, true);
      }
    }
    return sketch.on(across, up);
  }

  private String title() {
    double middle = middle();
    int furthest = 1;
    double most = 0;
    for (int cell = 1; cell <= change.length; cell++) {
      // A cell that was not read at that moment is NaN and never the furthest.
      if (Math.abs(change[cell - 1][at]) > most) {
        furthest = cell;
        most = Math.abs(change[cell - 1][at]);
      }
    }
    String moved = millivolts(most);
    String cell = subject.words().cell(furthest);
    if (Double.isFinite(edge.stepA())) {
      String step = Numbers.with(Numbers.text(edge.stepA(), 0), "A");
      return subject
          .words()
          .say("plate.edge.title", step, cell, moved, millivolts(middle), moment());
    }
    return subject
        .words()
        .say("plate.edge.title.unknown", cell, moved, millivolts(middle), moment());
  }

  private DataTable table() {
    List<String> headers = new ArrayList<>();
    headers.add(subject.words().say("column.cell"));
    headers.add(subject.words().say("column.change", moment()));
    boolean counted = Double.isFinite(edge.stepA()) && edge.stepA() != 0;
    if (counted) {
      headers.add(subject.words().say("column.step-resistance"));
    }
    List<List<String>> rows = new ArrayList<>();
    for (int i = 0; i < change.length; i++) {
      double moved = change[i][at];
      List<String> row = new ArrayList<>();
      row.add(Integer.toString(i + 1));
      String none = subject.words().say("not-logged");
      row.add(Double.isFinite(moved) ? Numbers.text(moved, 1) : none);
      if (counted) {
        row.add(Double.isFinite(moved) ? Numbers.significant(moved / edge.stepA(), 2) : none);
      }
      rows.add(row);
    }
    return new DataTable(headers, rows);
  }

  private static String millivolts(double millivolt) {
    return Numbers.with(Numbers.text(Math.abs(millivolt), 0), "mV");
  }
}
