package sagbook.report.chart;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import sagbook.model.Estimate;
import sagbook.record.KeptCheck;
import sagbook.record.Quantity;
import sagbook.report.words.Numbers;
import sagbook.wording.Words;

/** One quantity of every cell of a bank over the checks of a season. */
public final class TrendPlate {
  private static final int HEIGHT = 360;

  /** How far ranges of different cells stand apart, as a share of the axis. */
  private static final double ASIDE = 0.006;

  private static final double SECONDS_A_DAY = 86_400;
  private static final int A_YEAR_DAYS = 360;

  private final List<KeptCheck.Bank> checks;
  private final Quantity quantity;
  private final Words words;
  private final Picks picks;
  private final List<Mark> marks;
  private final int cells;

  private TrendPlate(
      List<KeptCheck.Bank> checks, Quantity quantity, Words words, Picks picks, List<Mark> marks) {
    this.checks = checks;
    this.quantity = quantity;
    this.words = words;
    this.picks = picks;
    this.marks = marks;
    this.cells = checks.get(checks.size() - 1).cells().size();
  }

  /**
   * Something that happened.
   *
   * @param day when
   * @param text one or two words
   */
  public record Mark(LocalDate day, String text) {}

  /**
   * The plate, if at least two checks know the quantity.
   *
   * @param checks of one bank, oldest first
   */
  public static Optional<Plate> of(List<KeptCheck.Bank> checks, Quantity quantity, Words words) {
    return of(
        checks, quantity, words, Picks.ofKept(checks.get(checks.size() - 1).cells()), List.of());
  }

  /**
   * The plate with cells of the caller's choice picked out and events marked, if at least two
   * checks know the quantity.
   */
  public static Optional<Plate> of(
      List<KeptCheck.Bank> checks, Quantity quantity, Words words, Picks picks, List<Mark> marks) {
    List<KeptCheck.Bank> knowing =
        checks.stream()
            .filter(
                check ->
                    check.cells().stream()
                        .anyMatch(c -> c.estimate(quantity) instanceof Estimate.Known))
            .toList();
    return knowing.size() < 2
        ? Optional.empty()
        : Optional.of(new TrendPlate(knowing, quantity, words, picks, marks).plate());
  }

  private Plate plate() {
    String title = title();
    List<String> headers = new ArrayList<>(List.of(words.say("column.cell")));
    checks.forEach(check -> headers.add(day(check) + ", " + unit()));
    List<List<String>> rows = new ArrayList<>();
    List<String> items = new ArrayList<>();
    for (int cell = 1; cell <= cells; cell++) {
      List<String> row = new ArrayList<>(List.of(Integer.toString(cell)));
      for (KeptCheck.Bank check : checks) {
        row.add(
            estimate(check, cell) instanceof Estimate.Known known
                ? Numbers.value(known)
                : words.say("none"));
      }
      rows.add(row);
      items.add(words.cell(cell) + " " + String.join(", ", row.subList(1, row.size())));
    }
    String alternative =
        words.say("plate.trend.alternative", name(), unit()) + " " + String.join("; ", items) + ".";
    String svg = PlotSvg.of(plot(), HEIGHT, title + " " + alternative);
    return new Plate(
        "trend-" + quantity.key(),
        title,
        words.say("plate.trend.caption"),
        svg,
        alternative,
        new DataTable(headers, rows));
  }

