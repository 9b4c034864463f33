package sagbook.model;

/**
 * The numbers at which a difference becomes worth acting on: every one with its usual value, the
 * span that makes sense, its reason and its source. The keeper may set each in {@code [rules]} of
 * the pack description.
 */
public enum Threshold {
  CAPACITY(
      "capacity_percent",
      "Capacity missing against the string's median cell, %",
      3,
      0.5,
      50,
      "cells of one batch differ by about one per cent; three are a sign of wear (common practice,"
          + " no source)"),
  REPLACE_CAPACITY(
      "replace_percent",
      "Capacity missing from which a cell is to be replaced, %",
      10,
      1,
      80,
      "for less, opening the battery costs more than it buys; retirement is commonly put at 20 to"
          + " 40 % (common practice, no source)"),
  RESISTANCE(
      "resistance_percent",
      "Resistance above the string's median cell, %",
      18,
      2,
      500,
      "lead-acid practice remakes a joint 20 % above the average (makers citing IEEE 450 and 484);"
          + " cells of one batch differ by about 5 %"),
  REPLACE_RESISTANCE(
      "replace_resistance_percent",
      "Resistance above the median from which a cell is to be replaced, %",
      100,
      10,
      1000,
      "twice the resistance is a common end of life for power (common practice, no source)"),
  OFFSET(
      "offset_percent",
      "Charge ahead of or behind the string's median cell, % of nominal",
      1.8,
      0.2,
      50,
      "two per cent of charge is what boards level out in a few full charges (common practice, no"
          + " source)"),
  DRAIN(
      "drain_ma",
      "Drain above the string's median cell, mA",
      12,
      1,
      10_000,
      "a drain of 12 mA takes 9 Ah a month, as much as a board can bleed from the others in about"
          + " a day of bleeding (arithmetic)"),
  DRAIN_STOP(
      "drain_stop_ma",
      "Drain from which a cell is to be isolated, mA",
      500,
      20,
      100_000,
      "half an ampere is 12 Ah a day, more than a forgotten board takes; it may be a short inside"
          + " the cell (common practice, no source)"),
  VOLTAGE(
      "voltage_mv",
      "Constant error of a voltage reading, mV",
      9,
      1,
      500,
      "boards are usually right to a few millivolt; nine would hide a real imbalance (common"
          + " practice, no source)"),
  ALL_WORN(
      "all_worn_percent",
      "Capacity of the median cell below which the whole string is worn, % of nominal",
      80,
      10,
      99,
      "end of life is commonly put at 80 % of nominal capacity (common practice, no source)");

  private final String key;
  private final String meaning;
  private final double usual;
  private final double least;
  private final double most;
  private final String reason;

  Threshold(String key, String meaning, double usual, double least, double most, String reason) {
    this.key = key;
    this.meaning = meaning;
    this.usual = usual;
    this.least = least;
    this.most = most;
    this.reason = reason;
  }

  /** Name in {@code [rules]}. */
  public String key() {
    return key;
  }

  /** What it is, with its unit. */
  public String meaning() {
    return meaning;
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
    return reason;
  }
}
