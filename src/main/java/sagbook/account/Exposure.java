package sagbook.account;

/**
 * How long something lasted and what charge went in meanwhile.
 *
 * @param hours h
 * @param chargedAh Ah
 */
public record Exposure(double hours, double chargedAh) {
  static final Exposure NONE = new Exposure(0, 0);

  Exposure plus(double moreHours, double moreAh) {
    return new Exposure(hours + moreHours, chargedAh + moreAh);
  }
}
