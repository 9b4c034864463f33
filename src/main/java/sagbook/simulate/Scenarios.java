package sagbook.simulate;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import sagbook.wording.Words;

/** The scenarios that can be asked for by name. */
public final class Scenarios {
  private static final LocalDate SUMMER = LocalDate.of(2026, 6, 1);
  private static final int FAULTY = 7;

  private Scenarios() {}

  /** All of them, in the order in which help lists them. */
  public static List<Scenario> all() {
    return List.of(
        of("healthy"),
        of("wearing-cell", new Fault.LithiumLoss(FAULTY, 12, 0, 0.05)),
        of("high-resistance", new Fault.HighResistance(FAULTY, 50, 0, 0.05)),
        outOfBalance(),
        of("leaking-cell", new Fault.SelfDischarge(FAULTY, 0, 120)),
        of("loose-joint", new Fault.LooseJoint(FAULTY, 10, 0.12, 0.004)),
        of("lying-sensor", new Fault.VoltageOffset(FAULTY, 0, -18)),
        of("stuck-thermometer", new Fault.StuckThermometer(FAULTY, 0, 20.5)),
        mill());
  }

  public static Optional<Scenario> find(String name) {
    return all().stream().filter(s -> s.name().equals(name)).findFirst();
  }

  private static Scenario of(String name, Fault... faults) {
    return new Scenario(
        name,
        story(name),
        PackPlan.lfp(16, 280),
        List.of(faults),
        SUMMER,
        30,
        10,
        0.8,
        0.5,
        20260601);
  }

  private static String story(String name) {
    return Words.english().say("simulate.story." + name);
  }

  /** With short holds at the top, so that bleeding does not mend it within the month. */
  private static Scenario outOfBalance() {
    return of("out-of-balance", new Fault.OutOfBalance(FAULTY, -8))
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
        story("mill-season"),
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
