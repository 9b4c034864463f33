package sagbook.report.chart;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.IntToDoubleFunction;
import sagbook.evidence.Edge;
import sagbook.report.words.Numbers;

/**
 * How the cells' voltages answer clean steps of current: what a resistance is made from. Each
 * answer is divided by its step, so that all of them lie on one scale; without current the middle
 * cell's answer stands for the step.
 */
final class EdgePlate {
  private static final int HEIGHT = 340;

  /** Width of the widest drawing, px, for thinning. */
  private static final int DRAWN_WIDTH = 490;

  private static final double TOLERANCE = 0.25;

  /**
   * A step below this share of the largest answers in few steps of the boards' resolution and would
   * draw noise only. Common practice, no source.
   */
  private static final double LARGE_ENOUGH = 0.25;

  /**
   * The answers to one step.
   *
   * @param edge the step
   * @param answer [cell][sample], mΩ, or per cent of the middle cell's where no current is logged
   */
  private record Step(Edge edge, double[][] answer) {}

  private final Subject subject;
  private final boolean counted;
  private final List<Step> steps;
  private final double[] offsetS;
  private final double[][] middle;
  private final int at;

  private EdgePlate(Subject subject, List<Edge> edges) {
    this.subject = subject;
    this.counted = subject.bank().evidence().channels().hasCurrent();
    this.at = at(subject, edges.get(0));
    this.steps = edges.stream().map(edge -> new Step(edge, answer(edge))).toList();
    this.offsetS = new double[edges.get(0).offsetS().length];
    Arrays.setAll(
        offsetS,
        i -> Subject.median(edges.stream().mapToDouble(edge -> edge.offsetS()[i]).toArray()));
    this.middle = new double[subject.cells()][offsetS.length];
    for (int cell = 1; cell <= middle.length; cell++) {
      for (int i = 0; i < offsetS.length; i++) {
        middle[cell - 1][i] = Subject.median(seen(cell, i));
      }
    }
  }

  /** The plate of the clean steps that are large enough. */
  static Optional<Plate> of(Subject subject) {
    List<Edge> clean =
        subject.bank().evidence().edges().stream()
            .filter(Edge::clean)
            .filter(edge -> edge.offsetS()[at(subject, edge)] >= 0)
            .toList();
    double largest = clean.stream().mapToDouble(edge -> size(subject, edge)).max().orElse(0);
    List<Edge> usable =
        clean.stream()
            .filter(edge -> size(subject, edge) > 0)
            .filter(edge -> size(subject, edge) >= LARGE_ENOUGH * largest)
            .toList();
    return usable.isEmpty()
        ? Optional.empty()
        : Optional.of(new EdgePlate(subject, usable).plate());
  }

  /** The last sample within the pulse that resistances are stated for. */
  private static int at(Subject subject, Edge edge) {
    double pulse = subject.bank().estimates().resistancePulseS();
    int last = 0;
    for (int i = 0; i < edge.offsetS().length; i++) {
      if (edge.offsetS()[i] >= 0 && (edge.offsetS()[i] <= pulse || edge.offsetS()[last] < 0)) {
        last = i;
      }
    }
    return last;
  }

  private static double size(Subject subject, Edge edge) {
    return Double.isFinite(edge.stepA())
        ? Math.abs(edge.stepA())
        : Math.abs(moved(edge, at(subject, edge)));
  }

