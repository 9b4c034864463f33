package sagbook.estimate.resistance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import sagbook.estimate.response.ReducedWindow;
import sagbook.estimate.response.StringResponse;

/** Made months whose parts each follow Arrhenius's law; what they say is worked out by hand. */
class SlowPartsTest {
  private static final int DAYS = 30;

  /** Immediate part of the made response at 25 °C, ohm ({@link Windows}). */
  private static final double IMMEDIATE_OHM = Windows.response().coefficients()[0];

  /** Weather of some days, and warmest at 16 h: 1.5 K either way each. */
  private static double winter(double hours) {
    return 5
        + 1.5 * Math.sin(hours / 24 * 2 * Math.PI / 6.3)
        + 1.5 * Math.cos((hours - 16) / 24 * 2 * Math.PI);
  }

  private static List<ReducedWindow> month(
      DoubleUnaryOperator celsius, double immediateKilojoule, double slowKilojoule) {
    DoubleUnaryOperator slow =
        h -> ReferenceConditions.arrhenius(slowKilojoule, celsius.applyAsDouble(h));
    DoubleUnaryOperator immediate =
        h -> ReferenceConditions.arrhenius(immediateKilojoule, celsius.applyAsDouble(h));
    return Windows.withImmediate(
        Windows.ofDays(DAYS, celsius, slow),
        h -> IMMEDIATE_OHM * (immediate.applyAsDouble(h) - slow.applyAsDouble(h)));
  }

  private static double[] midCharge(List<ReducedWindow> windows) {
    double[] charge = new double[windows.size()];
    Arrays.fill(charge, 0.5);
    return charge;
  }

  private static SlowParts found(List<ReducedWindow> windows) {
    WindowSizes sizes = WindowSizes.of(windows, Windows.response(), midCharge(windows));
    double own =
        Arrays.stream(sizes.celsius())
            .map(ReferenceConditions::perKilojoule)
            .average()
            .orElseThrow();
    return SlowParts.of(windows, Windows.response(), sizes, own);
  }

  @Test
  void slowPartsThatGrowMoreInTheColdAreSeenTo() {
    for (double more : new double[] {20, 0, -8}) {
      SlowParts parts = found(month(SlowPartsTest::winter, 15, 15 + more));
      assertTrue(parts.moreKilojouleSd() < 7, more + ": " + parts);
      assertEquals(more, parts.moreKilojoule(), 2 * parts.moreKilojouleSd());
    }
  }

  @Test
  void aMonthThatIsAlwaysAsWarmTellsNothingOfThem() {
    SlowParts parts = found(month(h -> 12, 15, 35));
    assertEquals(0, parts.moreKilojoule(), 0.01);
    assertEquals(15, parts.moreKilojouleSd(), 0.01);
  }

  /**
   * At 5 °C the immediate part is 15 kJ/mol and the slow ones 35: at ten seconds these hold 0.0267
   * of 0.2267 mΩ at 25 °C and, grown by 2.76 where the other is by 1.55, a fifth there. Windows say
   * what answers of all ages do, of which slow parts hold more.
   */
  @Test
  void aPulseIsBroughtTo25DegreesByItsOwnLawAndNotByThatOfOlderAnswers() {
    List<ReducedWindow> windows = month(SlowPartsTest::winter, 15, 35);
    StringResponse response =
        StringResponse.of(Windows.BASIS, windows, Windows.ones(windows.size())).orElseThrow();
    ReferenceConditions found =
        ReferenceConditions.fit(windows, response, midCharge(windows), Windows.PULSE_S)
            .orElseThrow();
    assertEquals(15 + 20 * 0.19, found.activationEnergy(), 2);
    assertTrue(found.activationEnergySd() < 2, found.toString());
    double milliohmAt25 = 1000 * response.at(Windows.PULSE_S) * Math.exp(found.logLevel());
    assertEquals(0.2267, milliohmAt25, 0.03 * 0.2267);
  }
}
