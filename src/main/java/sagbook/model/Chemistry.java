package sagbook.model;

import java.util.Optional;

/**
 * A cell chemistry with the rest voltages between which its capacity is defined and its default
 * limits.
 *
 * <p>The voltages are data-sheet practice, no single source; the cell maker's sheet rules, so each
 * can be set in the pack description.
 */
public enum Chemistry {
  /** Lithium iron phosphate against graphite. */
  LFP("lfp", 3.65, 2.50),
  /** Oxide of nickel, manganese and cobalt against graphite; also blends with LMO. */
  NMC("nmc", 4.20, 3.00),
  /** Oxide of nickel, cobalt and aluminium against graphite. */
  NCA("nca", 4.20, 3.00),
  /** Oxide of cobalt against graphite. */
  LCO("lco", 4.20, 3.00);

  private final String key;
  private final double fullVoltage;
  private final double emptyVoltage;

  Chemistry(String key, double fullVoltage, double emptyVoltage) {
    this.key = key;
    this.fullVoltage = fullVoltage;
    this.emptyVoltage = emptyVoltage;
  }

  /** The word used in the pack description and in results.json. */
  public String key() {
    return key;
  }

  /** Rest voltage of a full cell, volt. */
  public double fullVoltage() {
    return fullVoltage;
  }

  /** Rest voltage of an empty cell, volt. */
  public double emptyVoltage() {
    return emptyVoltage;
  }

  public static Optional<Chemistry> find(String key) {
    for (Chemistry chemistry : values()) {
      if (chemistry.key.equals(key)) {
        return Optional.of(chemistry);
      }
    }
    return Optional.empty();
  }
}
