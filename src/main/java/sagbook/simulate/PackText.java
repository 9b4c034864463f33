package sagbook.simulate;

import java.util.Locale;
import sagbook.wording.Words;

/** The pack description that belongs to a simulated log, with comments. */
final class PackText {
  private static final Words WORDS = Words.english();

  private PackText() {}

  static String of(Scenario scenario) {
    PackPlan pack = scenario.pack();
    return String.format(
        Locale.ROOT,
        """
        # %1$s
        # %2$s
        [pack]
        name = "%3$s"
        chemistry = "%4$s"
        series_cells = %5$d
        # %8$s
        nominal_capacity_ah = %6$s
        # %9$s
        timezone = "+01:00"
        # %10$s
        bleed_resistor_ohm = %7$s
        current_sign = "charge positive"
        """,
        WORDS.say("simulate.pack.made", scenario.name()),
        scenario.story().replace(": ", ":\n# "),
        scenario.name().equals("mill-season")
            ? WORDS.say("simulate.pack.mill")
            : WORDS.say("simulate.pack.name", scenario.name()),
        pack.electrodes().chemistry().key(),
        pack.cells(),
        plain(pack.capacityAh()),
        plain(pack.bleed().resistorOhm()),
        WORDS.say("simulate.pack.nominal"),
        WORDS.say("simulate.pack.zone"),
        WORDS.say("simulate.pack.bleed"));
  }

  private static String plain(double number) {
    return number == StrictMath.rint(number)
        ? String.format(Locale.ROOT, "%.0f", number)
        : Double.toString(number);
  }
}
