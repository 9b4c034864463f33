package sagbook.logfile;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Works out what a column holds from the words, number and unit in its name. No product's names are
 * known here, only the trade's words, in a few languages.
 */
final class NameReader {
  private static final Set<String> TIME =
      Set.of(
          "time",
          "timestamp",
          "datetime",
          "date",
          "ts",
          "epoch",
          "unix",
          "unixtime",
          "utc",
          "clock",
          "zeit",
          "zeitstempel",
          "datum",
          "uhrzeit",
          "heure",
          "horodatage",
          "hora",
          "fecha",
          "tempo",
          "elapsed",
          "uptime",
          "runtime",
          "seconds",
          "millis",
          "tijd");
  private static final Set<String> NOT_MEASURED =
      Set.of(
          "soc",
          "soh",
          "state",
          "status",
          "mode",
          "step",
          "alarm",
          "alarms",
          "error",
          "errors",
          "flags",
          "cycle",
          "cycles",
          "capacity",
          "ah",
          "mah",
          "wh",
          "kwh",
          "energy",
          "remaining",
          "delta",
          "diff",
          "difference",
          "spread",
          "counter",
          "count",
          "humidity",
          "setpoint",
          "limit",
          "target",
          "firmware",
          "version",
          "rssi",
          "resistance",
          "mohm",
          "ohm",
          "min",
          "max",
          "minimum",
          "maximum",
          "lowest",
          "highest",
          "stddev",
          "reserve",
          "warning",
          "hysteresis",
          "calibration");
  private static final Set<String> BLEED =
      Set.of(
          "bleed",
          "bleeding",
          "bleeder",
          "balance",
          "balancing",
          "balancer",
          "bal",
          "bypass",
          "burn",
          "shunting",
          "equalise",
          "equalize",
          "equalizing",
          "ausgleich");
  private static final Set<String> TEMPERATURE =
      Set.of(
          "t",
          "temp",
          "temps",
          "temperature",
          "temperatures",
          "temperatur",
          "tmp",
          "therm",
          "thermistor",
          "ntc",
          "temperatura",
          "degc",
          "celsius");
  private static final Set<String> VOLTAGE =
      Set.of(
          "v",
          "u",
          "volt",
          "volts",
          "voltage",
          "voltages",
          "spannung",
          "tension",
          "voltaje",
          "tensione",
          "vcell",
          "cellv",
          "ucell",
          "mv");
  private static final Set<String> CURRENT =
      Set.of(
          "i",
          "current",
          "curr",
          "amps",
          "amp",
          "ampere",
          "amperes",
          "strom",
          "courant",
          "corriente",
          "corrente",
          "ibat",
          "ipack",
          "ma",
          "amperage",
          "shunt");
  private static final Set<String> POWER =
      Set.of("power", "p", "watt", "watts", "leistung", "puissance", "potencia", "kw");
  private static final Set<String> CELL =
      Set.of(
          "cell", "cells", "zelle", "zellen", "cellule", "celda", "cella", "c", "cel", "module",
          "board", "node", "group", "vcell", "cellv", "ucell", "string", "z");
  private static final Set<String> ONE_CELL =
      Set.of("cell", "cells", "zelle", "zellen", "cellule", "celda", "cella", "cel", "vcell");
  private static final Set<String> PACK =
      Set.of("pack", "total", "sum", "bus", "bank", "battery", "batt", "bat", "batterie", "string");
  private static final Set<String> ELSEWHERE =
      Set.of(
          "ambient",
          "air",
          "room",
          "outside",
          "outdoor",
          "inverter",
          "mos",
          "mosfet",
          "fet",
          "cpu",
          "chip",
          "heatsink",
          "charger",
          "solar",
          "pv",
          "grid",
          "load",
          "ac",
          "internal");
  private static final Set<String> CHANNEL =
      Set.of(
          "channel",
          "sensor",
          "entity",
          "entityid",
          "name",
          "topic",
          "metric",
          "measurement",
          "series",
          "key",
          "variable",
          "parameter",
          "quantity",
          "field",
          "signal",
          "item",
          "measure",
          "register",
          "groesse",
          "kind",
          "type");
  private static final Set<String> VALUE =
      Set.of("value", "val", "reading", "wert", "valeur", "valor", "payload", "state", "number");
  private static final Set<String> UNIT_NAMES = Set.of("unit", "units", "einheit", "uom");
  private static final Pattern BRACKETS =
      Pattern.compile("[\\[(<{]\\s*([^\\[\\](){}<>]{1,16})\\s*[\\])>}]");
  private static final Pattern SLASHED =
      Pattern.compile("^(.*\\S)\\s*(?:/| in )\\s*([A-Za-zµ°%℃]{1,10})\\s*$");
  private static final Pattern PIECES = Pattern.compile("[\\p{L}°%℃℉µ]+|[0-9]+");
  private static final Pattern CAMEL = Pattern.compile("(?<=\\p{Ll}{2})(?=\\p{Lu})");

