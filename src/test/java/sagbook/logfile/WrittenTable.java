package sagbook.logfile;

import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * A table of whole numbers and the text that a logger of some style would write of it.
 *
 * @param startS first row, s since 1970
 * @param stepMs between rows, ms
 * @param millivolts rows × cells
 * @param tenthsCelsius rows × cells
 * @param tenthsAmpere one a row
 */
record WrittenTable(
    long startS, int stepMs, int[][] millivolts, int[][] tenthsCelsius, int[] tenthsAmpere) {
  static final ZoneId ZONE = ZoneId.of("Europe/Berlin");

  enum Layout {
    WIDE,
    LINE_A_VALUE,
    LINE_A_CELL,
    JSON_LINES
  }

  enum TimeStyle {
    ISO_UTC,
    ISO_OFFSET,
    ISO_LOCAL,
    DAY_FIRST,
    MONTH_FIRST_HALVES,
    DATE_AND_TIME_APART,
    UNIX_SECONDS,
    UNIX_MILLISECONDS,
    UNIX_MICROSECONDS,
    ELAPSED_FROM_PREAMBLE
  }

  enum Quotes {
    NONE,
    NAMES,
    ALL
  }

  /** How a logger writes; {@code order} shuffles the columns. */
  record Style(
      Layout layout,
      TimeStyle time,
      char delimiter,
      boolean decimalComma,
      boolean grouped,
      Quotes quotes,
      String lineEnd,
      boolean lastLineEnds,
      boolean trailingDelimiter,
      boolean preamble,
      Unit voltage,
      Unit temperature,
      Unit current,
      long order) {}

  /** One named value of a row. */
  private record Entry(int cell, String quantity, Unit unit, String value) {
    String name() {
      return (cell > 0 ? "cell " + cell + " " : "") + quantity;
    }
  }

  int rows() {
    return tenthsAmpere.length;
  }

  int cells() {
    return millivolts[0].length;
  }

  double timeS(int row) {
    return startS + row * (stepMs / 1000.0);
  }

  String text(Style style) {
    StringBuilder text = new StringBuilder();
    if (style.preamble() || style.time() == TimeStyle.ELAPSED_FROM_PREAMBLE) {
      String start = Instant.ofEpochSecond(startS).toString();
      text.append("Cellar log, started ").append(start).append(style.lineEnd());
    }
    for (List<String> line : lines(style)) {
      text.append(String.join(String.valueOf(style.delimiter()), line));
      text.append(style.trailingDelimiter() ? String.valueOf(style.delimiter()) : "");
      text.append(style.lineEnd());
    }
    return style.lastLineEnds()
        ? text.toString()
        : text.substring(0, text.length() - style.lineEnd().length());
  }

  private List<List<String>> lines(Style style) {
    List<List<String>> lines = new ArrayList<>();
    for (int row = 0; row < rows(); row++) {
      List<Entry> entries = entries(row, style);
      List<String> times = times(row, style);
      switch (style.layout()) {
        case WIDE -> wide(lines, row, times, entries, style);
        case LINE_A_VALUE -> lineAValue(lines, row, times, entries, style);
        case LINE_A_CELL -> lineACell(lines, row, times, entries, style);
        case JSON_LINES -> lines.add(List.of(json(times.get(0), entries)));
      }
    }
    return lines;
  }

  private List<Entry> entries(int row, Style style) {
    List<Entry> entries = new ArrayList<>();
    for (int c = 0; c < cells(); c++) {
      entries.add(
          new Entry(c + 1, "voltage", style.voltage(), number(volts(row, c, style), style)));
      entries.add(
          new Entry(
              c + 1, "temperature", style.temperature(), number(warmth(row, c, style), style)));
    }
    String current =
        style.current() == Unit.AMPERE
            ? decimal(tenthsAmpere[row] * 10L, 2)
            : decimal(tenthsAmpere[row] * 1000L, 1);
    entries.add(new Entry(0, "current", style.current(), number(current, style)));
    return entries;
  }

  private String volts(int row, int cell, Style style) {
    int mv = millivolts[row][cell];
    return style.voltage() == Unit.VOLT ? decimal(mv, 3) : decimal(mv * 10L, 1);
  }

  private String warmth(int row, int cell, Style style) {
    int tenths = tenthsCelsius[row][cell];
    return switch (style.temperature()) {
      case KELVIN -> decimal(tenths * 10L + 27_315, 2);
      case FAHRENHEIT -> decimal(tenths * 18L + 3200, 2);
      default -> decimal(tenths, 1);
    };
  }

  /** A whole number of the last of so many decimals, with a point. */
  private static String decimal(long value, int decimals) {
    return java.math.BigDecimal.valueOf(value, decimals).toPlainString();
  }

  private static String number(String plain, Style style) {
    int point = plain.indexOf('.');
    boolean thousands = point > 3 && Character.isDigit(plain.charAt(point - 4));
    return style.grouped() && thousands
        ? marked(plain.substring(0, point - 3) + ',' + plain.substring(point - 3), style)
        : marked(plain, style);
  }

  /** With the style's decimal mark, and the other mark between thousands. */
  private static String marked(String text, Style style) {
    return style.decimalComma() && style.layout() != Layout.JSON_LINES
        ? text.replace(',', '_').replace('.', ',').replace('_', '.')
        : text;
  }

  private List<String> times(int row, Style style) {
    Instant moment = Instant.ofEpochMilli(startS * 1000 + (long) row * stepMs);
    ZonedDateTime local = moment.atZone(ZONE);
    long ms = moment.toEpochMilli();
    return switch (style.time()) {
      case ISO_UTC -> List.of(moment.toString());
      case ISO_OFFSET -> List.of(DateTimeFormatter.ISO_OFFSET_DATE_TIME.format(local));
      case ISO_LOCAL -> List.of(written(local, "uuuu-MM-dd HH:mm:ss.SSS"));
      case DAY_FIRST -> List.of(written(local, "dd.MM.uuuu HH:mm:ss.SSS"));
      case MONTH_FIRST_HALVES -> List.of(written(local, "M/d/uuuu h:mm:ss.SSS a"));
      case DATE_AND_TIME_APART ->
          List.of(written(local, "uuuu/MM/dd"), written(local, "HH:mm:ss.SSS"));
      case UNIX_SECONDS -> List.of(marked(decimal(ms, 3), style));
      case UNIX_MILLISECONDS -> List.of(Long.toString(ms));
      case UNIX_MICROSECONDS -> List.of(Long.toString(ms * 1000));
      case ELAPSED_FROM_PREAMBLE -> List.of(marked(decimal((long) row * stepMs, 3), style));
    };
  }

  private static String written(ZonedDateTime local, String pattern) {
    return DateTimeFormatter.ofPattern(pattern, Locale.ROOT).format(local);
  }

  private static List<String> timeNames(Style style) {
    return style.time() == TimeStyle.DATE_AND_TIME_APART
        ? List.of("date", "time")
        : style.time() == TimeStyle.ELAPSED_FROM_PREAMBLE
            ? List.of("elapsed (s)")
            : List.of("time");
  }

  private static void wide(
      List<List<String>> lines, int row, List<String> times, List<Entry> entries, Style style) {
    if (row == 0) {
      List<String> names = new ArrayList<>(timeNames(style));
      entries.forEach(e -> names.add(e.name() + " (" + e.unit().symbol() + ")"));
      lines.add(fields(names, style, true));
    }
    List<String> values = new ArrayList<>(times);
    entries.forEach(e -> values.add(e.value()));
    lines.add(fields(values, style, false));
  }

  private static void lineAValue(
      List<List<String>> lines, int row, List<String> times, List<Entry> entries, Style style) {
    if (row == 0) {
      List<String> names = new ArrayList<>(timeNames(style));
      names.addAll(List.of("channel", "value", "unit"));
      lines.add(fields(names, style, true));
    }
    for (Entry e : entries) {
      List<String> values = new ArrayList<>(times);
      values.addAll(List.of(e.name(), e.value(), e.unit().symbol()));
      lines.add(fields(values, style, false));
    }
  }

  private void lineACell(
      List<List<String>> lines, int row, List<String> times, List<Entry> entries, Style style) {
    if (row == 0) {
      List<String> names = new ArrayList<>(timeNames(style));
      names.add("cell");
      names.add("voltage (" + style.voltage().symbol() + ")");
      names.add("temperature (" + style.temperature().symbol() + ")");
      names.add("current (" + style.current().symbol() + ")");
      lines.add(fields(names, style, true));
    }
    String current = entries.get(entries.size() - 1).value();
    for (int c = 0; c < cells(); c++) {
      List<String> values = new ArrayList<>(times);
      values.add(Integer.toString(c + 1));
      values.add(entries.get(2 * c).value());
      values.add(entries.get(2 * c + 1).value());
      values.add(current);
      lines.add(fields(values, style, false));
    }
  }

  private static List<String> fields(List<String> fields, Style style, boolean names) {
    List<Integer> places = new ArrayList<>(IntStream.range(0, fields.size()).boxed().toList());
    Collections.shuffle(places, new Random(style.order()));
    return places.stream()
        .map(fields::get)
        .map(
            field ->
                style.quotes() == Quotes.ALL || (names && style.quotes() == Quotes.NAMES)
                    ? '"' + field + '"'
                    : field)
        .collect(Collectors.toList());
  }

  private static String json(String time, List<Entry> entries) {
    String timeValue = time.matches("[0-9.]+") ? time : '"' + time + '"';
    return entries.stream()
        .map(e -> '"' + e.name() + " (" + e.unit().symbol() + ")\": " + e.value())
        .collect(Collectors.joining(", ", "{\"time\": " + timeValue + ", ", "}"));
  }

  /** A moment in the pack's zone, away from the hours at which clocks change. */
  static long start(int year, int month, int day, int hour, int second) {
    return LocalDateTime.of(year, month, day, hour, 0)
        .plusSeconds(second)
        .toEpochSecond(ZoneOffset.UTC);
  }
}
