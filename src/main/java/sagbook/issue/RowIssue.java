package sagbook.issue;

/** Why a row, or one value in it, was not used. */
public enum RowIssue {
  TORN_ROW("rows with too few or too many fields"),
  UNREADABLE_TIME("rows without a readable time"),
  REPEATED_HEADER("repeated header lines"),
  DUPLICATE_TIME("rows whose time had been read already"),
  BACKWARD_TIME("rows whose clock ran backwards"),
  STRAY_CLOCK("rows whose clock had been reset"),
  TEXT_VALUE("values that are text where a number is expected"),
  IMPLAUSIBLE_VOLTAGE("cell voltages no cell can have (0, full scale and the like)"),
  IMPLAUSIBLE_TEMPERATURE(
      "temperatures that stand for a missing sensor (-127, -40, 85 and the like)"),
  IMPLAUSIBLE_CURRENT("currents that stand for a missing reading (full scale and the like)"),
  IMPLAUSIBLE_BLEED("bleed levels outside 0 to 100 %"),
  SPIKE("single values far off their neighbours"),
  UNKNOWN_CHANNEL("entries whose name means nothing here");

  private final String words;

  RowIssue(String words) {
    this.words = words;
  }

  /** What is counted, as the end of "12 ...". */
  public String words() {
    return words;
  }
}
