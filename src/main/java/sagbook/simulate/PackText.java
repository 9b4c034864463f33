package sagbook.simulate;

import java.util.Locale;

/** The pack description that belongs to a simulated log, with comments. */
final class PackText {
  private PackText() {}

  static String of(Scenario scenario) {
    PackPlan pack = scenario.pack();
    return String.format(
        Locale.ROOT,
        """
        # An invented battery, made by "sagbook simulate --scenario %1$s".
        # %2$s
        [pack]
        name = "%3$s"
        chemistry = "%4$s"
        series_cells = %5$d
        # What the cells' data sheet says.
        nominal_capacity_ah = %6$s
        # Not needed by these logs, whose clock shows its offset.
        timezone = "+01:00"
        # Near full, each board bleeds its cell through this.
        bleed_resistor_ohm = %7$s
        current_sign = "charge positive"
        """,
        scenario.name(),
        scenario.story().replace(": ", ":\n# "),
        scenario.name().equals("mill-season") ? "Watermill" : "Simulated: " + scenario.name(),
        pack.electrodes().chemistry().key(),
        pack.cells(),
        plain(pack.capacityAh()),
        plain(pack.bleed().resistorOhm()));
  }

  private static String plain(double number) {
    return number == StrictMath.rint(number)
        ? String.format(Locale.ROOT, "%.0f", number)
        : Double.toString(number);
  }
}
