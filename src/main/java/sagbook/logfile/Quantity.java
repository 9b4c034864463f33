package sagbook.logfile;

/** What a column can hold. */
enum Quantity {
  TIME("time"),
  CELL_VOLTAGE("cell voltage"),
  CELL_TEMPERATURE("temperature"),
  CELL_BLEED("bleed level"),
  CURRENT("current"),
  CHARGE_CURRENT("charge current"),
  DISCHARGE_CURRENT("discharge current"),
  POWER("power"),
  PACK_VOLTAGE("pack voltage"),
  /** Something of a cell, but the name does not say what; its values decide. */
  CELL_UNNAMED("cell"),
  CELL_NUMBER("cell number"),
  CHANNEL_NAME("channel name"),
  VALUE("value"),
  UNIT_NAME("unit"),
  IGNORED("ignored");

  private final String words;

  Quantity(String words) {
    this.words = words;
  }

  String words() {
    return words;
  }

  boolean isOfCell() {
    return this == CELL_VOLTAGE || this == CELL_TEMPERATURE || this == CELL_BLEED;
  }
}
