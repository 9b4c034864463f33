package sagbook.cli;

import java.io.PrintWriter;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.function.Function;
import sagbook.model.Estimate;
import sagbook.record.KeptString;
import sagbook.report.words.Numbers;
import sagbook.whatif.Outcome;
import sagbook.whatif.Spare;
import sagbook.wording.Words;

/** What {@code swap} prints. */
record SwapAnswer(KeptString string, Spare spare, Estimate sagNowV, Outcome outcome) {

  private static final Words WORDS = Words.english();

  void print(PrintWriter out) {
    List<String> cells = outcome.change().cells().stream().map(String::valueOf).toList();
    String key = cells.size() == 1 ? "swap.one" : "swap.many";
    out.println(
        WORDS.say(
            spare.told() ? key : key + ".nominal",
            String.join(", ", cells),
            Numbers.with(Numbers.plain(spare.capacityAh()), "Ah")));
    line(out, WORDS.say("swap.charge"), gain(outcome.gainAh(), "Ah"));
    line(out, "", now());
    line(out, WORDS.say("swap.energy"), gain(outcome.gainKWh(), "kWh"));
    line(out, WORDS.say("swap.evening"), evening(gain(outcome.gainEveningMinutes(), "min")));
    line(out, WORDS.say("swap.sag"), said(outcome.sagV(), this::sag));
    out.println(WORDS.say("swap.explained"));
  }

  private static void line(PrintWriter out, String name, String text) {
    out.printf(Locale.ROOT, "  %-10s%s%n", name, text);
  }

  private String now() {
    return string.usableAh() instanceof Estimate.Known now
        ? WORDS.say("swap.now", value(now, "Ah"))
        : WORDS.say("swap.now.unknown");
  }

  private String evening(String gain) {
    OptionalDouble load = string.use().eveningLoadW();
    return load.isPresent() && outcome.gainEveningMinutes() instanceof Estimate.Known
        ? WORDS.say(
            "swap.at-evening", gain, Numbers.with(Numbers.significant(load.getAsDouble(), 2), "W"))
        : gain;
  }

  private String sag(Estimate.Known after) {
    String at =
        Numbers.with(Numbers.significant(string.use().highestDischargeA().orElse(0), 3), "A");
    return sagNowV instanceof Estimate.Known now
        ? WORDS.say("swap.sag.instead", value(after, "V"), value(now, "V"), at)
        : WORDS.say("swap.sag.alone", value(after, "V"), at);
  }

  private static String gain(Estimate estimate, String unit) {
    return said(estimate, known -> (known.value() < 0 ? "" : "+") + value(known, unit));
  }

  private static String said(Estimate estimate, Function<Estimate.Known, String> words) {
    return estimate instanceof Estimate.Known known
        ? words.apply(known)
        : WORDS.say("swap.unknown", ((Estimate.Unknown) estimate).reason());
  }

  private static String value(Estimate.Known known, String unit) {
    return WORDS.say(
        "swap.value",
        Numbers.with(Numbers.value(known), unit),
        Numbers.low(known),
        Numbers.high(known));
  }
}
