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
import java.util.stream.IntStream;
import sagbook.report.words.Numbers;

/**
 * How the cells' voltages answer clean steps of current: what a resistance is made from. Single
 * answers that lie far out leave the frame instead of setting its scale.
 */
final class EdgePlate {
  private static final int HEIGHT = 340;

  /** Width of the widest drawing, px, for thinning. */
  private static final int DRAWN_WIDTH = 490;

  private static final double TOLERANCE = 0.25;

  private final Subject subject;
  private final EdgeAnswers answers;
  private final Set<Integer> shown;
  private final Axis across;
  private final Axis up;

  private EdgePlate(Subject subject, EdgeAnswers answers) {
    this.subject = subject;
    this.answers = answers;
    this.shown = shown();
    double[] offsetS = answers.offsetS();
    this.across =
        Axis.between(say("axis.seconds-after"), offsetS[0], offsetS[offsetS.length - 1], 8);
    this.up = up();
  }

  /** The plate of the clean steps that are large enough. */
  static Optional<Plate> of(Subject subject) {
    return EdgeAnswers.of(subject).map(answers -> new EdgePlate(subject, answers).plate());
  }

  /** The cells picked out; where none is, the one that answers most and the one that does least. */
  private Set<Integer> shown() {
    Set<Integer> picked = new TreeSet<>();
    List<Integer> known = new ArrayList<>();
    for (int cell = 1; cell <= answers.cells(); cell++) {
      if (subject.picks().of(cell) > 0) {
        picked.add(cell);
      }
      if (Double.isFinite(answers.stated(cell))) {
        known.add(cell);
      }
    }
    if (picked.isEmpty() && !known.isEmpty()) {
      known.sort(Comparator.comparingDouble(answers::stated));
      picked.add(known.get(0));
      picked.add(known.get(known.size() - 1));
    }
    return picked;
  }

  /** High enough for every curve and for what is not far out of the single answers. */
  private Axis up() {
    double low = 0;
    double high = 0;
    for (int cell = 1; cell <= answers.cells(); cell++) {
      double[] drawn = shown.contains(cell) ? answers.bulk(cell) : new double[] {};
      for (double[] values : List.of(drawn, answers.middle(cell))) {
        for (double value : values) {
          low = Math.min(low, Double.isFinite(value) ? value : 0);
          high = Math.max(high, Double.isFinite(value) ? value : 0);
        }
      }
    }
    return Axis.around(say(answers.counted() ? "axis.answer" : "axis.answer.share"), low, high, 6);
  }

  private Plate plate() {
    String title = title();
    List<String> items = new ArrayList<>();
    for (int cell = 1; cell <= answers.cells(); cell++) {
      items.add(say("plate.edge.item", Integer.toString(cell), answer(answers.stated(cell))));
    }
    String alternative = subject.inWords(say("plate.edge.alternative", moment()), items);
    String svg = PlotSvg.of(plot(), HEIGHT, title + " " + alternative);
    return new Plate("edge", title, caption(), svg, alternative, table());
  }

  private String caption() {
    int steps = answers.steps().size();
    String caption =
        say(
            answers.counted() ? "plate.edge.caption" : "plate.edge.caption.unknown",
            steps == 1
                ? say("plate.edge.steps.one")
                : say("plate.edge.steps", Integer.toString(steps)));
    long outside =
        shown.stream()
            .flatMap(cell -> answers.steps().stream().map(step -> course(step, cell)))
            .filter(course -> course.leaves(up.low(), up.high()))
            .count();
    return outside == 0
        ? caption
        : caption
            + " "
            + say(
                outside == 1 ? "plate.edge.outside.one" : "plate.edge.outside",
                Long.toString(outside),
                Integer.toString(shown.size() * steps));
  }

  private static Course course(EdgeAnswers.Step step, int cell) {
    return new Course(step.edge().offsetS(), step.answer()[cell - 1]);
  }

  /** When the answer was read, in words. */
  private String moment() {
    double after = answers.momentS();
    return after == 0
        ? say("plate.edge.first")
        : say("plate.edge.later", Numbers.with(Numbers.significant(after, 2), "s"));
  }

