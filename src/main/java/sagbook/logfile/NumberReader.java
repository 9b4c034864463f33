package sagbook.logfile;

import java.util.Locale;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Reads numbers in place.
 *
 * <p>A decimal of at most 15 significant digits scaled by at most 10^22 is the quotient or product
 * of two doubles that are exact, so one rounding gives the nearest double, the same as {@link
 * Double#parseDouble} (W. D. Clinger, How to read floating point numbers accurately, PLDI 1990,
 * section 5). Everything else goes through {@link Double#parseDouble}.
 */
final class NumberReader {
  private static final double[] POWERS = {
    1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15
  };
  private static final Set<String> MISSING =
      Set.of(
          "",
          "-",
          "--",
          "---",
          "?",
          "*",
          "nan",
          "-nan",
          "1.#qnan",
          "#n/a",
          "n/a",
          "na",
          "nil",
          "null",
          "none",
          "missing",
          "unavailable",
          "unknown",
          "invalid",
          "inf",
          "-inf",
          "+inf",
          "infinity",
          "-infinity",
          "err",
          "error",
          "timeout",
          "#value!",
          "#div/0!",
          "#num!",
          "\\n",
          "undefined",
          "nodata",
          "no data",
          "offline",
          "not available",
          "x");
  private static final Pattern WITH_UNIT =
      Pattern.compile(
          "([-+]?[0-9][0-9.,' \u00a0\u202f]*(?:[eE][-+]?[0-9]+)?) ?([A-Za-z°℃%µ]{1,8})");
  private static final Pattern GROUPED =
      Pattern.compile(
          "[-+]?[0-9]{1,3}(?:([,.' \u00a0\u202f])[0-9]{3})(?:\\1[0-9]{3})*([.,][0-9]*)?");

  private final char decimal;

  NumberReader(boolean decimalComma) {
    this.decimal = decimalComma ? ',' : '.';
  }

  /** The number in {@code c[from..to)}; NaN when there is none. */
  double read(char[] c, int from, int to) {
    int at = from;
    boolean negative = false;
    if (at < to && (c[at] == '-' || c[at] == '+')) {
      negative = c[at] == '-';
      at++;
    }
    long digits = 0;
    int significant = 0;
    int fraction = 0;
    boolean seenPoint = false;
    boolean seenDigit = false;
    for (; at < to; at++) {
      int digit = c[at] - '0';
      if (digit >= 0 && digit <= 9) {
        digits = digits * 10 + digit;
        significant += digits == 0 ? 0 : 1;
        fraction += seenPoint ? 1 : 0;
        seenDigit = true;
        if (significant > 15 || fraction > 15) {
          return slow(c, from, to);
        }
      } else if (c[at] == decimal && !seenPoint) {
        seenPoint = true;
      } else {
        return slow(c, from, to);
      }
    }
    if (!seenDigit) {
      return Double.NaN;
    }
    double value = digits / POWERS[fraction];
    return negative ? -value : value;
  }

  double read(String text) {
    return read(text.toCharArray(), 0, text.length());
  }

  /** Whether a field that is no number is one of the usual ways to write "no value". */
  static boolean isMissing(char[] c, int from, int to) {
    return to - from <= 16
        && MISSING.contains(new String(c, from, to - from).toLowerCase(Locale.ROOT));
  }

  /** The unit written behind the number, empty when there is none. */
  static String unitBehind(String text) {
    Matcher matcher = WITH_UNIT.matcher(text);
    return matcher.matches() ? matcher.group(2) : "";
  }

  private double slow(char[] c, int from, int to) {
    if (to - from > 64 || from >= to) {
      return Double.NaN;
    }
    String text = new String(c, from, to - from).replace('\u2212', '-');
    Matcher unit = WITH_UNIT.matcher(text);
    if (unit.matches() && !text.matches("[-+]?[0-9.,]+[eE][-+]?[0-9]+")) {
      text = unit.group(1).strip();
    }
    return plain(text);
  }

  private double plain(String text) {
    Matcher grouped = GROUPED.matcher(text);
    String cleaned = text;
    if (grouped.matches() && grouped.group(1).charAt(0) != decimal) {
      cleaned = text.replace(grouped.group(1), "");
    }
    cleaned = cleaned.replace(decimal, '.');
    if (!cleaned.matches("[-+]?([0-9]+\\.?[0-9]*|\\.[0-9]+)([eE][-+]?[0-9]{1,4})?")) {
      return Double.NaN;
    }
    double value = Double.parseDouble(cleaned);
    return Double.isInfinite(value) ? Double.NaN : value;
  }
}
