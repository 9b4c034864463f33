package sagbook.simulate;

/** One row of a log as the logger saw it, in the boards' own whole numbers; a reused buffer. */
final class LogRow {
  /** Seconds since 1970. */
  long timeS;

  /** Tenths of an ampere, charge positive. */
  int currentTenths;

  /** One a cell. */
  final int[] millivolt;

  /** Half degrees Celsius, one a cell. */
  final int[] halfDegrees;

  /** 0 to 100, one a cell. */
  final int[] bleedPercent;

  LogRow(int cells) {
    millivolt = new int[cells];
    halfDegrees = new int[cells];
    bleedPercent = new int[cells];
  }
}
