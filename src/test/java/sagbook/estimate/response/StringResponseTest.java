package sagbook.estimate.response;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sagbook.evidence.Evidence;
import sagbook.evidence.EvidenceCollector;
import sagbook.model.Channels;
import sagbook.model.Chemistry;
import sagbook.model.Limits;
import sagbook.model.SampleBlock;

/**
 * A cell of two resistor-capacitor pairs: R0 0.20 mΩ, R1 0.10 mΩ with 2 s, R2 0.15 mΩ with 60 s, so
 * {@code R(t) = R0 + sum Ri (1 - exp(-t/taui))}. Current steps fall exactly on rows.
 */
class StringResponseTest {
  private static final double NOISE_V = 1e-4;

  @ParameterizedTest
  @CsvSource({
    "1, 5, 0.303785, 0.02",
    "1, 10, 0.322354, 0.02",
    "1, 18, 0.338865, 0.02",
    "1, 30, 0.359020, 0.02",
    "1, 60, 0.394818, 0.02",
    "5, 10, 0.322354, 0.03",
    "5, 30, 0.359020, 0.03",
    "10, 60, 0.394818, 0.03"
  })
  void followsAKnownCell(int cadenceS, double ageS, double milliohm, double relative) {
    Evidence evidence = evidence(cadenceS);
    var windows = ReducedWindow.of(evidence);
    double[] all = new double[windows.size()];
    Arrays.fill(all, 1);
    StringResponse response = StringResponse.of(evidence.basis(), windows, all).orElseThrow();
    assertEquals(milliohm, 1000 * response.at(ageS), relative * milliohm);
  }

  /** R0 0.20 mΩ, R1 0.10 mΩ with 20 s, R2 0.15 mΩ with 400 s; steps fall anywhere between rows. */
  @ParameterizedTest
  @CsvSource({"30, 30, 0.288561, 0.03", "60, 60, 0.315915, 0.03", "60, 300, 0.379146, 0.03"})
  void slowLogsFollowACellThoughItsStepsFallBetweenRows(
      int cadenceS, double ageS, double milliohm, double relative) {
    assertEquals(milliohm, between(cadenceS, 20, ageS, false), relative * milliohm);
  }

  /**
   * R0 0.20 mΩ, R1 0.10 mΩ with 9 or 35 s, R2 0.15 mΩ with 400 s. The youngest answer that rows of
   * 10 s hold is 10 to 20 s old, and the time constant lies beside those of the basis.
   */
  @ParameterizedTest
  @CsvSource({"9, 10, 0.270784", "9, 30, 0.307271", "35, 10, 0.228556", "35, 60, 0.302885"})
  void rowsOfTenSecondsTellAnAnswerOfTenSeconds(double tauS, double ageS, double milliohm) {
    assertEquals(milliohm, between(10, tauS, ageS, false), 0.015 * milliohm);
  }

  /** The same cell beside a hob that is on for 6 of 13 s every other half hour. */
  @ParameterizedTest
  @CsvSource({"35, 10, 0.228556", "35, 60, 0.302885"})
  void aHobThatComesAndGoesBetweenRowsDoesNotMakeTheAnswerLookSmall(
      double tauS, double ageS, double milliohm) {
    assertEquals(milliohm, between(10, tauS, ageS, true), 0.01 * milliohm);
  }

  private static double between(int cadenceS, double tauS, double ageS, boolean hob) {
    Evidence evidence = slowEvidence(cadenceS, tauS, hob);
    var windows = ReducedWindow.of(evidence);
    double[] all = new double[windows.size()];
    Arrays.fill(all, 1);
    StringResponse response = StringResponse.of(evidence.basis(), windows, all).orElseThrow();
    return 1000 * response.at(ageS);
  }

  private static Evidence slowEvidence(int cadenceS, double tauS, boolean hob) {
    Channels channels = new Channels(2, false, true, false);
    int rows = 20 * 86_400 / cadenceS;
    SampleBlock block = new SampleBlock(channels, rows);
    SplittableRandom random = new SplittableRandom(12);
    double[] keep = {Math.exp(-1 / tauS), Math.exp(-1 / 400.0)};
    double[] ohm = {1.0e-4, 1.5e-4};
    double[] slow = new double[2];
    double household = 0;
    block.setRows(rows);
    for (int r = 0; r < rows; r++) {
      block.timeS()[r] = 1.75e9 + (double) r * cadenceS;
      for (int second = 0; second < cadenceS; second++) {
        int elapsedS = r * cadenceS + second;
        double current = household - (hob && isOn(elapsedS) ? 80 : 0);
        if (second == 0) {
          block.currentA()[r] = current;
          for (int c = 0; c < 2; c++) {
            block.voltageV()[c][r] =
                3.3 + 2.0e-4 * current + slow[0] + slow[1] + NOISE_V * (random.nextDouble() - 0.5);
          }
        }
        if (random.nextDouble() < 1 / 600.0) {
          household = random.nextInt(4) == 0 ? 0 : 160 * (random.nextDouble() - 0.5);
        }
        for (int k = 0; k < 2; k++) {
          slow[k] = ohm[k] * current + (slow[k] - ohm[k] * current) * keep[k];
        }
      }
    }
    return evidence(channels, block);
  }

  private static boolean isOn(int elapsedS) {
    return elapsedS % 3600 < 1800 && elapsedS % 13 < 6;
  }

  private static Evidence evidence(int cadenceS) {
    Channels channels = new Channels(2, false, true, false);
    int rows = 2 * 86_400 / cadenceS;
    SampleBlock block = new SampleBlock(channels, rows);
    SplittableRandom random = new SplittableRandom(11);
    double[] tau = {2, 60};
    double[] ohm = {1.0e-4, 1.5e-4};
    double[] slow = new double[2];
    double current = 0;
    double chargeAh = 140;
    block.setRows(rows);
    for (int r = 0; r < rows; r++) {
      for (int k = 0; k < 2; k++) {
        slow[k] += (ohm[k] * current - slow[k]) * (1 - Math.exp(-cadenceS / tau[k]));
      }
      chargeAh += current * cadenceS / 3600.0;
      // The row is read just before the next step.
      block.timeS()[r] = 1.75e9 + (double) r * cadenceS;
      block.currentA()[r] = current;
      for (int c = 0; c < 2; c++) {
        block.voltageV()[c][r] =
            3.3
                + 1e-4 * (chargeAh - 140)
                + 2.0e-4 * current
                + slow[0]
                + slow[1]
                + NOISE_V * (random.nextDouble() - 0.5);
      }
      if (random.nextDouble() < cadenceS / 120.0) {
        current = random.nextInt(4) == 0 ? 0 : 160 * (random.nextDouble() - 0.5);
      }
    }
    return evidence(channels, block);
  }

  private static Evidence evidence(Channels channels, SampleBlock block) {
    EvidenceCollector collector =
        new EvidenceCollector(channels, Limits.of(Chemistry.LFP), 280, 3.3);
    collector.accept(block);
    return collector.finish();
  }
}
