package sagbook.report.html;

import sagbook.model.Estimate;
import sagbook.record.Quantity;
import sagbook.report.words.Numbers;
import sagbook.wording.Words;

/** How a quantity is shown to people: ratios as per cent, everything else as it is. */
final class Display {
  /** What a gain or cost of less is shown as, Ah: more digits would be of no use to anybody. */
  private static final double LITTLE_AH = 0.1;

  private Display() {}

  /** Ratios times a hundred, gains and costs of next to nothing as their bound. */
  static Estimate of(Quantity quantity, Estimate estimate) {
    return switch (quantity.unit()) {
      case "1" -> estimate.map(ratio -> ratio * 100);
      case "Ah" -> rounded(estimate);
      default -> estimate;
    };
  }

  /**
   * The best value; where that is nothing within its range and the range ends there too, how much
   * it is at most, for a bare nought would look surer than it is.
   */
  static String value(Estimate.Known known, Words words) {
    return Numbers.isZero(known) && known.low() >= 0 && known.high() > 0
        ? words.say("at-most", Numbers.high(known))
        : Numbers.value(known);
  }

  /** Its range, from one end to the other, or from the end that is known. */
  static String range(Estimate.Known known, Words words) {
    return known.isOpen()
        ? words.say("range.least", Numbers.low(known))
        : words.say("range", Numbers.low(known), Numbers.high(known));
  }

  /** Value with its unit and its range; a value of nothing as how much it is at most. */
  static String interval(Estimate.Known known, String unit, Words words) {
    return Numbers.isZero(known) && known.low() >= 0 && known.high() > 0
        ? words.say("at-most", Numbers.with(Numbers.high(known), unit))
        : words.say(
            "interval", Numbers.value(known), unit, Numbers.low(known), Numbers.high(known));
  }

  private static Estimate rounded(Estimate estimate) {
    return estimate instanceof Estimate.Known known && known.low() >= 0 && known.high() < LITTLE_AH
        ? new Estimate.Known(0, 0, LITTLE_AH)
        : estimate;
  }

  static String unit(Quantity quantity) {
    return quantity.unit().equals("1") ? "%" : quantity.unit();
  }
}
