package sagbook.report.html;

import sagbook.model.Estimate;
import sagbook.record.Quantity;

/** How a quantity is shown to people: ratios as per cent, everything else as it is. */
final class Display {
  private Display() {}

  static Estimate of(Quantity quantity, Estimate estimate) {
    return quantity.unit().equals("1") ? estimate.map(ratio -> ratio * 100) : estimate;
  }

  static String unit(Quantity quantity) {
    return quantity.unit().equals("1") ? "%" : quantity.unit();
  }
}
