package sagbook.model;

/** What is the matter with a cell, in the words that results.json uses. */
public enum Finding {
  HEALTHY("healthy"),
  LOW_CAPACITY("low capacity"),
  HIGH_RESISTANCE("high resistance"),
  OUT_OF_BALANCE("out of balance"),
  SELF_DISCHARGE("self-discharge"),
  CONNECTION("connection"),
  VOLTAGE_SENSOR("voltage sensor"),
  TEMPERATURE_SENSOR("temperature sensor"),
  INSUFFICIENT_EVIDENCE("insufficient evidence");

  private final String words;

  Finding(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
