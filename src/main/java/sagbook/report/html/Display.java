package sagbook.report.html;

import sagbook.model.Estimate;
import sagbook.record.Quantity;
import sagbook.report.words.Numbers;
import sagbook.wording.Words;

/** How a quantity is shown to people: ratios as per cent, everything else as it is. */
final class Display {
  private Display() {}

  static Estimate of(Quantity quantity, Estimate estimate) {
    return quantity.unit().equals("1") ? estimate.map(ratio -> ratio * 100) : estimate;
  }

  /**
   * The best value; where that is nothing within its range and the range ends there too, how much
   * it is at most, for a bare nought would look surer than it is.
   */
  static String value(Estimate.Known known, Words words) {
    return Numbers.isZero(known) && known.low() >= 0
        ? words.say("at-most", Numbers.high(known))
        : Numbers.value(known);
  }

  static String unit(Quantity quantity) {
    return quantity.unit().equals("1") ? "%" : quantity.unit();
  }
}