  private NameReader() {}

  /** What the name of a column says; ignored when it says nothing. */
  static Meaning read(String name) {
    String shown = name.length() > 200 ? name.substring(0, 200) : name;
    Optional<Unit> unit = Optional.empty();
    Matcher brackets = BRACKETS.matcher(shown);
    Matcher slashed = SLASHED.matcher(shown);
    if (brackets.find()) {
      unit = Unit.find(brackets.group(1));
      shown = shown.substring(0, brackets.start()) + " " + shown.substring(brackets.end());
    } else if (slashed.matches() && Unit.find(slashed.group(2)).isPresent()) {
      unit = Unit.find(slashed.group(2));
      shown = slashed.group(1);
    }
    Words words = Words.of(shown);
    if (unit.isEmpty()) {
      unit = words.unitAtEnd();
    }
    Meaning meaning = quantity(words, unit);
    if (unit.isPresent() && !unit.get().fits(meaning.quantity()) && !isLoose(meaning)) {
      return meaning;
    }
    return unit.isPresent() && meaning.quantity() != Quantity.IGNORED
        ? meaning.withUnit(unit.get())
        : meaning;
  }

  private static boolean isLoose(Meaning meaning) {
    return meaning.quantity() == Quantity.CELL_UNNAMED || meaning.quantity() == Quantity.VALUE;
  }

  private static Meaning quantity(Words words, Optional<Unit> unit) {
    if (words.isEmpty()) {
      return Meaning.ignored();
    }
    if (isTime(words, unit)) {
      return Meaning.of(Quantity.TIME);
    }
    Optional<Meaning> tall = ofTallTable(words);
    if (tall.isPresent()) {
      return tall.get();
    }
    Meaning found = measured(words, unit);
    boolean spoiled = words.hasAny(NOT_MEASURED) && !words.hasAny(BLEED);
    return spoiled ? Meaning.ignored() : found;
  }

  private static boolean isTime(Words words, Optional<Unit> unit) {
    boolean timeUnit = unit.isPresent() && unit.get().family() == Quantity.TIME;
    if (words.number() >= 0 && !timeUnit) {
      return false;
    }
    return words.hasAny(TIME)
        || words.has("last", "changed")
        || words.has("last", "updated")
        || (words.only("t") && words.number() < 0)
        || (timeUnit && words.first("t"));
  }

  /** Columns of a table with one line a value or a cell. */
  private static Optional<Meaning> ofTallTable(Words words) {
    if (words.number() >= 0) {
      return Optional.empty();
    }
    if (words.onlyFrom(UNIT_NAMES) || words.has("unit", "of")) {
      return Optional.of(Meaning.of(Quantity.UNIT_NAME));
    }
    if (words.onlyFrom(VALUE)) {
      return Optional.of(Meaning.of(Quantity.VALUE));
    }
    boolean cell = words.firstFrom(CELL) || words.first("address") || words.first("addr");
    if (cell
        && words.restFrom(Set.of("id", "no", "nr", "number", "index", "address", "idx", "num"))) {
      return Optional.of(Meaning.of(Quantity.CELL_NUMBER));
    }
    if (words.firstFrom(CHANNEL) && words.restFrom(Set.of("id", "name"))) {
      return Optional.of(Meaning.of(Quantity.CHANNEL_NAME));
    }
    return Optional.empty();
  }

