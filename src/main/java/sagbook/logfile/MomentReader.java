package sagbook.logfile;

import java.util.Locale;

/**
 * Reads a written date and time in place: ISO 8601 in its common forms, and local forms with the
 * day, the month or the year first. The result is split so that the caller can add an offset.
 */
final class MomentReader {
  private static final String MONTHS = "janfebmaraprmayjunjulaugsepoctnovdec";

  private final DateOrder order;
  private char[] text = new char[0];
  private int at;
  private int to;

  /** Seconds since 1970 as if the clock showed UTC. */
  private double localS;

  /** Offset written behind the time, s; NaN when there is none. */
  private double offsetS;

  private boolean hasDate;

  MomentReader(DateOrder order) {
    this.order = order;
  }

  double localS() {
    return localS;
  }

  double offsetS() {
    return offsetS;
  }

  /** Whether a date was read, and not only a time of day. */
  boolean hasDate() {
    return hasDate;
  }

  /** Reads {@code c[from..end)}; false when it is no moment. */
  boolean read(char[] c, int from, int end) {
    text = c;
    at = from;
    to = end;
    localS = 0;
    offsetS = Double.NaN;
    hasDate = false;
    if (!isTimeOfDay()) {
      if (!readDate()) {
        return false;
      }
      hasDate = true;
      while (at < to
          && (text[at] == ' ' || text[at] == 'T' || text[at] == 't' || text[at] == ',')) {
        at++;
      }
    }
    return at == to || (readTime() && readOffset() && at == to);
  }

  private boolean isTimeOfDay() {
    return (at + 2 < to && text[at + 2] == ':') || (at + 1 < to && text[at + 1] == ':');
  }

  private boolean readDate() {
    int start = at;
    int first = digits(8);
    int length = at - start;
    if (length == 8 && first >= 0) {
      return day(first / 10_000, first / 100 % 100, first % 100);
    }
    if (first < 0 || at >= to) {
      return false;
    }
    char separator = text[at++];
    if (!isDateSeparator(separator)) {
      return false;
    }
    boolean named = at < to && Character.isLetter(text[at]);
    int second = named ? monthName() : digits(2);
    if (second < 0 || at >= to || !isDateSeparator(text[at])) {
      return false;
    }
    at++;
    start = at;
    int third = digits(4);
    if (third < 0) {
      return false;
    }
    if (length == 4) {
      return day(first, second, third);
    }
    int year = at - start <= 2 ? 2000 + third : third;
    boolean dayFirst = named || order != DateOrder.MONTH_FIRST;
    if (order == DateOrder.YEAR_FIRST && length == 2 && at - start <= 2 && !named) {
      return day(2000 + first, second, third);
    }
    return dayFirst ? day(year, second, first) : day(year, first, second);
  }

  private static boolean isDateSeparator(char c) {
    return c == '-' || c == '/' || c == '.' || c == ' ';
  }

  private int monthName() {
    int start = at;
    while (at < to && Character.isLetter(text[at])) {
      at++;
    }
    if (at - start < 3) {
      return -1;
    }
    int index = MONTHS.indexOf(new String(text, start, 3).toLowerCase(Locale.ROOT));
    return index >= 0 && index % 3 == 0 ? index / 3 + 1 : -1;
  }

  /** Up to {@code most} digits as a number; -1 when there is none. */
  private int digits(int most) {
    int value = 0;
    int start = at;
    while (at < to && at - start < most && text[at] >= '0' && text[at] <= '9') {
      value = value * 10 + text[at] - '0';
      at++;
    }
    return at == start ? -1 : value;
  }

