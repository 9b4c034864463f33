package sagbook.logfile;

import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** A unit that logs use, with the straight line that leads to the project's own unit. */
enum Unit {
  VOLT("V", Quantity.CELL_VOLTAGE, 1, 0),
  MILLIVOLT("mV", Quantity.CELL_VOLTAGE, 0.001, 0),
  MICROVOLT("µV", Quantity.CELL_VOLTAGE, 1e-6, 0),
  AMPERE("A", Quantity.CURRENT, 1, 0),
  MILLIAMPERE("mA", Quantity.CURRENT, 0.001, 0),
  WATT("W", Quantity.POWER, 1, 0),
  KILOWATT("kW", Quantity.POWER, 1000, 0),
  CELSIUS("°C", Quantity.CELL_TEMPERATURE, 1, 0),
  FAHRENHEIT("°F", Quantity.CELL_TEMPERATURE, 5.0 / 9, -160.0 / 9),
  KELVIN("K", Quantity.CELL_TEMPERATURE, 1, -273.15),
  TENTH_CELSIUS("0.1 °C", Quantity.CELL_TEMPERATURE, 0.1, 0),
  PERCENT("%", Quantity.CELL_BLEED, 0.01, 0),
  FRACTION("0 to 1", Quantity.CELL_BLEED, 1, 0),
  SECOND("s", Quantity.TIME, 1, 0),
  MILLISECOND("ms", Quantity.TIME, 1e-3, 0),
  MICROSECOND("µs", Quantity.TIME, 1e-6, 0),
  MINUTE("min", Quantity.TIME, 60, 0),
  HOUR("h", Quantity.TIME, 3600, 0);

  private static final Map<String, Unit> SPELLINGS =
      Map.ofEntries(
          Map.entry("v", VOLT),
          Map.entry("volt", VOLT),
          Map.entry("volts", VOLT),
          Map.entry("mv", MILLIVOLT),
          Map.entry("millivolt", MILLIVOLT),
          Map.entry("millivolts", MILLIVOLT),
          Map.entry("uv", MICROVOLT),
          Map.entry("µv", MICROVOLT),
          Map.entry("a", AMPERE),
          Map.entry("amp", AMPERE),
          Map.entry("amps", AMPERE),
          Map.entry("ampere", AMPERE),
          Map.entry("amperes", AMPERE),
          Map.entry("ma", MILLIAMPERE),
          Map.entry("milliampere", MILLIAMPERE),
          Map.entry("milliamps", MILLIAMPERE),
          Map.entry("w", WATT),
          Map.entry("watt", WATT),
          Map.entry("watts", WATT),
          Map.entry("kw", KILOWATT),
          Map.entry("kilowatt", KILOWATT),
          Map.entry("c", CELSIUS),
          Map.entry("°c", CELSIUS),
          Map.entry("ºc", CELSIUS),
          Map.entry("℃", CELSIUS),
          Map.entry("degc", CELSIUS),
          Map.entry("deg_c", CELSIUS),
          Map.entry("deg c", CELSIUS),
          Map.entry("celsius", CELSIUS),
          Map.entry("grad", CELSIUS),
          Map.entry("f", FAHRENHEIT),
          Map.entry("°f", FAHRENHEIT),
          Map.entry("℉", FAHRENHEIT),
          Map.entry("degf", FAHRENHEIT),
          Map.entry("deg f", FAHRENHEIT),
          Map.entry("fahrenheit", FAHRENHEIT),
          Map.entry("k", KELVIN),
          Map.entry("kelvin", KELVIN),
          Map.entry("0.1 °c", TENTH_CELSIUS),
          Map.entry("0.1°c", TENTH_CELSIUS),
          Map.entry("%", PERCENT),
          Map.entry("percent", PERCENT),
          Map.entry("pct", PERCENT),
          Map.entry("prozent", PERCENT),
          Map.entry("fraction", FRACTION),
          Map.entry("0 to 1", FRACTION),
          Map.entry("0..1", FRACTION),
          Map.entry("ratio", FRACTION),
          Map.entry("s", SECOND),
          Map.entry("sec", SECOND),
          Map.entry("secs", SECOND),
          Map.entry("second", SECOND),
          Map.entry("seconds", SECOND),
          Map.entry("sekunden", SECOND),
          Map.entry("ms", MILLISECOND),
          Map.entry("msec", MILLISECOND),
          Map.entry("millis", MILLISECOND),
          Map.entry("milliseconds", MILLISECOND),
          Map.entry("us", MICROSECOND),
          Map.entry("µs", MICROSECOND),
          Map.entry("microseconds", MICROSECOND),
          Map.entry("min", MINUTE),
          Map.entry("minute", MINUTE),
          Map.entry("minutes", MINUTE),
          Map.entry("h", HOUR),
          Map.entry("hr", HOUR),
          Map.entry("hour", HOUR),
          Map.entry("hours", HOUR));

  private final String symbol;
  private final Quantity family;
  private final double factor;
  private final double offset;

  Unit(String symbol, Quantity family, double factor, double offset) {
    this.symbol = symbol;
    this.family = family;
    this.factor = factor;
    this.offset = offset;
  }

  String symbol() {
    return symbol;
  }

  /** The quantity that this unit alone suggests. */
  Quantity family() {
    return family;
  }

  double factor() {
    return factor;
  }

  double offset() {
    return offset;
  }

  static Optional<Unit> find(String spelling) {
    String key = spelling.strip().toLowerCase(Locale.ROOT).replace('\u03bc', 'µ');
    return Optional.ofNullable(SPELLINGS.get(key));
  }

  /** Whether values of {@code quantity} can be given in this unit. */
  boolean fits(Quantity quantity) {
    return switch (family) {
      case CELL_VOLTAGE -> quantity == Quantity.CELL_VOLTAGE || quantity == Quantity.PACK_VOLTAGE;
      case CURRENT ->
          quantity == Quantity.CURRENT
              || quantity == Quantity.CHARGE_CURRENT
              || quantity == Quantity.DISCHARGE_CURRENT;
      default -> quantity == family;
    };
  }
}
