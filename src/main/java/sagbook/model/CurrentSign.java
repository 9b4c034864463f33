package sagbook.model;

/** Which way a log counts current; inside, charging is always positive. */
public enum CurrentSign {
  CHARGE_POSITIVE("charge positive"),
  DISCHARGE_POSITIVE("discharge positive");

  private final String words;

  CurrentSign(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }

  /** Factor that turns a logged current into one with charge positive. */
  public double factor() {
    return this == CHARGE_POSITIVE ? 1 : -1;
  }
}
