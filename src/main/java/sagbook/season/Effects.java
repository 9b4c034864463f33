package sagbook.season;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import sagbook.model.Estimate;
import sagbook.record.DiaryEvent;
import sagbook.record.KeptMonth;
import sagbook.record.Quantity;

/** Compares up to three months before an event with up to three after it. */
final class Effects {
  private static final int MONTHS = 3;

  private final List<KeptMonth> months;
  private final Places places;

  Effects(List<KeptMonth> months, Places places) {
    this.months = months;
    this.places = places;
  }

  List<SeasonResult.Effect> all() {
    List<SeasonResult.Effect> effects = new ArrayList<>();
    for (DiaryEvent event : places.events()) {
      if (event.cell() > months.get(0).cells().size()) {
        continue;
      }
      for (Quantity quantity : touched(event)) {
        effects.add(effect(event, quantity));
      }
    }
    return effects;
  }

  /** What an event should have changed. */
  private static List<Quantity> touched(DiaryEvent event) {
    if (event.cell() == 0) {
      return List.of();
    }
    return switch (event.kind()) {
      case CELL_REPLACED -> List.of(Quantity.CAPACITY_RELATIVE, Quantity.RESISTANCE_RELATIVE);
      case JOINT_TIGHTENED, CELL_MOVED -> List.of(Quantity.RESISTANCE_RELATIVE);
      case REBALANCED -> List.of(Quantity.CHARGE_OFFSET_PERCENT);
      case BOARD_CHANGED -> List.of(Quantity.VOLTAGE_OFFSET_MV);
      case CELL_MARKED, SETTINGS_CHANGED, FIRMWARE_CHANGED, OTHER -> List.of();
    };
  }

  private SeasonResult.Effect effect(DiaryEvent event, Quantity quantity) {
    List<Estimate.Known> earlier = new ArrayList<>();
    List<Estimate.Known> later = new ArrayList<>();
    for (KeptMonth month : months) {
      if (month.bank().cells().get(event.cell() - 1).estimate(quantity)
          instanceof Estimate.Known known) {
        if (!places.lastDay(month).isAfter(event.day())) {
          earlier.add(known);
        } else if (!places.firstDay(month).isBefore(event.day())) {
          later.add(known);
        }
      }
    }
    Collections.reverse(earlier);
    Estimate before = mean(earlier);
    Estimate after = mean(later);
    Estimate change = difference(before, after);
    return new SeasonResult.Effect(
        event, quantity, before, after, change, words(quantity, before, change));
  }

  /**
   * Mean weighted by the months' own intervals; its uncertainty is not less than a single month's
   * divided by the root of their number, nor than their scatter allows.
   */
  private static Estimate mean(List<Estimate.Known> all) {
    List<Estimate.Known> near = all.subList(0, Math.min(MONTHS, all.size()));
    if (near.isEmpty()) {
      return Estimate.unknown(SeasonWords.say("effect.side"));
    }
    double weights = 0;
    double sum = 0;
    double below = 0;
    double above = 0;
    for (Estimate.Known month : near) {
      double weight = 1 / Math.pow(Math.max(month.halfWidth(), 1e-9), 2);
      weights += weight;
      sum += weight * month.value();
      below = Math.hypot(below, weight * (month.value() - month.low()));
      above = Math.hypot(above, weight * (month.high() - month.value()));
    }
    double value = sum / weights;
    double scatter = 0;
    for (Estimate.Known month : near) {
      scatter += Math.pow(month.value() - value, 2);
    }
    int n = near.size();
    double spread = n > 1 ? Estimate.HALF_WIDTH_IN_SD * Math.sqrt(scatter / (n - 1) / n) : 0;
    return new Estimate.Known(
        value,
        value - Math.max(below / weights, spread),
        value + Math.max(above / weights, spread));
  }

  private static Estimate difference(Estimate before, Estimate after) {
    if (!(before instanceof Estimate.Known old)) {
      return before;
    }
    if (!(after instanceof Estimate.Known now)) {
      return after;
    }
    return now.minus(old);
  }

  private static String words(Quantity quantity, Estimate before, Estimate change) {
    if (!(change instanceof Estimate.Known moved) || !(before instanceof Estimate.Known old)) {
      return SeasonWords.say("effect.open");
    }
    double better =
        switch (quantity) {
          case CAPACITY_RELATIVE, CAPACITY_AH -> moved.value();
          case CHARGE_OFFSET_PERCENT, VOLTAGE_OFFSET_MV ->
              Math.abs(old.value()) - Math.abs(old.value() + moved.value());
          default -> -moved.value();
        };
    if (!moved.isAbove(0) && !moved.isBelow(0)) {
      return SeasonWords.say("effect.none");
    }
    double scale = quantity.unit().equals("1") ? 100 : 1;
    return SeasonWords.say(
        better > 0 ? "effect.helped" : "effect.worse",
        SeasonWords.number(scale * old.value(), "%.1f"),
        SeasonWords.number(scale * (old.value() + moved.value()), "%.1f"),
        quantity.unit().equals("1") ? SeasonWords.say("effect.share") : quantity.unit());
  }
}
