package sagbook.report.chart;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.IntFunction;
import sagbook.model.Estimate;
import sagbook.model.Finding;
import sagbook.report.words.Numbers;

/** One estimated quantity, cell by cell, with its intervals. */
final class EstimatePlate {
  private static final int HEIGHT = 320;

  private final Subject subject;
  private final String key;
  private final String unit;
  private final IntFunction<Estimate> of;
  private final IntFunction<Estimate> other;
  private final boolean highIsWeak;
  private final List<Integer> known = new ArrayList<>();

  private EstimatePlate(
      Subject subject,
      String key,
      String unit,
      IntFunction<Estimate> of,
      IntFunction<Estimate> other,
      boolean highIsWeak) {
    this.subject = subject;
    this.key = key;
    this.unit = unit;
    this.of = of;
    this.other = other;
    this.highIsWeak = highIsWeak;
    for (int cell = 1; cell <= subject.cells(); cell++) {
      if (of.apply(cell) instanceof Estimate.Known) {
        known.add(cell);
      }
    }
  }

  /** Resistances in milliohm, or relative where current is not logged. */
  static Optional<Plate> resistance(Subject subject) {
    EstimatePlate absolute =
        new EstimatePlate(
            subject,
            "plate.resistance",
            "mΩ",
            c -> subject.verdict(c).estimates().resistanceMilliohm(),
            c -> withoutJoint(subject, c),
            true);
    EstimatePlate relative =
        new EstimatePlate(
            subject,
            "plate.resistance-relative",
            "%",
            c -> subject.verdict(c).estimates().resistanceRelative().map(r -> r * 100),
            c -> Estimate.unknown("-"),
            true);
    return absolute.or(relative);
  }

  /** Capacities in ampere-hours, or relative where current is not logged. */
  static Optional<Plate> capacity(Subject subject) {
    EstimatePlate absolute =
        new EstimatePlate(
            subject,
            "plate.capacity",
            "Ah",
            c -> subject.verdict(c).estimates().capacityAh(),
            c -> Estimate.unknown("-"),
            false);
    EstimatePlate relative =
        new EstimatePlate(
            subject,
            "plate.capacity-relative",
            "%",
            c -> subject.verdict(c).estimates().capacityRelative().map(r -> r * 100),
            c -> Estimate.unknown("-"),
            false);
    return absolute.or(relative);
  }

  /** What is left of the resistance without the part that marks a joint, where there is such. */
  private static Estimate withoutJoint(Subject subject, int cell) {
    Estimate whole = subject.verdict(cell).estimates().resistanceMilliohm();
    Estimate joint = subject.verdict(cell).estimates().ohmicExcessMilliohm();
    if (whole instanceof Estimate.Known r
        && joint instanceof Estimate.Known j
        && j.isAbove(0)
        && j.value() < r.value()) {
      return r.minus(j);
    }
    return Estimate.unknown("-");
  }

  private Optional<Plate> or(EstimatePlate otherwise) {
    EstimatePlate best = known.size() >= otherwise.known.size() ? this : otherwise;
    return best.known.isEmpty() ? Optional.empty() : Optional.of(best.plate());
  }

  private Plate plate() {
    String title = title();
    DataTable table = table();
    List<String> items = new ArrayList<>();
    for (int cell = 1; cell <= subject.cells(); cell++) {
      items.add(subject.words().cell(cell) + " " + text(of.apply(cell)));
    }
    String alternative = subject.inWords(words(".alternative"), items);
    String svg = PlotSvg.of(plot(), HEIGHT, title + " " + alternative);
    String pulse =
        Numbers.with(Numbers.significant(subject.bank().estimates().resistancePulseS(), 2), "s");
    String caption = subject.words().say(key + ".caption", pulse);
    return new Plate(key.substring(6), title, caption, svg, alternative, table);
  }

  private Plot plot() {
    Plot.Sketch sketch = new Plot.Sketch();
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (int cell : known) {
      Estimate.Known estimate = (Estimate.Known) of.apply(cell);
      low = Math.min(low, estimate.low());
      high = Math.max(high, estimate.high());
      if (other.apply(cell) instanceof Estimate.Known without) {
        low = Math.min(low, without.value());
      }
    }
    Axis across = Axis.cells(subject.words().say("axis.cell"), subject.cells());
    Axis up = Axis.around(words(".axis"), low, high, 6);
    double middle = middle();
    sketch.line(
        new Ink(Role.RULE, 0, 0),
        new double[] {across.low(), across.high()},
        new double[] {middle, middle},
        "");
    sketch.note(Plot.Place.MARGIN, 0, middle, subject.words().say("middle"), false);
    for (int cell = 1; cell <= subject.cells(); cell++) {
      mark(sketch, cell, up.low());
    }
    return sketch.on(across, up);
  }

