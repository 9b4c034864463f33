package sagbook.estimate.capacity;

import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import sagbook.estimate.curve.ElectrodePair;
import sagbook.estimate.curve.HalfCells;
import sagbook.estimate.curve.MixedPair;
import sagbook.model.Chemistry;
import sagbook.model.Limits;

/**
 * Where the usual cell of an LFP string is full and empty. Makers combine electrodes freely, so
 * every published positive electrode of that kind is laid over what was seen with every published
 * graphite ({@link BothElectrodes}), and each pair counts by how well it lies there (Bayes' rule).
 * Where even the best lies badly the others are worse by less (Birge, Phys. Rev. 40 (1932) 207).
 * What the pairs differ by and what each leaves open is uncertain.
 *
 * @param fullAh place of the full cell, Ah
 * @param emptyAh place of the empty cell, Ah
 * @param sdAh of what lies between, by what the pairs differ by and leave open, Ah
 * @param misfitV what they miss of what several cells showed, root mean square, V
 * @param holds whether one of them passes for the string's own
 */
record StringEnds(double fullAh, double emptyAh, double sdAh, double misfitV, boolean holds) {
  /**
   * Lays all pairs; nothing where none will lie.
   *
   * @param lostAh lithium that the cell which came lowest lost beyond its neighbours, Ah
   * @param nominalAh charges are reckoned in shares of it
   */
  static Optional<StringEnds> of(CellCurve curve, double lostAh, double nominalAh, Limits limits) {
    SeenPart part = SeenPart.of(curve, lostAh, nominalAh);
    List<HalfCells> positives = HalfCells.of(Chemistry.LFP);
    List<BothElectrodes> laid =
        HalfCells.graphites().parallelStream()
            .flatMap(n -> positives.stream().<ElectrodePair>map(p -> new MixedPair(p, n)))
            .flatMap(pair -> BothElectrodes.of(pair, part, 1).stream())
            .toList();
    double least = laid.stream().mapToDouble(BothElectrodes::squares).min().orElse(Double.NaN);
    if (!Double.isFinite(least)) {
      return Optional.empty();
    }
    double scale = Math.max(1, least / BothElectrodes.FREE);
    double[] weight =
        laid.stream().mapToDouble(p -> Math.exp(-0.5 * (p.squares() - least) / scale)).toArray();
    double fullV = limits.cellFullVoltage();
    double emptyV = limits.cellEmptyVoltage();
    double full = mean(laid, weight, p -> p.full(fullV));
    double empty = mean(laid, weight, p -> p.empty(emptyV));
    double sd =
        Math.sqrt(mean(laid, weight, p -> squares(p.capacity(fullV, emptyV), full - empty, scale)));
    double misfitV = Math.sqrt(mean(laid, weight, p -> sq(p.misfitV())));
    boolean holds = laid.stream().anyMatch(BothElectrodes::mayHold);
    return Optional.of(
        new StringEnds(full * nominalAh, empty * nominalAh, sd * nominalAh, misfitV, holds));
  }

  /** Mean square about a value. */
  private static double squares(CellReading.Figure one, double about, double scale) {
    return sq(one.value() - about) + scale * sq(one.sd());
  }

  private static double mean(
      List<BothElectrodes> laid, double[] weight, ToDoubleFunction<BothElectrodes> of) {
    double sum = 0;
    double weights = 0;
    for (int i = 0; i < weight.length; i++) {
      sum += weight[i] * of.applyAsDouble(laid.get(i));
      weights += weight[i];
    }
    return sum / weights;
  }

  private static double sq(double x) {
    return x * x;
  }
}
