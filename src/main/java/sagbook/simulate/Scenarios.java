package sagbook.simulate;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/** The scenarios that can be asked for by name. */
public final class Scenarios {
  private static final LocalDate SUMMER = LocalDate.of(2026, 6, 1);
  private static final int FAULTY = 7;

  private Scenarios() {}

  /** All of them, in the order in which help lists them. */
  public static List<Scenario> all() {
    return List.of(
        of("healthy", "Nothing is wrong."),
        of(
            "wearing-cell",
            "Cell 7 has lost a tenth of its capacity and loses more.",
            new Fault.LithiumLoss(FAULTY, 12, 0, 0.05)),
        of(
            "high-resistance",
            "Cell 7 itself resists half as much again.",
            new Fault.HighResistance(FAULTY, 50, 0, 0.05)),
        outOfBalance(),
        of(
            "leaking-cell",
            "Cell 7 leaks 120 mA all day and night.",
            new Fault.SelfDischarge(FAULTY, 0, 120)),
        of(
            "loose-joint",
            "From the tenth day the joint at cell 7 works loose.",
            new Fault.LooseJoint(FAULTY, 10, 0.12, 0.004)),
        of(
            "lying-sensor",
            "The board of cell 7 shows 18 mV too little.",
            new Fault.VoltageOffset(FAULTY, 0, -18)),
        of(
            "stuck-thermometer",
            "The thermometer of cell 7 sticks at 20.5 °C.",
            new Fault.StuckThermometer(FAULTY, 0, 20.5)),
        mill());
  }

  public static Optional<Scenario> find(String name) {
    return all().stream().filter(s -> s.name().equals(name)).findFirst();
  }

  private static Scenario of(String name, String story, Fault... faults) {
    return new Scenario(
        name, story, PackPlan.lfp(16, 280), List.of(faults), SUMMER, 30, 10, 0.8, 0.5, 20260601);
  }

  /** With short holds at the top, so that bleeding does not mend it within the month. */
  private static Scenario outOfBalance() {
    return of(
            "out-of-balance",
            "Cell 7 was fitted 8 % of its charge below its neighbours.",
            new Fault.OutOfBalance(FAULTY, -8))
        .withPack(PackPlan.lfp(16, 280).withHoldSeconds(600));
  }

  /** The season in sample-logs. */
  private static Scenario mill() {
    List<Fault> faults =
        List.of(
            new Fault.LithiumLoss(6, 2, 0, 0.052),
            new Fault.OutOfBalance(11, -11),
            new Fault.LooseJoint(13, 186, 0.14, 0.0016));
    return new Scenario(
        "mill-season",
        "February to September in a watermill: cell 6 wears, cell 11 was fitted low and recovers, the"
            + " joint at cell 13 works loose in August.",
        PackPlan.lfp(16, 280).withHoldSeconds(1_500),
        faults,
        LocalDate.of(2026, 2, 1),
        242,
        60,
        0.6,
        0.08,
        17);
  }
}
