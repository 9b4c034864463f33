package sagbook.record;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import sagbook.model.Estimate;

/**
 * Rounding for files that programs read: enough digits for any further sum, few enough that the
 * same result has the same text on every machine.
 */
public final class Rounded {
  private static final int SIGNIFICANT = 6;

  private Rounded() {}

  /**
   * One number of an estimate, with the same number of decimals as its value and its ends: three
   * digits of the half-width, and at least four significant digits of the value. The order {@code
   * low <= value <= high} survives.
   */
  public static BigDecimal of(double number, Estimate.Known estimate) {
    int decimals =
        Math.max(decimals(estimate.halfWidth(), 3), Math.max(decimals(estimate.value(), 4), 0));
    return plain(BigDecimal.valueOf(number).setScale(decimals, RoundingMode.HALF_EVEN));
  }

  /** A number without an interval, to six significant digits. */
  public static BigDecimal of(double number) {
    return plain(BigDecimal.valueOf(number).round(new MathContext(SIGNIFICANT)));
  }

  private static int decimals(double number, int significant) {
    if (number == 0) {
      return 0;
    }
    int leading = (int) Math.floor(Math.log10(Math.abs(number)));
    return Math.min(significant - 1 - leading, 12);
  }

  private static BigDecimal plain(BigDecimal number) {
    BigDecimal stripped = number.stripTrailingZeros();
    return stripped.scale() < 0 ? stripped.setScale(0) : stripped;
  }
}
