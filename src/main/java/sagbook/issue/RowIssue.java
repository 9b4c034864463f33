package sagbook.issue;

import java.util.Locale;
import sagbook.wording.Words;

/** Why a row, or one value in it, was not used. */
public enum RowIssue {
  TORN_ROW,
  UNREADABLE_TIME,
  REPEATED_HEADER,
  DUPLICATE_TIME,
  BACKWARD_TIME,
  STRAY_CLOCK,
  TEXT_VALUE,
  IMPLAUSIBLE_VOLTAGE,
  IMPLAUSIBLE_TEMPERATURE,
  IMPLAUSIBLE_CURRENT,
  IMPLAUSIBLE_BLEED,
  SPIKE,
  UNKNOWN_CHANNEL;

  private static final Words WORDS = Words.english();

  /** What is counted, as the end of "12 ...". */
  public String words() {
    return WORDS.say("row." + name().toLowerCase(Locale.ROOT).replace('_', '-'));
  }
}
