package sagbook.logfile;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Settles a column's unit from its name and its first values. The ranges in which a cell's voltage
 * and temperature lie are common practice, no source.
 */
final class UnitChooser {
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
      return column.withMeaning(Meaning.ignored(), "no voltage by its values");
    }
    return voltage(
        column.withMeaning(
            column.meaning().withQuantity(Quantity.CELL_VOLTAGE), "by its name and its values"));
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
      String how = named.isPresent() ? "; its values are in mV, not V" : "; mV by its values";
      return column.withMeaning(column.meaning().withUnit(Unit.MILLIVOLT), column.how() + how);
    }
    return named.isPresent()
        ? column
        : column.withMeaning(
            column.meaning().withUnit(Unit.VOLT), column.how() + "; V by its values");
  }

  private Column temperature(Column column) {
    if (column.meaning().unit().isPresent()) {
      return column;
    }
    double median = sample.median(column.field());
    Unit unit = median > 200 && median < 400 ? Unit.KELVIN : Unit.CELSIUS;
    String how = unit == Unit.KELVIN ? "; K by its values" : "; no unit named, taken as °C";
    return column.withMeaning(column.meaning().withUnit(unit), column.how() + how);
  }

  private Column bleed(Column column) {
    if (column.meaning().unit().isPresent() || !(sample.largest(column.field()) > 1.5)) {
      return column;
    }
    return column.withMeaning(
        column.meaning().withUnit(Unit.PERCENT), column.how() + "; % by its values");
  }

  private Column current(Column column) {
    return withDefault(column, Unit.AMPERE);
  }

  private static Column withDefault(Column column, Unit unit) {
    if (column.meaning().unit().isPresent()) {
      return column;
    }
    return column.withMeaning(
        column.meaning().withUnit(unit),
        column.how() + "; no unit named, taken as " + unit.symbol());
  }
}
