package sagbook.verdict;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import sagbook.estimate.CellEstimates;
import sagbook.estimate.ResistanceChange;
import sagbook.estimate.TemperatureFault;
import sagbook.model.Estimate;

/** What the verdict says, in plain sentences. */
final class Words {
  private static final DateTimeFormatter DAY =
      DateTimeFormatter.ofPattern("d MMMM uuuu", Locale.ENGLISH);

  private Words() {}

  static List<String> evidence(CellEstimates cell, double pulseS, ZoneId zone) {
    List<String> all = new ArrayList<>();
    relative(cell.capacityRelative(), "capacity", all);
    relative(
        cell.resistanceRelative(),
        String.format(Locale.ROOT, "resistance %.0f s after a load step", pulseS),
        all);
    cell.resistanceChange().ifPresent(change -> all.add(changed(change, cell, zone)));
    if (cell.slowResponseRelative() instanceof Estimate.Known s
        && cell.resistanceRelative().find().orElse(1) > 1.1) {
      all.add(
          String.format(
              Locale.ROOT,
              "The slow part of its answer to a load is %.0f %% of its neighbours' (95 %% interval"
                  + " %.0f to %.0f %%): a worn cell raises it, a joint leaves it at 100 %%.",
              100 * s.value(),
              100 * s.low(),
              100 * s.high()));
    }
    if (cell.chargeOffsetPercent() instanceof Estimate.Known o && Math.abs(o.value()) > 0.5) {
      all.add(
          String.format(
              Locale.ROOT,
              "It holds %.1f %% %s charge than its neighbours (95 %% interval %.1f to %.1f %% of"
                  + " nominal capacity).",
              Math.abs(o.value()),
              o.value() < 0 ? "less" : "more",
              o.low(),
              o.high()));
    }
    if (cell.selfDischargeMilliamp() instanceof Estimate.Known d && d.isAbove(3)) {
      all.add(
          String.format(
              Locale.ROOT,
              "It loses %.0f mA more than its neighbours (95 %% interval %.0f to %.0f mA), bleeding"
                  + " taken into account where it was logged.",
              d.value(),
              d.low(),
              d.high()));
    }
    if (cell.voltageOffsetMillivolt() instanceof Estimate.Known v && Math.abs(v.value()) > 6) {
      all.add(
          String.format(
              Locale.ROOT,
              "Its voltage reads %.0f mV %s than its charge explains, at rest and under load alike"
                  + " (95 %% interval %.0f to %.0f mV).",
              Math.abs(v.value()),
              v.value() < 0 ? "less" : "more",
              v.low(),
              v.high()));
    }
    if (cell.temperatureFault() instanceof TemperatureFault.Seen seen) {
      all.add("Its temperature " + seen.words() + ".");
    }
    return all;
  }

  private static String changed(ResistanceChange change, CellEstimates cell, ZoneId zone) {
    String day =
        DAY.format(Instant.ofEpochSecond((long) change.sinceS()).atZone(zone).toLocalDate());
    if (!(change.beforeRelative() instanceof Estimate.Known before)) {
      return "Its resistance became another one within this log, about " + day + ".";
    }
    boolean rose = cell.resistanceRelative().find().orElse(1) > before.value();
    return String.format(
        Locale.ROOT,
        "Its resistance %s within this log, about %s: before, it was %.0f %% of its neighbours'"
            + " (95 %% interval %.0f to %.0f %%); the value above is that at the end.",
        rose ? "rose" : "fell",
        day,
        100 * before.value(),
        100 * before.low(),
        100 * before.high());
  }

  private static void relative(Estimate estimate, String what, List<String> into) {
    if (estimate instanceof Estimate.Known k) {
      into.add(
          String.format(
              Locale.ROOT,
              "Its %s is %.1f %% of its neighbours' (95 %% interval %.1f to %.1f %%).",
              what,
              100 * k.value(),
              100 * k.low(),
              100 * k.high()));
    } else if (estimate instanceof Estimate.Unknown u) {
      into.add("Its " + what + " is not known: " + u.reason() + ".");
    }
  }

  /** "cell 3", "cells 3 and 7", "cells 3, 7 and 9". */
  static String cells(List<Integer> places) {
    StringBuilder text = new StringBuilder(places.size() == 1 ? "cell " : "cells ");
    for (int i = 0; i < places.size(); i++) {
      text.append(i == 0 ? "" : i == places.size() - 1 ? " and " : ", ").append(places.get(i));
    }
    return text.toString();
  }

  static String capital(String sentence) {
    return sentence.substring(0, 1).toUpperCase(Locale.ROOT) + sentence.substring(1);
  }
}