  private static Meaning measured(Words words, Optional<Unit> unit) {
    int cell = words.number();
    if (words.hasAny(BLEED)) {
      return new Meaning(Quantity.CELL_BLEED, cell, Optional.empty());
    }
    Quantity family = unit.map(Unit::family).orElse(Quantity.IGNORED);
    boolean thermal = words.hasAny(TEMPERATURE) || family == Quantity.CELL_TEMPERATURE;
    if (thermal && !words.hasAny(ELSEWHERE)) {
      return new Meaning(Quantity.CELL_TEMPERATURE, cell, Optional.empty());
    }
    if (words.hasAny(ELSEWHERE) && !words.hasAny(PACK)) {
      return Meaning.ignored();
    }
    boolean ofCell = words.hasAny(CELL) && cell >= 0;
    if ((words.hasAny(CURRENT) || family == Quantity.CURRENT) && !ofCell) {
      return Meaning.of(currentKind(words));
    }
    if (words.hasAny(POWER) || family == Quantity.POWER) {
      return ofCell ? Meaning.ignored() : Meaning.of(Quantity.POWER);
    }
    if (words.hasAny(VOLTAGE) || family == Quantity.CELL_VOLTAGE) {
      boolean pack = words.hasAny(PACK) && !words.hasAny(ONE_CELL);
      return cell >= 0 && !pack
          ? new Meaning(Quantity.CELL_VOLTAGE, cell, Optional.empty())
          : new Meaning(Quantity.PACK_VOLTAGE, -1, Optional.empty());
    }
    return words.hasAny(CELL) && cell >= 0 && words.size() <= 2
        ? new Meaning(Quantity.CELL_UNNAMED, cell, Optional.empty())
        : Meaning.ignored();
  }

  private static Quantity currentKind(Words words) {
    boolean charge = words.has("charge") || words.has("charging") || words.has("chg");
    boolean discharge = words.has("discharge") || words.has("discharging") || words.has("dsg");
    if (charge == discharge) {
      return Quantity.CURRENT;
    }
    return charge ? Quantity.CHARGE_CURRENT : Quantity.DISCHARGE_CURRENT;
  }

  /** The words and the telling number of a name. */
  private static final class Words {
    private final List<String> words = new ArrayList<>();
    private int number = -1;

    static Words of(String name) {
      Words found = new Words();
      Matcher pieces = PIECES.matcher(CAMEL.matcher(name).replaceAll(" "));
      boolean afterCell = false;
      boolean settled = false;
      while (pieces.find()) {
        String piece = pieces.group().toLowerCase(Locale.ROOT);
        if (!Character.isDigit(piece.charAt(0))) {
          found.words.add(piece);
          afterCell =
              CELL.contains(piece) || VOLTAGE.contains(piece) || TEMPERATURE.contains(piece);
        } else if (piece.length() <= 4 && !settled) {
          found.number = Integer.parseInt(piece);
          settled = afterCell;
        }
      }
      return found;
    }

    Optional<Unit> unitAtEnd() {
      if (words.isEmpty() || (words.size() == 1 && number < 0)) {
        return words.size() == 1 && words.get(0).length() > 1 && !TIME.contains(words.get(0))
            ? Unit.find(words.get(0)).filter(u -> u.family() != Quantity.TIME)
            : Optional.empty();
      }
      String last = words.get(words.size() - 1);
      boolean alone = words.size() == 1;
      return alone && last.length() == 1 ? Optional.empty() : Unit.find(last);
    }

    int number() {
      return number;
    }

    int size() {
      return words.size();
    }

    boolean isEmpty() {
      return words.isEmpty();
    }

    boolean has(String... all) {
      return words.containsAll(List.of(all));
    }

    boolean only(String word) {
      return words.size() == 1 && words.get(0).equals(word);
    }

    boolean first(String word) {
      return !words.isEmpty() && words.get(0).equals(word);
    }

    boolean firstFrom(Set<String> set) {
      return !words.isEmpty() && set.contains(words.get(0));
    }

    boolean restFrom(Set<String> set) {
      return words.size() <= 3 && set.containsAll(words.subList(1, words.size()));
    }

    boolean onlyFrom(Set<String> set) {
      return words.size() == 1 && set.contains(words.get(0));
    }

    boolean hasAny(Set<String> set) {
      for (String word : words) {
        if (set.contains(word)) {
          return true;
        }
      }
      return false;
    }
  }
}
