package sagbook.report.chart;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import sagbook.evidence.Edge;

/**
 * The cells' answers to the clean steps of current that are large enough to be seen over the
 * boards' resolution. Each is divided by its step, so that all of them lie on one scale; without
 * current the middle cell's answer stands for the step.
 */
final class EdgeAnswers {
  /**
   * A step below this share of the largest answers in few steps of the boards' resolution and would
   * draw noise only. Common practice, no source.
   */
  private static final double LARGE_ENOUGH = 0.25;

  /**
   * So many spreads of the middle half beyond it an answer is "far out" (Tukey, Exploratory Data
   * Analysis, 1977, section 2D).
   */
  private static final double FAR_OUT = 3;

  /**
   * The answers to one step.
   *
   * @param edge the step
   * @param answer [cell][sample], mΩ, or per cent of the middle cell's where no current is logged
   */
  record Step(Edge edge, double[][] answer) {}

  private final boolean counted;
  private final List<Step> steps;
  private final double[] offsetS;
  private final double[][] middle;
  private final int at;

  private EdgeAnswers(Subject subject, List<Edge> edges) {
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
        middle[cell - 1][i] = Subject.median(seen(cell, i).toArray());
      }
    }
  }

  static Optional<EdgeAnswers> of(Subject subject) {
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
    return usable.isEmpty() ? Optional.empty() : Optional.of(new EdgeAnswers(subject, usable));
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
  private DoubleStream seen(int cell, int sample) {
    return steps.stream()
        .mapToDouble(step -> step.answer()[cell - 1][sample])
        .filter(Double::isFinite);
  }

  /** Whether answers are in mΩ; else in per cent of the middle cell's. */
  boolean counted() {
    return counted;
  }

  List<Step> steps() {
    return steps;
  }

  int cells() {
    return middle.length;
  }

  /** When the samples were read, s after the first that shows the step. */
  double[] offsetS() {
    return offsetS.clone();
  }

  /** The middle of all steps for a cell, sample by sample; NaN where it was never read. */
  double[] middle(int cell) {
    return middle[cell - 1].clone();
  }

  /** A cell's answer at the moment that resistances are stated for, or NaN. */
  double stated(int cell) {
    return middle[cell - 1][at];
  }

  /** A cell's answer to one step at that moment, or NaN. */
  double stated(Step step, int cell) {
    return step.answer()[cell - 1][at];
  }

  /** That moment, s after the first sample that shows the step. */
  double momentS() {
    return offsetS[at];
  }

  /** The cell that answers most. */
  int furthest() {
    // A cell that was not read at that moment is NaN and never the furthest.
    return IntStream.rangeClosed(1, cells())
        .filter(cell -> Double.isFinite(stated(cell)))
        .boxed()
        .reduce((most, cell) -> Math.abs(stated(cell)) > Math.abs(stated(most)) ? cell : most)
        .orElse(1);
  }

  /** Lowest and highest of a cell's answers, those steps left out that anywhere lie far out. */
  double[] bulk(int cell) {
    double[][] fences =
        IntStream.range(0, offsetS.length).mapToObj(i -> fences(cell, i)).toArray(double[][]::new);
    double[] within =
        steps.stream()
            .map(step -> step.answer()[cell - 1])
            .filter(answer -> isWithin(answer, fences))
            .flatMapToDouble(Arrays::stream)
            .filter(Double::isFinite)
            .sorted()
            .toArray();
    return within.length == 0 ? within : new double[] {within[0], within[within.length - 1]};
  }

  /** Below the first and above the second a cell's answer at one sample is far out. */
  private double[] fences(int cell, int sample) {
    double[] sorted = seen(cell, sample).sorted().toArray();
    if (sorted.length == 0) {
      return new double[] {0, 0};
    }
    int quarter = (sorted.length - 1) / 4;
    double first = sorted[quarter];
    double third = sorted[sorted.length - 1 - quarter];
    double reach = FAR_OUT * (third - first);
    return new double[] {first - reach, third + reach};
  }

  private static boolean isWithin(double[] answer, double[][] fences) {
    return IntStream.range(0, answer.length)
        .noneMatch(i -> answer[i] < fences[i][0] || answer[i] > fences[i][1]);
  }
}
