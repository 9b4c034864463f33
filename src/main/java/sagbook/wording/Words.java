package sagbook.wording;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.text.MessageFormat;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;

/**
 * The wording in one language. A translation is one file beside {@code words.properties} with the
 * same keys.
 */
public final class Words {
  private static final double MINUTE_S = 60;
  private static final double HOUR_S = 3600;
  private static final double DAY_S = 86_400;

  /** From this many of the next larger unit on a length of time is said in it. */
  private static final double LEAST_OF_NEXT = 2;

  private static final Words ENGLISH = read("/sagbook/words.properties");

  private final Properties sentences;
  private final Locale locale;

  private Words(Properties sentences) {
    this.sentences = sentences;
    this.locale = Locale.forLanguageTag(sentences.getProperty("language"));
  }

  public static Words english() {
    return ENGLISH;
  }

  private static Words read(String file) {
    Properties sentences = new Properties();
    try (InputStream in = Words.class.getResourceAsStream(file)) {
      if (in == null) {
        throw new IllegalStateException("the wording is missing from the program");
      }
      Reader reader = new InputStreamReader(in, StandardCharsets.UTF_8);
      sentences.load(reader);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return new Words(sentences);
  }

  /**
   * The wording under a key, with its places filled in.
   *
   * @param arguments text for {0}, {1} and so on, already rounded and made visible
   */
  public String say(String key, String... arguments) {
    String pattern = sentences.getProperty(key);
    if (pattern == null) {
      throw new IllegalArgumentException("no wording for " + key);
    }
    // An apostrophe is one here; for the formatter it would begin what is quoted.
    return new MessageFormat(pattern.replace("'", "''"), Locale.ROOT).format(arguments);
  }

  public boolean has(String key) {
    return sentences.containsKey(key);
  }

  /** All wordings {@code key.1}, {@code key.2} and so on. */
  public List<String> list(String key) {
    List<String> all = new ArrayList<>();
    for (int i = 1; has(key + "." + i); i++) {
      all.add(say(key + "." + i));
    }
    return all;
  }

  /** Every key, sorted. */
  public Set<String> keys() {
    return new TreeSet<>(sentences.stringPropertyNames());
  }

  /** "7" as "cell 7". */
  public String cell(int cell) {
    return say("cell", Integer.toString(cell));
  }

  /** "7" as "Cell 7", to begin a sentence. */
  public String cellFirst(int cell) {
    return say("cell.first", Integer.toString(cell));
  }

  /** A date such as "3 May 2026". */
  public String date(Instant time, ZoneId zone) {
    return date(LocalDate.ofInstant(time, zone));
  }

  public String date(LocalDate day) {
    return DateTimeFormatter.ofPattern(say("date"), locale).format(day);
  }

  /** A date such as "3 May". */
  public String dayAndMonth(LocalDate day) {
    return DateTimeFormatter.ofPattern(say("date.short"), locale).format(day);
  }

  /** A month such as "May 2026". */
  public String monthAndYear(LocalDate day) {
    return DateTimeFormatter.ofPattern(say("date.month"), locale).format(day);
  }

  /** A month such as "March 2026", whatever its length. */
  public String wholeMonthAndYear(LocalDate day) {
    return DateTimeFormatter.ofPattern(say("date.month.whole"), locale).format(day);
  }

  /** A time such as "3 May 2026, 14:05". */
  public String time(Instant time, ZoneId zone) {
    return DateTimeFormatter.ofPattern(say("time"), locale).format(time.atZone(zone));
  }

  /** A number with a fixed count of decimals, as results.json has it within its sentences. */
  public static String fixed(double number, int decimals) {
    return String.format(Locale.ROOT, "%." + decimals + "f", number);
  }

  /** The same, with its sign even where it is positive. */
  public static String signed(double number, int decimals) {
    return String.format(Locale.ROOT, "%+." + decimals + "f", number);
  }

  /** A count such as "1,234", as results.json has it within its sentences. */
  public static String whole(long count) {
    return String.format(Locale.ROOT, "%,d", count);
  }

  /** A length of time as people say it: "10 s", "5 min", "1.5 h", "30 days". */
  public String span(double seconds) {
    double[] unit = {1, MINUTE_S, HOUR_S, DAY_S};
    String[] key = {"span.seconds", "span.minutes", "span.hours", "span.days"};
    int k = 0;
    while (k + 1 < unit.length && seconds >= LEAST_OF_NEXT * unit[k + 1]) {
      k++;
    }
    double tenths = Math.rint(10 * seconds / unit[k]) / 10;
    return say(key[k], fixed(tenths, tenths < 10 && tenths != Math.rint(tenths) ? 1 : 0));
  }

  /** The language's tag for the page. */
  public String language() {
    return locale.toLanguageTag();
  }
}
