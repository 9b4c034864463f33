package sagbook.logfile;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import sagbook.wording.Words;

/** Settles whether bleed levels without a unit run to 1 or to 100, from all of them. */
final class BleedUnit {
  private BleedUnit() {}

  static FilePlan settle(FilePlan plan, double largest) {
    Unit unit = largest > 1.5 ? Unit.PERCENT : Unit.FRACTION;
    if (plan.tall().isPresent()) {
      return settleTall(plan, plan.tall().get(), unit);
    }
    List<Column> columns = new ArrayList<>();
    for (Column column : plan.columns()) {
      Meaning meaning = column.meaning();
      boolean open = meaning.quantity() == Quantity.CELL_BLEED && meaning.unit().isEmpty();
      columns.add(
          open
              ? column.withMeaning(
                  meaning.withUnit(unit),
                  Words.english().say("how.values", column.how(), unit.symbol()))
              : column);
    }
    return plan.withColumns(columns);
  }

  private static FilePlan settleTall(FilePlan plan, TallLayout layout, Unit unit) {
    if (layout.units().containsKey(Quantity.CELL_BLEED)) {
      return plan;
    }
    Map<Quantity, Unit> units = new EnumMap<>(Quantity.class);
    units.putAll(layout.units());
    units.put(Quantity.CELL_BLEED, unit);
    return plan.withTall(
        new TallLayout(
            layout.cellField(),
            layout.channelField(),
            layout.valueField(),
            layout.unitField(),
            layout.cellShift(),
            units));
  }
}
