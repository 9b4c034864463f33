package sagbook.logfile;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Works out the layout of a table with one line a value or a cell. */
final class TallFinder {
  private static final double LEAST_MILLIVOLTS = 500;

  private final FilePlan plan;
  private final SampleRows sample;

  TallFinder(FilePlan plan, SampleRows sample) {
    this.plan = plan;
    this.sample = sample;
  }

  TallLayout find() {
    TallLayout bare = layout(0, Map.of());
    Map<Quantity, List<Double>> values = new EnumMap<>(Quantity.class);
    boolean fromZero = false;
    TallNames names = new TallNames(bare);
    for (String[] row : sample.rows()) {
      String cell = part(row, bare.cellField());
      if (bare.valueField() >= 0) {
        Optional<Meaning> meaning =
            names.meaning(cell, part(row, bare.channelField()), part(row, bare.unitField()));
        fromZero |= note(values, meaning, part(row, bare.valueField()));
        continue;
      }
      for (Column column : plan.columns()) {
        Optional<Meaning> meaning = names.ofColumn(cell, column.meaning());
        fromZero |= note(values, meaning, part(row, column.field()));
      }
    }
    return layout(fromZero ? 1 : 0, units(values));
  }

  private TallLayout layout(int shift, Map<Quantity, Unit> units) {
    return new TallLayout(
        plan.fieldOf(Quantity.CELL_NUMBER),
        plan.fieldOf(Quantity.CHANNEL_NAME),
        plan.fieldOf(Quantity.VALUE),
        plan.fieldOf(Quantity.UNIT_NAME),
        shift,
        units);
  }

  private static String part(String[] row, int field) {
    return field < 0 || field >= row.length ? "" : row[field];
  }

  /** Keeps the value of a quantity without unit; true when it is the voltage of a cell 0. */
  private boolean note(
      Map<Quantity, List<Double>> values, Optional<Meaning> meaning, String written) {
    if (meaning.isEmpty()) {
      return false;
    }
    double value = sample.numbers().read(written);
    Quantity quantity = meaning.get().quantity();
    if (!Double.isNaN(value) && meaning.get().unit().isEmpty()) {
      values.computeIfAbsent(quantity, q -> new ArrayList<>()).add(value);
    }
    return quantity == Quantity.CELL_VOLTAGE && meaning.get().cell() == 0;
  }

  private static Map<Quantity, Unit> units(Map<Quantity, List<Double>> values) {
    Map<Quantity, Unit> units = new EnumMap<>(Quantity.class);
    values.forEach(
        (quantity, list) -> {
          double[] sorted = list.stream().mapToDouble(Double::doubleValue).sorted().toArray();
          double median = sorted[sorted.length / 2];
          double largest = Math.max(Math.abs(sorted[0]), Math.abs(sorted[sorted.length - 1]));
          unit(quantity, median, largest).ifPresent(unit -> units.put(quantity, unit));
        });
    return units;
  }

  private static Optional<Unit> unit(Quantity quantity, double median, double largest) {
    return switch (quantity) {
      case CELL_VOLTAGE -> Optional.of(median >= LEAST_MILLIVOLTS ? Unit.MILLIVOLT : Unit.VOLT);
      case CELL_TEMPERATURE ->
          Optional.of(median > 200 && median < 400 ? Unit.KELVIN : Unit.CELSIUS);
      case CELL_BLEED -> largest > 1.5 ? Optional.of(Unit.PERCENT) : Optional.empty();
      default -> Optional.empty();
    };
  }
}
