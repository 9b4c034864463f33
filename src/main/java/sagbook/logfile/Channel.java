package sagbook.logfile;

import sagbook.issue.IssueStore;
import sagbook.issue.RowIssue;

/**
 * Where a value goes and how it is brought to the project's unit.
 *
 * @param quantity what it is
 * @param slot in the row; -1 when the value is not used
 * @param factor to the project's unit
 * @param offset to the project's unit
 */
record Channel(Quantity quantity, int slot, double factor, double offset) {
  static final Channel NONE = new Channel(Quantity.IGNORED, -1, 1, 0);

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
    return new Channel(quantity, slot, factor, offset);
  }

  /** Puts a raw number into the row, unless it can't have been measured. */
  void put(double raw, Row row, IssueStore issues, String file, long line) {
    double value = raw * factor + offset;
    if (!Plausible.accepts(quantity, value)) {
      issues.add(Plausible.issue(quantity), file, line);
      return;
    }
    if (quantity == Quantity.CHARGE_CURRENT || quantity == Quantity.DISCHARGE_CURRENT) {
      double before = Double.isNaN(row.values[slot]) ? 0 : row.values[slot];
      value = before + (quantity == Quantity.CHARGE_CURRENT ? 1 : -1) * Math.abs(value);
    }
    row.values[slot] = value;
  }

  static RowIssue textIssue() {
    return RowIssue.TEXT_VALUE;
  }
}
