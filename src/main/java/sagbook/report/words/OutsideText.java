package sagbook.report.words;

import java.util.Locale;

/** Text that came from outside: names of packs, banks and files. */
public final class OutsideText {
  private static final int ZERO_WIDTH_NON_JOINER = 0x200C;
  private static final int ZERO_WIDTH_JOINER = 0x200D;

  private OutsideText() {}

  /**
   * The text with every character that would act rather than show (control, direction-changing,
   * lone surrogate, line and paragraph separator) written as a visible code such as {@code
   * <U+202E>}.
   */
  public static String shown(String text) {
    StringBuilder shown = new StringBuilder(text.length());
    text.codePoints()
        .forEach(
            c -> {
              if (acts(c)) {
                shown.append(String.format(Locale.ROOT, "<U+%04X>", c));
              } else {
                shown.appendCodePoint(c);
              }
            });
    return shown.toString();
  }

  private static boolean acts(int codePoint) {
    if (codePoint == ZERO_WIDTH_NON_JOINER || codePoint == ZERO_WIDTH_JOINER) {
      return false;
    }
    return switch (Character.getType(codePoint)) {
      case Character.CONTROL,
          Character.FORMAT,
          Character.SURROGATE,
          Character.LINE_SEPARATOR,
          Character.PARAGRAPH_SEPARATOR ->
          true;
      default -> false;
    };
  }
}
