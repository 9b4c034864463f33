package sagbook.logfile;

import java.util.Optional;

/** Works out what a line of a table with one line a value is about. */
final class TallNames {
  private final TallLayout layout;

  TallNames(TallLayout layout) {
    this.layout = layout;
  }

  /** What the value of a line is; empty when it is of no use. */
  Optional<Meaning> meaning(String cell, String channel, String unit) {
    boolean ofCell = !cell.isEmpty() && !cell.equals("-") && !cell.equalsIgnoreCase("pack");
    Meaning plain = NameReader.read(channel);
    boolean needsCell =
        ofCell
            && plain.cell() < 0
            && plain.quantity() != Quantity.CURRENT
            && plain.quantity() != Quantity.POWER;
    Meaning meaning = needsCell ? NameReader.read("cell " + cell + " " + channel) : plain;
    if (meaning.quantity() == Quantity.CELL_UNNAMED) {
      meaning = meaning.withQuantity(Quantity.CELL_VOLTAGE);
    }
    if (meaning.quantity() == Quantity.CELL_TEMPERATURE && meaning.cell() < 0) {
      return Optional.empty();
    }
    return Optional.of(shifted(withUnit(meaning, unit))).filter(m -> isMeasured(m.quantity()));
  }

  /** What a quantity's own column holds in the line of a cell. */
  Optional<Meaning> ofColumn(String cell, Meaning column) {
    Quantity quantity = column.quantity();
    if (quantity == Quantity.CURRENT || quantity == Quantity.POWER) {
      return Optional.of(withUnit(column, ""));
    }
    if (quantity == Quantity.PACK_VOLTAGE) {
      quantity = Quantity.CELL_VOLTAGE;
    }
    int number = NameReader.read("cell " + cell + " v").cell();
    if (!quantity.isOfCell() || number < 0) {
      return Optional.empty();
    }
    return Optional.of(shifted(withUnit(new Meaning(quantity, number, column.unit()), "")));
  }

  private Meaning withUnit(Meaning meaning, String unit) {
    Optional<Unit> written = Unit.find(unit).filter(u -> u.fits(meaning.quantity()));
    if (written.isPresent()) {
      return meaning.withUnit(written.get());
    }
    Unit usual = layout.units().get(meaning.quantity());
    return meaning.unit().isEmpty() && usual != null ? meaning.withUnit(usual) : meaning;
  }

  private Meaning shifted(Meaning meaning) {
    return meaning.quantity().isOfCell()
        ? meaning.withCell(meaning.cell() + layout.cellShift())
        : meaning;
  }

  private static boolean isMeasured(Quantity quantity) {
    return switch (quantity) {
      case CELL_VOLTAGE,
          CELL_TEMPERATURE,
          CELL_BLEED,
          CURRENT,
          CHARGE_CURRENT,
          DISCHARGE_CURRENT,
          POWER,
          PACK_VOLTAGE ->
          true;
      default -> false;
    };
  }
}
