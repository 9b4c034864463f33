package sagbook.season;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.hipparchus.distribution.continuous.NormalDistribution;
import sagbook.model.Estimate;
import sagbook.record.DiaryEvent;
import sagbook.record.KeptMonth;
import sagbook.record.Quantity;

/**
 * Judges the cells of a bank one by one.
 *
 * <p>A cell's own rate is its rate against the string's median cell, which the logs tell best, plus
 * the rate of that median. It drifts when it gets worse against the string by more than {@value
 * #CAPACITY_FLOOR} % of capacity or {@value #RESISTANCE_FLOOR} % of resistance a year, and when its
 * interval, widened so that all cells together give one false alarm in fifty batteries
 * (Bonferroni), leaves no doubt that it gets worse at all.
 */
final class CellSeasons {
  /** About what home storage as a whole loses in the field; less is no news. */
  static final double CAPACITY_FLOOR = 2.5;

  /** Our choice: below it a cell stays inconspicuous for years. */
  static final double RESISTANCE_FLOOR = 10;

  private final List<KeptMonth> months;
  private final Places places;
  private final Common common;
  private final ZoneId zone;

  CellSeasons(List<KeptMonth> months, Places places, Common common) {
    this.months = months;
    this.places = places;
    this.common = common;
    this.zone = months.get(0).battery().zone();
  }

  List<SeasonResult.Cell> all() {
    List<SeasonResult.Cell> cells = new ArrayList<>();
    int count = months.get(months.size() - 1).cells().size();
    for (int place = 1; place <= count; place++) {
      cells.add(cell(place, count));
    }
    return cells;
  }

  private SeasonResult.Cell cell(int place, int cells) {
    List<Point> shares =
        places.history(place, Quantity.CAPACITY_RELATIVE, DiaryEvent.Kind::breaksCapacity);
    Line.Result share = Line.through(shares, zone);
    Line.Result against =
        Line.through(
            places.history(place, Quantity.RESISTANCE_RELATIVE, DiaryEvent.Kind::breaksResistance),
            zone);
    Line.Result resistance =
        Line.through(
            places.history(place, Quantity.RESISTANCE_MOHM, DiaryEvent.Kind::breaksResistance),
            zone);
    Estimate capacityAgainst = Common.rate(share);
    Estimate resistanceAgainst = Common.rate(against);
    Estimate capacity = ownRate(capacityAgainst);
    boolean fades =
        capacityAgainst instanceof Estimate.Known rate
            && rate.value() <= -CAPACITY_FLOOR
            && rate.value() + strict(cells) * rate.halfWidth() < 0;
    boolean stiffens =
        resistanceAgainst instanceof Estimate.Known rate
            && rate.value() >= RESISTANCE_FLOOR
            && rate.value() - strict(cells) * rate.halfWidth() > 0;
    Horizon horizon = new Horizon(months, places, place, capacity);
    List<String> evidence = new ArrayList<>();
    replacement(place).ifPresent(evidence::add);
    evidence.addAll(
        SeasonWords.cell(
            share, capacity, capacityAgainst, common, resistance, resistanceAgainst, cells));
    if (fades || stiffens) {
      evidence.add(0, SeasonWords.drifts(fades, stiffens));
    }
    return new SeasonResult.Cell(
        place,
        places.markNow(place),
        share instanceof Line.Result.Drawn drawn ? drawn.line().months() : shares.size(),
        capacity,
        capacityAgainst,
        Common.rate(resistance),
        resistanceAgainst,
        fades || stiffens,
        horizon.yearsTo(80),
        horizon.yearsTo(70),
        evidence);
  }

  private Optional<String> replacement(int place) {
    LocalDate first = places.firstDay(months.get(0));
    return places
        .replacement(place)
        .filter(event -> event.day().isAfter(first))
        .map(event -> SeasonWords.newHistory(event, places.markNow(place)));
  }

  private Estimate ownRate(Estimate against) {
    if (!(against instanceof Estimate.Known rate)) {
      return against;
    }
    Estimate.Known string = common.capacityRate();
    double value = rate.value() + string.value();
    return Estimate.within(value, Math.hypot(rate.halfWidth(), string.halfWidth()));
  }

  /** How much wider than 95 % the interval must be for one false alarm in fifty batteries. */
  private static double strict(int cells) {
    return new NormalDistribution().inverseCumulativeProbability(1 - 0.01 / cells)
        / Estimate.HALF_WIDTH_IN_SD;
  }
}
