package sagbook.model;

import sagbook.wording.Words;

/**
 * The numbers at which a difference becomes worth acting on: every one with its usual value, the
 * span that makes sense, its reason and its source. The keeper may set each in {@code [rules]} of
 * the pack description.
 */
public enum Threshold {
  CAPACITY("capacity_percent", 3, 0.5, 50),
  REPLACE_CAPACITY("replace_percent", 10, 1, 80),
  RESISTANCE("resistance_percent", 18, 2, 500),
  REPLACE_RESISTANCE("replace_resistance_percent", 100, 10, 1000),
  OFFSET("offset_percent", 1.8, 0.2, 50),
  DRAIN("drain_ma", 12, 1, 10_000),
  DRAIN_STOP("drain_stop_ma", 500, 20, 100_000),
  VOLTAGE("voltage_mv", 9, 1, 500),
  ALL_WORN("all_worn_percent", 80, 10, 99),
  APART("apart_percent", 25, 5, 100),
  LIMIT_GRACE_VOLTAGE("limit_grace_mv", 30, 1, 200),
  LIMIT_GRACE_TIME("limit_grace_min", 1.8, 0.1, 60),
  COLD_GRACE_TIME("cold_grace_min", 15, 1, 600),
  FOR_GOOD("for_good_percent", 67, 30, 95);

  private final String key;
  private final double usual;
  private final double least;
  private final double most;

  Threshold(String key, double usual, double least, double most) {
    this.key = key;
    this.usual = usual;
    this.least = least;
    this.most = most;
  }

  /** Name in {@code [rules]}. */
  public String key() {
    return key;
  }

  /** What it is, with its unit. */
  public String meaning() {
    return said(".meaning");
  }

  /** The value where the keeper sets none. */
  public double usual() {
    return usual;
  }

  /** Least value that makes sense. */
  public double least() {
    return least;
  }

  /** Greatest value that makes sense. */
  public double most() {
    return most;
  }

  /** Why the usual value is what it is, with its source. */
  public String reason() {
    return said(".reason");
  }

  private String said(String what) {
    return Words.english().say("threshold." + key.replace('_', '-') + what);
  }
}
