package sagbook.estimate.capacity;

import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import sagbook.estimate.capacity.CellReading.Figure;
import sagbook.estimate.curve.ElectrodePair;
import sagbook.estimate.curve.HalfCells;
import sagbook.estimate.curve.MixedPair;
import sagbook.model.Chemistry;
import sagbook.model.Estimate;
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
 * @param usedFromAh lowest place that says something of the usual cell, Ah
 * @param sdAh of what lies between, by what the pairs differ by and leave open, Ah
 * @param misfitV what they miss of what several cells showed, root mean square, V
 * @param holds whether one of them passes for the string's own
 */
record StringEnds(
    double fullAh, double emptyAh, double usedFromAh, double sdAh, double misfitV, boolean holds) {
  /** A pair that is so much less likely than the likeliest says nothing. */
  private static final double LEAST_WEIGHT = 1e-6;

  /**
   * Lays all pairs; nothing where none will lie.
   *
   * @param lostAh lithium that the cell which came lowest lost beyond its neighbours, Ah; where
   *     that is not known, what it alone showed is left out
   * @param nominalAh charges are reckoned in shares of it
   */
  static Optional<StringEnds> of(
      CellCurve curve, Optional<Double> lostAh, double nominalAh, Limits limits) {
    SeenPart part =
        lostAh
            .map(lost -> SeenPart.of(curve, lost, nominalAh))
            .orElse(SeenPart.ofSeveral(curve, nominalAh));
    double fromAh = lostAh.isPresent() ? curve.visitedFromAh() : part.from() * nominalAh;
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
    List<Likely> likely =
        laid.stream()
            .map(one -> Likely.of(one, Math.exp(-0.5 * (one.squares() - least) / scale), limits))
            .filter(Likely::tells)
            .toList();
    return likely.isEmpty()
        ? Optional.empty()
        : Optional.of(mean(likely, fromAh, scale, nominalAh).reaching(laid, nominalAh, limits));
  }

  /**
   * The same, with a range that reaches to where every pair puts full if none passes for the
   * string's own. They all leave from the highest place that was seen, so they differ the more the
   * less of the knee was climbed, which then is all that tells one positive electrode from another.
   */
  private StringEnds reaching(List<BothElectrodes> laid, double nominalAh, Limits limits) {
    double furthestAh =
        laid.stream()
            .mapToDouble(one -> Math.abs(one.full(limits.cellFullVoltage()) * nominalAh - fullAh))
            .filter(Double::isFinite)
            .max()
            .orElse(0);
    double sd = holds ? sdAh : Math.hypot(sdAh, furthestAh / Estimate.HALF_WIDTH_IN_SD);
    return new StringEnds(fullAh, emptyAh, usedFromAh, sd, misfitV, holds);
  }

  private static StringEnds mean(
      List<Likely> likely, double fromAh, double scale, double nominalAh) {
    double full = mean(likely, Likely::full);
    double empty = mean(likely, Likely::empty);
    double variance =
        mean(
            likely,
            one -> sq(one.capacity.value() - (full - empty)) + scale * sq(one.capacity.sd()));
    double misfitV = Math.sqrt(mean(likely, one -> sq(one.misfitV)));
    boolean holds = likely.stream().anyMatch(Likely::holds);
    return new StringEnds(
        full * nominalAh,
        empty * nominalAh,
        fromAh,
        Math.sqrt(variance) * nominalAh,
        misfitV,
        holds);
  }

  private static double mean(List<Likely> likely, ToDoubleFunction<Likely> of) {
    double sum = 0;
    double weights = 0;
    for (Likely one : likely) {
      sum += one.weight * of.applyAsDouble(one);
      weights += one.weight;
    }
    return sum / weights;
  }

  /**
   * What one pair says; charges are shares of nominal capacity, NaN where it does not say.
   *
   * @param weight how likely it is, against the likeliest
   */
  private record Likely(
      double weight, double full, double empty, Figure capacity, double misfitV, boolean holds) {
    static Likely of(BothElectrodes laid, double weight, Limits limits) {
      double fullV = limits.cellFullVoltage();
      double emptyV = limits.cellEmptyVoltage();
      return new Likely(
          weight,
          laid.full(fullV),
          laid.empty(emptyV),
          laid.capacity(fullV, emptyV),
          laid.misfitV(),
          laid.mayHold());
    }

    boolean tells() {
      return weight > LEAST_WEIGHT
          && Double.isFinite(full)
          && Double.isFinite(empty)
          && Double.isFinite(capacity.value())
          && Double.isFinite(capacity.sd())
          && Double.isFinite(misfitV);
    }
  }

  private static double sq(double x) {
    return x * x;
  }
}
