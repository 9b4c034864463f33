package sagbook.report.chart;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import sagbook.model.Estimate;
import sagbook.record.KeptMonth;
import sagbook.report.words.Numbers;
import sagbook.season.MiddleCell;
import sagbook.season.Warmth;
import sagbook.wording.Words;

/** Resistance of a bank's middle cell over the months, as seen and at 25 °C. */
public final class SeasonWarmthPlate {
  private static final int HEIGHT = 320;
  private static final double SECONDS_A_DAY = 86_400;

  private final List<KeptMonth> months;
  private final Words words;

  private SeasonWarmthPlate(List<KeptMonth> months, Words words) {
    this.months = months;
    this.words = words;
  }

  /** The plate, if at least two months know resistance and temperature. */
  public static Optional<Plate> of(List<KeptMonth> months, Words words) {
    List<KeptMonth> knowing =
        months.stream()
            .filter(m -> MiddleCell.resistance(m) instanceof Estimate.Known)
            .filter(m -> Warmth.factor(m).isPresent())
            .toList();
    return knowing.size() < 2
        ? Optional.empty()
        : Optional.of(new SeasonWarmthPlate(knowing, words).plate());
  }

  private Plate plate() {
    List<List<String>> rows = new ArrayList<>();
    List<String> items = new ArrayList<>();
    for (KeptMonth month : months) {
      Estimate.Known at25 = at25(month);
      String celsius = Numbers.text(Warmth.mean(month).orElseThrow(), 1);
      String seen = Numbers.rounded(seen(month), at25);
      rows.add(List.of(label(month), celsius, seen, Numbers.value(at25)));
      items.add(
          words.say(
              "plate.season-warmth.item",
              label(month),
              Numbers.with(seen, "mΩ"),
              Numbers.with(celsius, "°C"),
              Numbers.with(Numbers.value(at25), "mΩ")));
    }
    String title = title();
    String alternative =
        words.say("plate.season-warmth.alternative") + " " + String.join("; ", items) + ".";
    return new Plate(
        "season-warmth",
        title,
        words.say("plate.season-warmth.caption"),
        PlotSvg.of(plot(), HEIGHT, title + " " + alternative),
        alternative,
        new DataTable(
            List.of(
                words.say("column.month"),
                words.say("column.mean-temperature"),
                words.say("column.seen-mohm"),
                words.say("column.at25-mohm")),
            rows));
  }

  private String title() {
    KeptMonth lowest = Collections.min(months, Comparator.comparingDouble(SeasonWarmthPlate::seen));
    KeptMonth highest =
        Collections.max(months, Comparator.comparingDouble(SeasonWarmthPlate::seen));
    KeptMonth least =
        Collections.min(months, Comparator.comparingDouble(month -> at25(month).value()));
    KeptMonth most =
        Collections.max(months, Comparator.comparingDouble(month -> at25(month).value()));
    return words.say(
        "plate.season-warmth.title",
        Numbers.rounded(seen(lowest), at25(lowest)),
        Numbers.with(Numbers.rounded(seen(highest), at25(highest)), "mΩ"),
        Numbers.value(at25(least)),
        Numbers.with(Numbers.value(at25(most)), "mΩ"));
  }

  private Plot plot() {
    Plot.Sketch sketch = new Plot.Sketch();
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (KeptMonth month : months) {
      Estimate.Known at25 = at25(month);
      double seen = seen(month);
      low = Math.min(low, Math.min(at25.low(), seen));
      high = Math.max(high, Math.max(at25.high(), seen));
      double x = days(month);
      sketch.span(new Ink(Role.SPAN, 0, 0), x, at25.low(), at25.high(), "");
      sketch.point(
          new Ink(Role.MARK, 0, 0), x, at25.value(), words.say("plate.season-warmth.at25"));
      sketch.point(new Ink(Role.OTHER_MARK, 0, 0), x, seen, words.say("plate.season-warmth.seen"));
    }
    KeptMonth last = months.get(months.size() - 1);
    sketch.note(
        Plot.Place.MARGIN, 0, at25(last).value(), words.say("plate.season-warmth.at25"), true);
    sketch.note(Plot.Place.MARGIN, 0, seen(last), words.say("plate.season-warmth.seen"), false);
    return sketch.on(across(), Axis.around(words.say("plate.resistance.axis"), low, high, 6));
  }

  private Axis across() {
    List<Axis.Tick> ticks = new ArrayList<>();
    int step = (months.size() + 7) / 8;
    for (int i = 0; i < months.size(); i += step) {
      ticks.add(new Axis.Tick(days(months.get(i)), label(months.get(i))));
    }
    double first = days(months.get(0));
    double last = days(months.get(months.size() - 1));
    double air = Math.max(1, (last - first) * 0.06);
    return new Axis(words.say("axis.check"), first - air, last + air, ticks, true);
  }

  private static double seen(KeptMonth month) {
    return at25(month).value() * Warmth.factor(month).orElseThrow();
  }

  private static Estimate.Known at25(KeptMonth month) {
    return (Estimate.Known) MiddleCell.resistance(month);
  }

  private static double days(KeptMonth month) {
    return month.middle().getEpochSecond() / SECONDS_A_DAY;
  }

  private String label(KeptMonth month) {
    return words.monthAndYear(LocalDate.ofInstant(month.middle(), month.battery().zone()));
  }
}