  private void mark(Plot.Sketch sketch, int cell, double floor) {
    if (!(of.apply(cell) instanceof Estimate.Known estimate)) {
      String none = subject.words().say("none");
      sketch.note(Plot.Place.FLOOR, cell, floor, none, false);
      return;
    }
    String tip = subject.words().cell(cell) + ": " + text(estimate);
    if (other.apply(cell) instanceof Estimate.Known without) {
      sketch.point(subject.picks().ink(Role.OTHER_MARK, cell), cell, without.value(), tip);
    }
    sketch.span(subject.picks().ink(Role.SPAN, cell), cell, estimate.low(), estimate.high(), tip);
    sketch.point(subject.picks().ink(Role.MARK, cell), cell, estimate.value(), tip);
    if (subject.picks().of(cell) > 0) {
      sketch.note(Plot.Place.ABOVE, cell, estimate.high(), subject.words().cell(cell), true);
    }
  }

  private String title() {
    List<Estimate.Known> all = known.stream().map(c -> (Estimate.Known) of.apply(c)).toList();
    Comparator<Integer> byValue =
        Comparator.comparingDouble(c -> ((Estimate.Known) of.apply(c)).value());
    int weakest = known.stream().max(highIsWeak ? byValue : byValue.reversed()).orElseThrow();
    Estimate.Known worst = (Estimate.Known) of.apply(weakest);
    double middle = middle();
    boolean apart = highIsWeak ? worst.isAbove(middle) : worst.isBelow(middle);
    Finding finding = subject.verdict(weakest).finding();
    if (!apart || finding == Finding.HEALTHY) {
      Estimate.Known least =
          all.stream().min(Comparator.comparingDouble(Estimate.Known::value)).orElseThrow();
      Estimate.Known most =
          all.stream().max(Comparator.comparingDouble(Estimate.Known::value)).orElseThrow();
      return subject
          .words()
          .say(
              key + (apart ? ".title.within" : ".title.alike"),
              Numbers.value(least),
              Numbers.with(Numbers.value(most), unit),
              subject.words().cell(weakest));
    }
    if (finding == Finding.CONNECTION && other.apply(weakest) instanceof Estimate.Known without) {
      double joint = worst.value() - without.value();
      return subject
          .words()
          .say(
              key + ".title.joint",
              subject.words().cellFirst(weakest),
              Numbers.with(Numbers.value(worst), unit),
              Numbers.with(Numbers.rounded(middle, worst), unit),
              Numbers.with(Numbers.rounded(joint, worst), unit));
    }
    return subject
        .words()
        .say(
            key + ".title",
            subject.words().cellFirst(weakest),
            Numbers.with(Numbers.value(worst), unit),
            Numbers.with(Numbers.rounded(middle, worst), unit));
  }

  private double middle() {
    return Subject.median(
        known.stream().mapToDouble(c -> ((Estimate.Known) of.apply(c)).value()).toArray());
  }

  private DataTable table() {
    List<String> headers =
        new ArrayList<>(
            List.of(
                subject.words().say("column.cell"),
                subject.words().say("column.value", unit),
                subject.words().say("column.low", unit),
                subject.words().say("column.high", unit)));
    boolean hasOther = known.stream().anyMatch(c -> other.apply(c) instanceof Estimate.Known);
    if (hasOther) {
      headers.add(words(".other"));
    }
    List<List<String>> rows = new ArrayList<>();
    for (int cell = 1; cell <= subject.cells(); cell++) {
      List<String> row = new ArrayList<>(List.of(Integer.toString(cell)));
      if (of.apply(cell) instanceof Estimate.Known e) {
        row.addAll(List.of(Numbers.value(e), Numbers.low(e), Numbers.high(e)));
      } else {
        String none = subject.words().say("none");
        row.addAll(List.of(none, none, none));
      }
      if (hasOther) {
        row.add(other.apply(cell) instanceof Estimate.Known o ? Numbers.value(o) : "");
      }
      rows.add(row);
    }
    return new DataTable(headers, rows);
  }

  private String text(Estimate estimate) {
    return estimate instanceof Estimate.Known k
        ? subject.words().say("interval", Numbers.value(k), unit, Numbers.low(k), Numbers.high(k))
        : subject.words().say("none");
  }

  private String words(String suffix) {
    return subject.words().say(key + suffix);
  }
}
