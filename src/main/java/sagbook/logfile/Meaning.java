package sagbook.logfile;

import java.util.Optional;

/**
 * What a column's name says.
 *
 * @param quantity what it holds
 * @param cell which cell, from the name as it stands; -1 when the name has no number
 * @param unit as named; empty when the name has none
 */
record Meaning(Quantity quantity, int cell, Optional<Unit> unit) {
  static Meaning ignored() {
    return new Meaning(Quantity.IGNORED, -1, Optional.empty());
  }

  static Meaning of(Quantity quantity) {
    return new Meaning(quantity, -1, Optional.empty());
  }

  Meaning withQuantity(Quantity other) {
    return new Meaning(other, cell, unit);
  }

  Meaning withCell(int other) {
    return new Meaning(quantity, other, unit);
  }

  Meaning withUnit(Unit other) {
    return new Meaning(quantity, cell, Optional.of(other));
  }

  /** The meaning in the words that a column mapping uses. */
  String words() {
    if (quantity == Quantity.IGNORED) {
      return "ignore";
    }
    StringBuilder words = new StringBuilder();
    if (quantity.isOfCell() && cell >= 0) {
      String name =
          quantity == Quantity.CELL_VOLTAGE ? "voltage" : quantity.words().replace("cell ", "");
      words.append("cell ").append(cell).append(' ').append(name);
    } else {
      words.append(quantity.words());
    }
    unit.ifPresent(u -> words.append(", ").append(u.symbol()));
    return words.toString();
  }
}
