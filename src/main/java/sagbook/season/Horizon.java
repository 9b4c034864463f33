package sagbook.season;

import java.time.Duration;
import java.util.List;
import sagbook.model.Estimate;
import sagbook.record.DiaryEvent;
import sagbook.record.KeptMonth;
import sagbook.record.Quantity;

/**
 * When a cell will hold no more than a share of the nominal capacity, if it goes on as it does.
 * Ageing bends: fast at first, sometimes faster at the end ("knees", Attia et al. 2022, J.
 * Electrochem. Soc. 169, 060517). So nothing is said that lies further away than {@value #REACH}
 * times the length of the record, and no time at all where the cell may not be fading.
 *
 * <p>The soonest and the likely time go on straight. The latest is that of calendar ageing, whose
 * loss grows with the root of time (Naumann et al. 2018, J. Energy Storage 17, 153), of cells that
 * were new when the record began: what takes T on a straight line takes T (2 + T / record).
 */
final class Horizon {
  private static final double REACH = 4;
  private static final double YEAR_DAYS = 365.25;

  private final Estimate level;
  private final Estimate rate;
  private final double recordYears;

  /**
   * Of a cell.
   *
   * @param rate % of its first month's capacity a year
   */
  Horizon(List<KeptMonth> months, Places places, int place, Estimate rate) {
    double nominal = months.get(months.size() - 1).battery().nominalCapacityAh();
    List<Point> capacities =
        places.history(place, Quantity.CAPACITY_AH, DiaryEvent.Kind::breaksCapacity);
    this.level =
        capacities.isEmpty()
            ? Estimate.unknown(SeasonWords.say("horizon.level"))
            : capacities.get(capacities.size() - 1).value().map(ah -> 100 * ah / nominal);
    this.rate = rate;
    this.recordYears =
        Duration.between(months.get(0).bank().from(), months.get(months.size() - 1).bank().to())
                .toHours()
            / 24.0
            / YEAR_DAYS;
  }

  /** Years from the newest month until a share of the nominal capacity, %. */
  Estimate yearsTo(int percent) {
    if (!(level instanceof Estimate.Known now)) {
      return level;
    }
    if (now.isBelow(percent)) {
      return new Estimate.Known(0, 0, 0);
    }
    if (!(rate instanceof Estimate.Known pace)) {
      return rate;
    }
    if (!pace.isBelow(0)) {
      return Estimate.unknown(SeasonWords.say("horizon.none"));
    }
    double years = Math.max(0, now.value() - percent) / -pace.value();
    double soonest = Math.max(0, now.low() - percent) / -pace.low();
    double straight = Math.max(0, now.high() - percent) / -pace.high();
    double latest = straight * (2 + straight / recordYears);
    if (years > REACH * recordYears) {
      return Estimate.unknown(
          SeasonWords.say(
              "horizon.far",
              SeasonWords.number(Math.floor(Math.max(1, REACH * recordYears)), "%.0f"),
              SeasonWords.number(recordYears, "%.1f")));
    }
    return new Estimate.Known(years, Math.min(soonest, years), Math.max(latest, years));
  }
}
