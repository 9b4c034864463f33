package sagbook.issue;

import org.jspecify.annotations.Nullable;
import sagbook.wording.Words;

/**
 * Input that can't be used, said in one sentence: where, what was found, what was expected, what to
 * do. It is named by its key in the wording, with what fills its places. The message never holds
 * control characters, so it is safe on a terminal.
 */
public final class InputProblem extends Exception {
  private static final long serialVersionUID = 1L;
  private static final Words WORDS = Words.english();

  /** What went wrong, for the exit code. */
  public enum Kind {
    /** The command or the pack description asks for something that does not make sense. */
    USAGE,
    /** An input can't be read or holds nothing usable. */
    INPUT,
    /** An output can't be written. */
    OUTPUT
  }

  private final Kind kind;

  private InputProblem(Kind kind, String sentence, @Nullable Throwable cause) {
    super(visible(sentence), cause);
    this.kind = kind;
  }

  public static InputProblem usage(String key, String... arguments) {
    return new InputProblem(Kind.USAGE, WORDS.say(key, arguments), null);
  }

  public static InputProblem input(String key, String... arguments) {
    return new InputProblem(Kind.INPUT, WORDS.say(key, arguments), null);
  }

  public static InputProblem input(Throwable cause, String key, String... arguments) {
    return new InputProblem(Kind.INPUT, WORDS.say(key, arguments), cause);
  }

  public static InputProblem output(Throwable cause, String key, String... arguments) {
    return new InputProblem(Kind.OUTPUT, WORDS.say(key, arguments), cause);
  }

  public Kind kind() {
    return kind;
  }

  /** The sentence to print. */
  public String sentence() {
    return String.valueOf(getMessage());
  }

  /**
   * Text from outside made safe to print: control and direction-changing characters become a
   * visible escape with its code in hexadecimal, and anything longer than 120 characters is cut.
   */
  public static String quoted(String fromOutside) {
    String shown = fromOutside.length() > 120 ? fromOutside.substring(0, 117) + "..." : fromOutside;
    return "\"" + visible(shown) + "\"";
  }

  /** Text from outside made safe to print, whole and without quotes. */
  public static String shown(String fromOutside) {
    return visible(fromOutside);
  }

  private static String visible(String text) {
    StringBuilder shown = new StringBuilder(text.length());
    text.codePoints()
        .forEach(
            c -> {
              int type = Character.getType(c);
              boolean hidden =
                  type == Character.CONTROL
                      || type == Character.FORMAT
                      || type == Character.SURROGATE
                      || type == Character.LINE_SEPARATOR
                      || type == Character.PARAGRAPH_SEPARATOR;
              if (hidden) {
                shown.append(String.format(java.util.Locale.ROOT, "\\u%04x", c));
              } else {
                shown.appendCodePoint(c);
              }
            });
    return shown.toString();
  }
}
