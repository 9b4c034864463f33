package sagbook.logfile;

import java.util.EnumMap;
import java.util.Map;

/**
 * Columns of a table with one line a value or a cell; an index is -1 when there is no such column.
 *
 * @param cellField which cell the line is about
 * @param channelField what the line's value is
 * @param valueField the value; -1 when quantities have columns of their own
 * @param unitField unit of the value
 * @param cellShift what to add to a cell's number so that the first is 1
 * @param units of quantities whose lines name none
 */
record TallLayout(
    int cellField,
    int channelField,
    int valueField,
    int unitField,
    int cellShift,
    Map<Quantity, Unit> units) {
  TallLayout {
    units = units.isEmpty() ? Map.of() : Map.copyOf(new EnumMap<>(units));
  }
}