  /** Change of the middle cell, mV. */
  private static double moved(Edge edge, int at) {
    return Subject.median(
        Arrays.stream(edge.voltageV()).mapToDouble(volts -> change(edge, volts)[at]).toArray());
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

  private double[][] answer(Edge edge) {
    double by = counted ? edge.stepA() : moved(edge, at) / 100;
    return Arrays.stream(edge.voltageV())
        .map(volts -> Arrays.stream(change(edge, volts)).map(mV -> mV / by).toArray())
        .toArray(double[][]::new);
  }

  /** What all steps tell of a cell at one sample. */
  private double[] seen(int cell, int sample) {
    return steps.stream()
        .mapToDouble(step -> step.answer()[cell - 1][sample])
        .filter(Double::isFinite)
        .toArray();
  }

  /** The cells picked out; where none is, the one that answers most and the one that does least. */
  private Set<Integer> shown() {
    Set<Integer> shown = new TreeSet<>();
    List<Integer> known = new ArrayList<>();
    for (int cell = 1; cell <= middle.length; cell++) {
      if (subject.picks().of(cell) > 0) {
        shown.add(cell);
      }
      if (Double.isFinite(middle[cell - 1][at])) {
        known.add(cell);
      }
    }
    if (shown.isEmpty() && !known.isEmpty()) {
      known.sort(Comparator.comparingDouble(cell -> middle[cell - 1][at]));
      shown.add(known.get(0));
      shown.add(known.get(known.size() - 1));
    }
    return shown;
  }

  private Plate plate() {
    String title = title();
    List<String> items = new ArrayList<>();
    for (int cell = 1; cell <= middle.length; cell++) {
      items.add(say("plate.edge.item", Integer.toString(cell), answer(middle[cell - 1][at])));
    }
    String alternative = subject.inWords(say("plate.edge.alternative", moment()), items);
    String svg = PlotSvg.of(plot(), HEIGHT, title + " " + alternative);
    String caption =
        say(
            counted ? "plate.edge.caption" : "plate.edge.caption.unknown",
            steps.size() == 1
                ? say("plate.edge.steps.one")
                : say("plate.edge.steps", Integer.toString(steps.size())));
    return new Plate("edge", title, caption, svg, alternative, table());
  }

  /** When the answer was read, in words. */
  private String moment() {
    double after = offsetS[at];
    return after == 0
        ? say("plate.edge.first")
        : say("plate.edge.later", Numbers.with(Numbers.significant(after, 2), "s"));
  }

  private Plot plot() {
    Plot.Sketch sketch = new Plot.Sketch();
    Set<Integer> shown = shown();
    double low = 0;
    double high = 0;
    for (int cell = 1; cell <= middle.length; cell++) {
      for (int i = 0; i < offsetS.length; i++) {
        double[] drawn = shown.contains(cell) ? seen(cell, i) : new double[] {middle[cell - 1][i]};
        for (double value : drawn) {
          low = Math.min(low, Double.isFinite(value) ? value : 0);
          high = Math.max(high, Double.isFinite(value) ? value : 0);
        }
      }
    }
    Axis across =
        Axis.between(say("axis.seconds-after"), offsetS[0], offsetS[offsetS.length - 1], 8);
    Axis up = Axis.around(say(counted ? "axis.answer" : "axis.answer.share"), low, high, 6);
    shown.forEach(cell -> traces(sketch, cell, across, up));
    for (int cell = 1; cell <= middle.length; cell++) {
      Ink ink = subject.picks().ink(Role.CURVE, cell);
      String name = subject.words().cell(cell);
      double last = middle[cell - 1][offsetS.length - 1];
      sketch.line(ink, offsetS, middle[cell - 1], name);
      if (shown.contains(cell) && Double.isFinite(last)) {
        sketch.note(Plot.Place.MARGIN, 0, last, name, ink.pick() > 0);
      }
    }
    return sketch.on(across, up);
  }

  /** Every single answer of a cell, without the points that nobody would see missing. */
  private void traces(Plot.Sketch sketch, int cell, Axis across, Axis up) {
    for (Step step : steps) {
      double[] x = step.edge().offsetS();
      double[] y = step.answer()[cell - 1];
      if (Arrays.stream(y).allMatch(Double::isFinite)) {
        int[] kept =
            Thinning.kept(across.onPaper(x, DRAWN_WIDTH), up.onPaper(y, HEIGHT), TOLERANCE);
        x = Thinning.take(x, kept);
        y = Thinning.take(y, kept);
      }
      sketch.line(subject.picks().ink(Role.TRACE, cell), x, y, tip(step, cell));
    }
  }

  private String tip(Step step, int cell) {
    String when = time(step);
    return counted
        ? say(
            "plate.edge.tip",
            subject.words().cell(cell),
            when,
            Numbers.with(Numbers.text(step.edge().stepA(), 0), "A"),
            answer(step.answer()[cell - 1][at]))
        : say(
            "plate.edge.tip.unknown",
            subject.words().cell(cell),
            when,
            answer(step.answer()[cell - 1][at]));
  }

  private String title() {
    int furthest = 1;
    double most = 0;
    for (int cell = 1; cell <= middle.length; cell++) {
      // A cell that was not read at that moment is NaN and never the furthest.
      if (Math.abs(middle[cell - 1][at]) > most) {
        furthest = cell;
        most = Math.abs(middle[cell - 1][at]);
      }
    }
    double usual =
        Subject.median(Arrays.stream(middle).mapToDouble(course -> course[at]).toArray());
    return counted
        ? say(
            "plate.edge.title",
            subject.words().cellFirst(furthest),
            answer(most),
            answer(usual),
            moment())
        : say(
            "plate.edge.title.unknown",
            subject.words().cellFirst(furthest),
            answer(most),
            moment());
  }

  /** The middle of all steps, then step by step; one column a cell. */
  private DataTable table() {
    List<String> headers = new ArrayList<>(List.of(say("column.step")));
    if (counted) {
      headers.add(say("column.step-size"));
    }
    String unit = counted ? "mΩ" : "%";
    for (int cell = 1; cell <= middle.length; cell++) {
      headers.add(say("column.answer", subject.words().cellFirst(cell), unit));
    }
    List<List<String>> rows = new ArrayList<>();
    rows.add(row(say("column.step.middle"), "", cell -> middle[cell - 1][at]));
    for (Step step : steps) {
      String size = counted ? Numbers.text(step.edge().stepA(), 1) : "";
      rows.add(row(time(step), size, cell -> step.answer()[cell - 1][at]));
    }
    return new DataTable(headers, rows);
  }

  private List<String> row(String name, String size, IntToDoubleFunction answerOf) {
    List<String> row = new ArrayList<>(List.of(name));
    if (counted) {
      row.add(size);
    }
    for (int cell = 1; cell <= middle.length; cell++) {
      double answer = answerOf.applyAsDouble(cell);
      row.add(Double.isFinite(answer) ? number(answer) : say("not-logged"));
    }
    return row;
  }

  private String time(Step step) {
    Instant time = Instant.ofEpochSecond(Math.round(step.edge().timeS()));
    return subject.words().time(time, subject.pack().timezone());
  }

  private String number(double answer) {
    return Numbers.significant(answer, counted ? 2 : 3);
  }

  private String answer(double answer) {
    return Double.isFinite(answer)
        ? Numbers.with(number(answer), counted ? "mΩ" : "%")
        : say("not-logged");
  }

  private String say(String key, String... filled) {
    return subject.words().say(key, filled);
  }
}