  private Plot plot() {
    Plot.Sketch sketch = new Plot.Sketch();
    double[] x = checks.stream().mapToDouble(TrendPlate::daysSince1970).toArray();
    double span = x[x.length - 1] - x[0];
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (int cell = 1; cell <= cells; cell++) {
      Ink line = picks.ink(Role.CURVE, cell);
      double[] y = new double[x.length];
      for (int i = 0; i < x.length; i++) {
        y[i] = Double.NaN;
        if (estimate(checks.get(i), cell) instanceof Estimate.Known known) {
          y[i] = known.value();
          boolean picked = line.pick() > 0;
          low = Math.min(low, picked ? known.low() : known.value());
          high = Math.max(high, picked ? known.high() : known.value());
          if (picked) {
            double aside = x[i] + (line.pick() - 1) * span * ASIDE;
            sketch.span(picks.ink(Role.SPAN, cell), aside, known.low(), known.high(), "");
          }
        }
      }
      sketch.line(line, x, y, words.cell(cell));
      double last = y[y.length - 1];
      if ((line.pick() > 0 || cell == changed()) && Double.isFinite(last)) {
        sketch.note(Plot.Place.MARGIN, 0, last, words.cell(cell), line.pick() > 0);
      }
    }
    Axis across = across(x);
    Axis up = Axis.around(name() + ", " + unit(), low, high, 7);
    for (Mark mark : marks) {
      double at = mark.day().toEpochDay();
      if (at > across.low() && at < across.high()) {
        Ink rule = new Ink(Role.RULE, 0, 0);
        sketch.line(rule, new double[] {at, at}, new double[] {up.low(), up.high()}, mark.text());
        sketch.note(Plot.Place.FOOT, at, up.low(), mark.text(), false);
      }
    }
    return sketch.on(across, up);
  }

  private Axis across(double[] x) {
    List<Axis.Tick> ticks = new ArrayList<>();
    int step = (x.length + 7) / 8;
    for (int i = 0; i < x.length; i += step) {
      ticks.add(new Axis.Tick(x[i], day(checks.get(i))));
    }
    double air = Math.max(1, (x[x.length - 1] - x[0]) * 0.06);
    return new Axis(words.say("axis.check"), x[0] - air, x[x.length - 1] + air, ticks, true);
  }

  /** States the largest change that the ranges bear out. */
  private String title() {
    int most = changed();
    if (most == 0) {
      return words.say("plate.trend.title.none", name());
    }
    List<Estimate.Known> known = known(most);
    Estimate.Known before = known.get(0);
    Estimate.Known after = known.get(known.size() - 1);
    return words.say(
        "plate.trend.title",
        name(),
        words.cell(most),
        Numbers.value(before),
        Numbers.with(Numbers.value(after), unit()));
  }

  /** The cell that changed most of those whose ranges bear a change out; 0 for none. */
  private int changed() {
    int most = 0;
    double change = 0;
    for (int cell = 1; cell <= cells; cell++) {
      List<Estimate.Known> known = known(cell);
      if (known.size() > 1) {
        Estimate.Known before = known.get(0);
        Estimate.Known after = known.get(known.size() - 1);
        boolean clear = after.isAbove(before.high()) || after.isBelow(before.low());
        double moved = after.value() - before.value();
        if (clear && Math.abs(moved) > Math.abs(change)) {
          change = moved;
          most = cell;
        }
      }
    }
    return most;
  }

  /** What is known of a cell, oldest first. */
  private List<Estimate.Known> known(int cell) {
    return checks.stream()
        .map(check -> estimate(check, cell))
        .filter(Estimate.Known.class::isInstance)
        .map(Estimate.Known.class::cast)
        .toList();
  }

  private Estimate estimate(KeptCheck.Bank check, int cell) {
    Estimate none = Estimate.unknown(Words.english().say("unknown.not-kept"));
    return check.cells().stream()
        .filter(c -> c.cell() == cell)
        .max(Comparator.comparingInt(KeptCheck.Cell::rank))
        .map(c -> c.estimate(quantity))
        .map(e -> quantity.unit().equals("1") ? e.map(ratio -> ratio * 100) : e)
        .orElse(none);
  }

  private String name() {
    return words.say("quantity." + quantity.key());
  }

  private String unit() {
    return quantity.unit().equals("1") ? "%" : quantity.unit();
  }

  private String day(KeptCheck.Bank check) {
    LocalDate middle = LocalDate.ofInstant(middle(check), ZoneOffset.UTC);
    Instant first = middle(checks.get(0));
    Instant last = middle(checks.get(checks.size() - 1));
    return Duration.between(first, last).toDays() < A_YEAR_DAYS
        ? words.dayAndMonth(middle)
        : words.monthAndYear(middle);
  }

  private static double daysSince1970(KeptCheck.Bank check) {
    return middle(check).getEpochSecond() / SECONDS_A_DAY;
  }

  private static Instant middle(KeptCheck.Bank check) {
    long from = check.from().getEpochSecond();
    return Instant.ofEpochSecond(from + (check.to().getEpochSecond() - from) / 2);
  }
}
