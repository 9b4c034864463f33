package sagbook.logfile;

import java.util.Locale;
import sagbook.issue.IssueStore;

/**
 * Where a value goes and how it is brought to the project's unit.
 *
 * @param quantity what it is
 * @param slot in the row; -1 when the value is not used
 * @param factor to the project's unit
 * @param offset to the project's unit
 * @param settled whether the unit is known
 */
record Channel(Quantity quantity, int slot, double factor, double offset, boolean settled) {
  static final Channel NONE = new Channel(Quantity.IGNORED, -1, 1, 0, true);

  static Channel of(Meaning meaning, Slots slots) {
    Quantity quantity = meaning.quantity();
    boolean beyond = quantity.isOfCell() && (meaning.cell() < 1 || meaning.cell() > slots.cells());
    int slot =
        switch (quantity) {
          case CELL_VOLTAGE -> beyond ? -1 : slots.voltage(meaning.cell());
          case CELL_TEMPERATURE -> beyond ? -1 : slots.temperature(meaning.cell());
          case CELL_BLEED -> beyond ? -1 : slots.bleed(meaning.cell());
          case CURRENT, CHARGE_CURRENT, DISCHARGE_CURRENT -> slots.current();
          case POWER -> slots.power();
          case PACK_VOLTAGE -> slots.packVoltage();
          default -> -1;
        };
    double factor = meaning.unit().map(Unit::factor).orElse(1.0);
    double offset = meaning.unit().map(Unit::offset).orElse(0.0);
    return new Channel(quantity, slot, factor, offset, meaning.unit().isPresent());
  }

  /** Puts a raw number into the row, unless it can't have been measured. */
  void put(double raw, Row row, IssueStore issues, String file, long line) {
    double value = raw * factor + offset;
    boolean bleed = quantity == Quantity.CELL_BLEED && settled;
    if (!Plausible.accepts(quantity, value) || (bleed && !Plausible.acceptsBleed(value))) {
      issues.add(Plausible.issue(quantity), file, line);
      return;
    }
    if (quantity == Quantity.CHARGE_CURRENT || quantity == Quantity.DISCHARGE_CURRENT) {
      double before = Double.isNaN(row.values[slot]) ? 0 : row.values[slot];
      value = before + (quantity == Quantity.CHARGE_CURRENT ? 1 : -1) * Math.abs(value);
    }
    row.values[slot] = value;
  }

  /** Takes words for a board's switch: raw 0 or full scale; NaN for any other text. */
  double switched(String text) {
    double full = 1 / factor;
    return switch (text.toLowerCase(Locale.ROOT)) {
      case "on", "true", "yes", "active" -> quantity == Quantity.CELL_BLEED ? full : Double.NaN;
      case "off", "false", "no", "idle", "inactive" ->
          quantity == Quantity.CELL_BLEED ? 0 : Double.NaN;
      default -> Double.NaN;
    };
  }
}
