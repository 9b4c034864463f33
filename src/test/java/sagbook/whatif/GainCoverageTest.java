package sagbook.whatif;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sagbook.estimate.StringDraws;
import sagbook.model.Estimate;

/**
 * Whether gains' intervals hold the true gain: strings of sixteen cells with known truth, estimates
 * drawn about it with the uncertainty that they state: that of a month with current that was full
 * and nearly empty, and that of a month that tells its cells three times worse.
 */
class GainCoverageTest {
  private static final int CELLS = 16;
  private static final int STRINGS = 400;

  private record Case(WhatIf truth, WhatIf estimated) {}

  private static Case drawn(
      SplittableRandom random, double capacitySd, double offsetSd, double weak) {
    InventedString truth = new InventedString().spare(100, OptionalDouble.empty());
    InventedString estimated = new InventedString().spare(100, OptionalDouble.empty());
    for (int c = 0; c < CELLS; c++) {
      double capacity = 1 + 0.01 * StringDraws.normal(random) - (c == 6 ? weak : 0);
      double offset = 0.5 * StringDraws.normal(random);
      truth.cell(
          InventedString.exact(capacity),
          InventedString.exact(offset),
          InventedString.exact(1),
          InventedString.exact(0));
      estimated.cell(
          Estimate.of(capacity + capacitySd * StringDraws.normal(random), capacitySd),
          Estimate.of(offset + offsetSd * StringDraws.normal(random), offsetSd),
          InventedString.exact(1),
          InventedString.exact(0));
    }
    return new Case(truth.asked(), estimated.asked());
  }

  @ParameterizedTest
  @CsvSource({"0.003, 0.2, 0.1", "0.003, 0.2, 0", "0.01, 0.5, 0.1", "0.01, 0.5, 0"})
  void intervalsHoldTheTrueGain(double capacitySd, double offsetSd, double weak) {
    SplittableRandom random = new SplittableRandom(41);
    List<Change> changes =
        List.of(
            Change.replace(List.of(7)),
            Change.replace(List.of(3)),
            Change.replace(List.of(3, 7)),
            Change.rebalance());
    int[] held = new int[changes.size()];
    for (int s = 0; s < STRINGS; s++) {
      Case one = drawn(random, capacitySd, offsetSd, weak);
      for (int k = 0; k < held.length; k++) {
        double gain = one.truth().outcome(changes.get(k)).gainAh().find().orElseThrow();
        Estimate.Known said = (Estimate.Known) one.estimated().outcome(changes.get(k)).gainAh();
        held[k] += said.low() <= gain + 1e-9 && gain <= said.high() + 1e-9 ? 1 : 0;
      }
    }
    List<Double> shares = new ArrayList<>();
    for (int h : held) {
      shares.add(h / (double) STRINGS);
    }
    assertTrue(shares.stream().allMatch(share -> share >= 0.9), shares.toString());
  }
}