  private Plot plot() {
    Plot.Sketch sketch = new Plot.Sketch();
    shown.forEach(cell -> answers.steps().forEach(step -> trace(sketch, step, cell)));
    double[] offsetS = answers.offsetS();
    for (int cell = 1; cell <= answers.cells(); cell++) {
      Ink ink = subject.picks().ink(Role.CURVE, cell);
      String name = subject.words().cell(cell);
      double[] middle = answers.middle(cell);
      double last = middle[offsetS.length - 1];
      sketch.line(ink, offsetS, middle, name);
      boolean named = shown.contains(cell) || cell == answers.furthest();
      if (named && Double.isFinite(last)) {
        sketch.note(Plot.Place.MARGIN, 0, last, name, ink.pick() > 0);
      }
    }
    return sketch.on(across, up);
  }

  /** One answer of a cell, without the points that nobody would see missing. */
  private void trace(Plot.Sketch sketch, EdgeAnswers.Step step, int cell) {
    Course course = course(step, cell);
    if (Arrays.stream(course.y()).allMatch(Double::isFinite)) {
      int[] kept =
          Thinning.kept(
              across.onPaper(course.x(), DRAWN_WIDTH), up.onPaper(course.y(), HEIGHT), TOLERANCE);
      course = new Course(Thinning.take(course.x(), kept), Thinning.take(course.y(), kept));
    }
    Course drawn = course.within(up.low(), up.high());
    sketch.line(subject.picks().ink(Role.TRACE, cell), drawn.x(), drawn.y(), tip(step, cell));
  }

  private String tip(EdgeAnswers.Step step, int cell) {
    String when = time(step);
    String answer = answer(answers.stated(step, cell));
    return answers.counted()
        ? say(
            "plate.edge.tip",
            subject.words().cell(cell),
            when,
            Numbers.with(Numbers.text(step.edge().stepA(), 0), "A"),
            answer)
        : say("plate.edge.tip.unknown", subject.words().cell(cell), when, answer);
  }

  private String title() {
    int furthest = answers.furthest();
    String name = subject.words().cellFirst(furthest);
    String most = answer(Math.abs(answers.stated(furthest)));
    double usual =
        Subject.median(
            IntStream.rangeClosed(1, answers.cells()).mapToDouble(answers::stated).toArray());
    return answers.counted()
        ? say("plate.edge.title", name, most, answer(usual), moment())
        : say("plate.edge.title.unknown", name, most, moment());
  }

  /** The middle of all steps, then step by step; one column a cell. */
  private DataTable table() {
    List<String> headers = new ArrayList<>(List.of(say("column.step")));
    if (answers.counted()) {
      headers.add(say("column.step-size"));
    }
    String unit = answers.counted() ? "mΩ" : "%";
    for (int cell = 1; cell <= answers.cells(); cell++) {
      headers.add(say("column.answer", subject.words().cellFirst(cell), unit));
    }
    List<List<String>> rows = new ArrayList<>();
    rows.add(row(say("column.step.middle"), "", answers::stated));
    for (EdgeAnswers.Step step : answers.steps()) {
      String size = answers.counted() ? Numbers.text(step.edge().stepA(), 1) : "";
      rows.add(row(time(step), size, cell -> answers.stated(step, cell)));
    }
    return new DataTable(headers, rows);
  }

  private List<String> row(String name, String size, IntToDoubleFunction answerOf) {
    List<String> row = new ArrayList<>(List.of(name));
    if (answers.counted()) {
      row.add(size);
    }
    for (int cell = 1; cell <= answers.cells(); cell++) {
      double answer = answerOf.applyAsDouble(cell);
      row.add(Double.isFinite(answer) ? number(answer) : say("not-logged"));
    }
    return row;
  }

  private String time(EdgeAnswers.Step step) {
    Instant time = Instant.ofEpochSecond(Math.round(step.edge().timeS()));
    return subject.words().time(time, subject.pack().timezone());
  }

  private String number(double answer) {
    return Numbers.significant(answer, answers.counted() ? 2 : 3);
  }

  private String answer(double answer) {
    return Double.isFinite(answer)
        ? Numbers.with(number(answer), answers.counted() ? "mΩ" : "%")
        : say("not-logged");
  }

  private String say(String key, String... filled) {
    return subject.words().say(key, filled);
  }
}