  /**
   * Days from 1970-01-01 of a date in the Gregorian calendar, by counting 400-year eras of 146,097
   * days that start on 1 March.
   */
  private boolean day(int year, int month, int day) {
    if (year < 1900 || year > 2200 || month < 1 || month > 12 || day < 1 || day > 31) {
      return false;
    }
    if (day > 28 && day > daysIn(year, month)) {
      return false;
    }
    int y = month <= 2 ? year - 1 : year;
    int era = y / 400;
    int yearOfEra = y - era * 400;
    int dayOfYear = (153 * (month > 2 ? month - 3 : month + 9) + 2) / 5 + day - 1;
    int dayOfEra = yearOfEra * 365 + yearOfEra / 4 - yearOfEra / 100 + dayOfYear;
    localS = (era * 146_097L + dayOfEra - 719_468L) * 86_400.0;
    return true;
  }

  private static int daysIn(int year, int month) {
    if (month == 2) {
      return year % 4 == 0 && (year % 100 != 0 || year % 400 == 0) ? 29 : 28;
    }
    return month == 4 || month == 6 || month == 9 || month == 11 ? 30 : 31;
  }

  private boolean readTime() {
    int hour = digits(2);
    if (hour < 0) {
      return false;
    }
    boolean colon = at < to && (text[at] == ':' || text[at] == '.');
    at += colon ? 1 : 0;
    int minute = at < to ? digits(2) : 0;
    if (minute < 0) {
      return false;
    }
    double second = 0;
    boolean more = at < to && (colon ? text[at] == ':' : Character.isDigit(text[at]));
    if (colon && at < to && text[at] == '.') {
      more = true;
    }
    if (more) {
      at += colon ? 1 : 0;
      int whole = digits(2);
      if (whole < 0) {
        return false;
      }
      second = whole + fraction();
    }
    hour = onTwentyFour(hour);
    if (hour < 0 || hour > 24 || minute > 59 || second >= 61) {
      return false;
    }
    localS += hour * 3600.0 + minute * 60.0 + second;
    return true;
  }

  private double fraction() {
    if (at >= to || (text[at] != '.' && text[at] != ',' && text[at] != ':')) {
      return 0;
    }
    at++;
    long value = 0;
    long scale = 1;
    while (at < to && text[at] >= '0' && text[at] <= '9') {
      if (scale < 1_000_000_000L) {
        value = value * 10 + text[at] - '0';
        scale *= 10;
      }
      at++;
    }
    return (double) value / scale;
  }

  /** The hour on a clock of 24 after AM or PM, if one follows; -1 when it makes no sense. */
  private int onTwentyFour(int hour) {
    int look = at;
    while (look < to && text[look] == ' ') {
      look++;
    }
    if (look + 1 >= to || Character.toLowerCase(text[look + 1]) != 'm') {
      return hour;
    }
    char half = Character.toLowerCase(text[look]);
    if (half != 'a' && half != 'p') {
      return hour;
    }
    at = look + 2;
    if (hour < 1 || hour > 12) {
      return -1;
    }
    return hour % 12 + (half == 'p' ? 12 : 0);
  }

  private boolean readOffset() {
    while (at < to && text[at] == ' ') {
      at++;
    }
    if (at == to) {
      return true;
    }
    char c = text[at];
    if (c == 'Z' || c == 'z') {
      at++;
      offsetS = 0;
      return skipZoneName();
    }
    if (startsWith("UTC") || startsWith("GMT")) {
      at += 3;
      offsetS = 0;
      return at == to || readOffset();
    }
    if (c != '+' && c != '-' && c != '\u2212') {
      return false;
    }
    at++;
    int hours = digits(2);
    at += at < to && text[at] == ':' ? 1 : 0;
    int minutes = at < to && Character.isDigit(text[at]) ? digits(2) : 0;
    if (hours < 0 || hours > 18 || minutes > 59) {
      return false;
    }
    offsetS = (c == '+' ? 1 : -1) * (hours * 3600.0 + minutes * 60.0);
    return skipZoneName();
  }

  private boolean startsWith(String word) {
    return to - at >= word.length() && new String(text, at, word.length()).equals(word);
  }

  private boolean skipZoneName() {
    if (at < to && text[at] == '[' && text[to - 1] == ']') {
      at = to;
    }
    return true;
  }
}
