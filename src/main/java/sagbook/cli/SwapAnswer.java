package sagbook.cli;

import java.io.PrintWriter;
import java.util.List;
import java.util.function.Function;
import sagbook.model.Estimate;
import sagbook.record.KeptString;
import sagbook.report.words.Numbers;
import sagbook.whatif.Outcome;
import sagbook.whatif.Spare;

/** What {@code swap} prints. */
record SwapAnswer(KeptString string, Spare spare, Estimate sagNowV, Outcome outcome) {

  void print(PrintWriter out) {
    List<String> cells = outcome.change().cells().stream().map(String::valueOf).toList();
    out.println(
        "Replacing "
            + (cells.size() == 1 ? "cell " : "cells ")
            + String.join(", ", cells)
            + " by "
            + (cells.size() == 1 ? "a cell of " : "cells of ")
            + Numbers.with(Numbers.significant(spare.capacityAh(), 4), "Ah")
            + (spare.told() ? "" : " (nominal)")
            + ":");
    line(out, "charge", gain(outcome.gainAh(), "Ah"));
    if (string.usableAh() instanceof Estimate.Known now) {
      line(out, "", "now " + value(now, "Ah"));
    } else {
      line(out, "", "what the battery gives in all is not known");
    }
    line(out, "energy", gain(outcome.gainKWh(), "kWh"));
    line(out, "evening", gain(outcome.gainEveningMinutes(), "min") + evening());
    line(out, "sag", said(outcome.sagV(), after -> value(after, "V") + sagNow()));
    out.println("In brackets the range meant to hold the truth in 95 of 100 cases.");
  }

  private static void line(PrintWriter out, String name, String text) {
    out.println("  " + (name + "          ").substring(0, 10) + text);
  }

  private String evening() {
    return string.use().eveningLoadW().isPresent()
        ? ", at a usual evening's load of "
            + Numbers.with(Numbers.significant(string.use().eveningLoadW().getAsDouble(), 2), "W")
        : "";
  }

  private String sagNow() {
    String at =
        Numbers.with(Numbers.significant(string.use().highestDischargeA().orElse(0), 3), "A");
    return (sagNowV instanceof Estimate.Known now ? " instead of " + value(now, "V") : "")
        + ", the whole string at "
        + at;
  }

  private static String gain(Estimate estimate, String unit) {
    return said(estimate, known -> (known.value() < 0 ? "" : "+") + value(known, unit));
  }

  private static String said(Estimate estimate, Function<Estimate.Known, String> words) {
    return estimate instanceof Estimate.Known known
        ? words.apply(known)
        : "not known: " + ((Estimate.Unknown) estimate).reason();
  }

  private static String value(Estimate.Known known, String unit) {
    return Numbers.with(Numbers.value(known), unit)
        + " ("
        + Numbers.low(known)
        + " to "
        + Numbers.high(known)
        + ")";
  }
}
