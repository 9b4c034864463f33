package sagbook.logfile;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import sagbook.wording.Words;

/**
 * Settles a column's unit from its name and its first values. The ranges in which a cell's voltage
 * and temperature lie are common practice, no source.
 */
final class UnitChooser {
  private static final Words WORDS = Words.english();
  private static final double LEAST_MILLIVOLTS = 500;

  private final SampleRows sample;

  UnitChooser(SampleRows sample) {
    this.sample = sample;
  }

  Column settle(Column column) {
    return switch (column.meaning().quantity()) {
      case CELL_UNNAMED -> unnamed(column);
      case CELL_VOLTAGE, PACK_VOLTAGE -> voltage(column);
      case CELL_TEMPERATURE -> temperature(column);
      case CELL_BLEED -> bleed(column);
      case CURRENT, CHARGE_CURRENT, DISCHARGE_CURRENT -> current(column);
      case POWER -> withDefault(column, Unit.WATT);
      default -> column;
    };
  }

  /** Gives columns whose first values do not tell their unit the unit of their like. */
  List<Column> agree(List<Column> columns) {
    Map<Quantity, Column> telling = new EnumMap<>(Quantity.class);
    for (Column column : columns) {
      if (column.meaning().unit().isPresent() && !isSilent(column)) {
        telling.putIfAbsent(column.meaning().quantity(), column);
      }
    }
    List<Column> agreed = new ArrayList<>();
    for (Column column : columns) {
      Column like = telling.get(column.meaning().quantity());
      boolean open = column.meaning().unit().isEmpty() || isSilent(column);
      if (like == null || !open || !column.meaning().quantity().isOfCell()) {
        agreed.add(column);
      } else {
        agreed.add(column.withMeaning(withUnitOf(column, like), like.how()));
      }
    }
    return agreed;
  }

  private static Meaning withUnitOf(Column column, Column like) {
    return column.meaning().withUnit(like.meaning().unit().orElseThrow());
  }

  /** Without numbers among the first rows. */
  private boolean isSilent(Column column) {
    return Double.isNaN(sample.median(column.field()));
  }

  private Column unnamed(Column column) {
    double median = sample.median(column.field());
    Optional<Unit> unit = column.meaning().unit();
    boolean voltage = unit.isPresent() && unit.get().family() == Quantity.CELL_VOLTAGE;
    boolean plausible = (median > 0.5 && median < 6) || (median >= 500 && median < 6000);
    if (!voltage && !plausible) {
      return column.withMeaning(Meaning.ignored(), WORDS.say("how.no-voltage"));
    }
    return voltage(
        column.withMeaning(
            column.meaning().withQuantity(Quantity.CELL_VOLTAGE),
            WORDS.say("how.name-and-values")));
  }

  private Column voltage(Column column) {
    double median = sample.median(column.field());
    boolean pack = column.meaning().quantity() == Quantity.PACK_VOLTAGE;
    double least = pack ? 2 * LEAST_MILLIVOLTS : LEAST_MILLIVOLTS;
    Optional<Unit> named = column.meaning().unit();
    if (named.isPresent() && named.get() != Unit.VOLT) {
      return column;
    }
    if (median >= least) {
      String key = named.isPresent() ? "how.contradicted" : "how.values";
      return column.withMeaning(
          column.meaning().withUnit(Unit.MILLIVOLT),
          WORDS.say(key, column.how(), Unit.MILLIVOLT.symbol(), Unit.VOLT.symbol()));
    }
    return named.isPresent() ? column : byValues(column, Unit.VOLT);
  }

  private Column temperature(Column column) {
    if (column.meaning().unit().isPresent()) {
      return column;
    }
    double median = sample.median(column.field());
    return median > 200 && median < 400
        ? byValues(column, Unit.KELVIN)
        : withDefault(column, Unit.CELSIUS);
  }

  private Column bleed(Column column) {
    if (column.meaning().unit().isPresent() || !(sample.largest(column.field()) > 1.5)) {
      return column;
    }
    return byValues(column, Unit.PERCENT);
  }

  private Column current(Column column) {
    return withDefault(column, Unit.AMPERE);
  }

  private static Column withDefault(Column column, Unit unit) {
    if (column.meaning().unit().isPresent()) {
      return column;
    }
    return column.withMeaning(
        column.meaning().withUnit(unit), WORDS.say("how.assumed", column.how(), unit.symbol()));
  }

  private static Column byValues(Column column, Unit unit) {
    return column.withMeaning(
        column.meaning().withUnit(unit), WORDS.say("how.values", column.how(), unit.symbol()));
  }
}
