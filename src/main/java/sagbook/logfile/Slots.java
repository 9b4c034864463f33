package sagbook.logfile;

/**
 * Where each quantity of a row lies in its array of values.
 *
 * @param cells cells in series
 */
record Slots(int cells) {
  int current() {
    return 0;
  }

  int power() {
    return 1;
  }

  int packVoltage() {
    return 2;
  }

  /** Cells count from 1. */
  int voltage(int cell) {
    return 2 + cell;
  }

  int temperature(int cell) {
    return 2 + cells + cell;
  }

  int bleed(int cell) {
    return 2 + 2 * cells + cell;
  }

  int count() {
    return 3 + 3 * cells;
  }
}
