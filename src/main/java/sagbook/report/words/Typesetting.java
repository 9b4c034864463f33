package sagbook.report.words;

import java.util.regex.Pattern;

/**
 * Sentences as they are set on a page: a number keeps its unit and a range its ends on one line,
 * and the apostrophe and the grouping of digits have one form, wherever the sentence comes from.
 */
public final class Typesetting {
  private static final String NUMBER = "[\u2212+\u00b1\u2264]?\\d[\\d.,\u202f]*";
  private static final String UNIT =
      "(?:%|m?V|m?A|Ah|k?Wh|k?W|m\u03a9|ms|s|min|h|K|°C|kJ/mol)(?![\\p{L}\\d])";

  private static final Pattern WITH_UNIT = Pattern.compile("(?<=\\d) (?=" + UNIT + ")");

  /** "3.1 to 3.4" and "3.1 V to 3.4 V", but not years. */
  private static final Pattern RANGE =
      Pattern.compile(
          "(?<![\\p{L}\\d.])((?!\\d{4} )"
              + NUMBER
              + "(?:\u00a0"
              + UNIT
              + ")?) to (?="
              + NUMBER
              + ")");

  /** "259,200", as a sentence has it that programs read too. */
  private static final Pattern GROUPED =
      Pattern.compile("(?<![^ (])\\d{1,3}(?:,\\d{3})+(?=[ .;)]|$)(?!\\.\\S)");

  private static final Pattern CELL = Pattern.compile("(?<=\\b[Cc]ells?) (?=\\d)");
  private static final Pattern APOSTROPHE =
      Pattern.compile("(?<=\\p{L})'(?=\\p{L})|(?<=s)'(?=[ .,;:]|$)");

  private static final Pattern MINUS = Pattern.compile("(?<![\\p{L}\\d.-])-(?=\\d)");

  private Typesetting() {}

  /** The sentence with no-break spaces where a line must not end, true minus and apostrophe. */
  public static String of(String sentence) {
    String held = MINUS.matcher(sentence).replaceAll("\u2212");
    held =
        GROUPED
            .matcher(held)
            .replaceAll(found -> Numbers.count(Long.parseLong(found.group().replace(",", ""))));
    held = WITH_UNIT.matcher(held).replaceAll("\u00a0");
    held = RANGE.matcher(held).replaceAll("$1\u00a0to\u00a0");
    held = CELL.matcher(held).replaceAll("\u00a0");
    return APOSTROPHE.matcher(held).replaceAll("\u2019");
  }
}
