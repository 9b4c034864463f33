package sagbook.verdict;

import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import sagbook.estimate.CellEstimates;
import sagbook.estimate.ResistanceChange;
import sagbook.estimate.TemperatureFault;
import sagbook.model.Estimate;
import sagbook.wording.Words;

/** What the verdict says, in plain sentences. */
final class VerdictWords {
  private static final Words WORDS = Words.english();

  private VerdictWords() {}

  /**
   * What a cell's finding rests on.
   *
   * @param bleedLogged where it is not, a drain is what was lost beyond an unknown bleeding of the
   *     others, so the least that it may be
   */
  static List<String> evidence(
      CellEstimates cell, double pulseS, ZoneId zone, boolean bleedLogged) {
    List<String> all = new ArrayList<>();
    relative(cell.capacityRelative(), "why.capacity", all);
    relative(cell.resistanceRelative(), "why.resistance", all, Words.fixed(pulseS, 0));
    cell.resistanceChange().ifPresent(change -> all.add(changed(change, cell, zone)));
    if (cell.slowResponseRelative() instanceof Estimate.Known s
        && cell.resistanceRelative().find().orElse(1) > 1.1) {
      all.add(WORDS.say("why.slow", percent(s.value()), percent(s.low()), percent(s.high())));
    }
    if (cell.chargeOffsetPercent() instanceof Estimate.Known o && Math.abs(o.value()) > 0.5) {
      all.add(lessOrMore("why.charge.", o, 1));
    }
    if (cell.selfDischargeMilliamp() instanceof Estimate.Known d && d.isAbove(3)) {
      all.add(drain(d, bleedLogged));
    }
    if (cell.voltageOffsetMillivolt() instanceof Estimate.Known v
        && Math.abs(v.value()) > 6
        && (v.isAbove(0) || v.isBelow(0))) {
      all.add(lessOrMore("why.voltage.", v, 0));
    }
    if (cell.temperatureFault() instanceof TemperatureFault.Seen seen) {
      all.add(WORDS.say("why.thermometer", seen.words()));
    }
    return all;
  }

  private static String drain(Estimate.Known drain, boolean bleedLogged) {
    if (drain.isOpen()) {
      return WORDS.say("why.drain.behind", Words.fixed(drain.low(), 0));
    }
    return WORDS.say(
        bleedLogged ? "why.drain" : "why.drain.least",
        Words.fixed(drain.value(), 0),
        Words.fixed(drain.low(), 0),
        Words.fixed(drain.high(), 0));
  }

  /**
   * A difference by its size, its range from the end that is nearer to none; an end on the other
   * side is said as what it is, for "less" with a sign would have to be read twice.
   */
  private static String lessOrMore(String key, Estimate.Known difference, int decimals) {
    boolean less = difference.value() < 0;
    double near = less ? -difference.high() : difference.low();
    double far = less ? -difference.low() : difference.high();
    String sense = key + (less ? "less" : "more");
    return WORDS.say(
        near < 0 ? sense + ".open" : sense,
        Words.fixed(Math.abs(difference.value()), decimals),
        Words.fixed(Math.abs(near), decimals),
        Words.fixed(far, decimals));
  }

  private static String changed(ResistanceChange change, CellEstimates cell, ZoneId zone) {
    String day = WORDS.date(Instant.ofEpochSecond((long) change.sinceS()), zone);
    if (!(change.beforeRelative() instanceof Estimate.Known before)) {
      return WORDS.say("why.changed", day);
    }
    boolean rose = cell.resistanceRelative().find().orElse(1) > before.value();
    return WORDS.say(
        rose ? "why.rose" : "why.fell",
        day,
        percent(before.value()),
        percent(before.low()),
        percent(before.high()));
  }

  private static void relative(Estimate estimate, String key, List<String> into, String... pulse) {
    if (estimate instanceof Estimate.Known k) {
      into.add(WORDS.say(key, filled(pulse, tenths(k.value()), tenths(k.low()), tenths(k.high()))));
    } else if (estimate instanceof Estimate.Unknown u) {
      into.add(WORDS.say(key + ".unknown", filled(pulse, u.reason())));
    }
  }

  private static String percent(double share) {
    return Words.fixed(100 * share, 0);
  }

  private static String tenths(double share) {
    return Words.fixed(100 * share, 1);
  }

  private static String[] filled(String[] last, String... first) {
    return Stream.of(first, last).flatMap(Stream::of).toArray(String[]::new);
  }

  /** "cell 3", "cells 3 and 7", "cells 3, 7 and 9". */
  static String cells(List<Integer> places) {
    int last = places.get(places.size() - 1);
    if (places.size() == 1) {
      return WORDS.cell(last);
    }
    String first =
        places.subList(0, places.size() - 1).stream()
            .map(String::valueOf)
            .collect(Collectors.joining(", "));
    return WORDS.say("cells", first, Integer.toString(last));
  }

  static String capital(String sentence) {
    return sentence.substring(0, 1).toUpperCase(Locale.ROOT) + sentence.substring(1);
  }
}
