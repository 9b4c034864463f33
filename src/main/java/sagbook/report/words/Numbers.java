package sagbook.report.words;

import java.math.BigDecimal;
import java.math.RoundingMode;
import sagbook.model.Estimate;

/**
 * Numbers for people: as many digits as the interval supports and no more.
 *
 * <p>Rule: look at the first three digits of the interval's half-width. From 100 to 354 it keeps
 * two digits, from 355 to 949 one, from 950 up it counts as 1000 and keeps two; value and ends get
 * the decimals of that digit. Source: Particle Data Group, Review of Particle Physics,
 * Introduction, section 5.3 "Rounding".
 */
public final class Numbers {
  private static final char MINUS = '\u2212';
  private static final char NO_BREAK_SPACE = '\u00a0';
  private static final char THIN_NO_BREAK_SPACE = '\u202f';

  private Numbers() {}

  /** The value alone, such as "271.3". */
  public static String value(Estimate.Known estimate) {
    return rounded(estimate.value(), estimate);
  }

  public static String low(Estimate.Known estimate) {
    return rounded(estimate.low(), estimate);
  }

  public static String high(Estimate.Known estimate) {
    return rounded(estimate.high(), estimate);
  }

  /** Whether the value is nothing once it is rounded to what its range supports. */
  public static boolean isZero(Estimate.Known estimate) {
    return BigDecimal.valueOf(estimate.value())
            .setScale(decimals(estimate), RoundingMode.HALF_EVEN)
            .signum()
        == 0;
  }

  /** A number beside an estimate, with the estimate's decimals. */
  public static String rounded(double number, Estimate.Known estimate) {
    return text(number, decimals(estimate));
  }

  /** A number with a fixed count of decimals; a negative count rounds before the point. */
  public static String text(double number, int decimals) {
    BigDecimal rounded = BigDecimal.valueOf(number).setScale(decimals, RoundingMode.HALF_EVEN);
    BigDecimal plain = rounded.scale() < 0 ? rounded.setScale(0) : rounded;
    String text = grouped(plain.abs().toPlainString());
    return plain.signum() < 0 ? MINUS + text : text;
  }

  /** A whole number. */
  public static String count(long number) {
    return grouped(Long.toString(number));
  }

  /** A number with its unit, held together. */
  public static String with(String number, String unit) {
    return unit.equals("1") ? number : number + NO_BREAK_SPACE + unit;
  }

  /** A share in per cent that never reads 0 or 100 unless it is just that. */
  public static String percent(double share) {
    return percent(share, 0);
  }

  /** As {@link #percent(double)}, with at least so many decimals. */
  public static String percent(double share, int fewest) {
    double percent = share * 100;
    for (int decimals = fewest; decimals < 4; decimals++) {
      BigDecimal rounded = BigDecimal.valueOf(percent).setScale(decimals, RoundingMode.HALF_EVEN);
      boolean honest =
          (rounded.doubleValue() != 100 || share == 1) && (rounded.signum() != 0 || share == 0);
      if (honest) {
        return with(rounded.toPlainString(), "%");
      }
    }
    return with(share > 0.5 ? "> 99.999" : "< 0.001", "%");
  }

  /** A number to so many significant digits, for readings without an interval. */
  public static String significant(double number, int digits) {
    return text(number, number == 0 ? 0 : digits - 1 - exponent(number));
  }

  /** A number that somebody gave, with the digits it was given with: "65", "1.8". */
  public static String plain(double number) {
    BigDecimal given = BigDecimal.valueOf(number).stripTrailingZeros();
    return text(number, Math.max(0, given.scale()));
  }

  static int decimals(Estimate.Known estimate) {
    double half = estimate.halfWidth();
    if (half == 0) {
      return estimate.value() == 0 ? 0 : 3 - exponent(estimate.value());
    }
    int exponent = exponent(half);
    long leading = Math.round(half / Math.pow(10, exponent - 2));
    return leading <= 354 ? 1 - exponent : -exponent;
  }

  private static int exponent(double number) {
    return (int) Math.floor(Math.log10(Math.abs(number)));
  }

  private static String grouped(String digits) {
    int point = digits.indexOf('.');
    int whole = point < 0 ? digits.length() : point;
    if (whole < 5) {
      return digits;
    }
    StringBuilder grouped = new StringBuilder(digits);
    for (int at = whole - 3; at > 0; at -= 3) {
      grouped.insert(at, THIN_NO_BREAK_SPACE);
    }
    return grouped.toString();
  }
}
