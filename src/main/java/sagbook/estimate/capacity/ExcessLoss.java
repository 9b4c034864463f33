package sagbook.estimate.capacity;

import java.util.List;
import sagbook.estimate.capacity.CellReading.Figure;
import sagbook.estimate.curve.ElectrodePair;
import sagbook.estimate.curve.HalfCells;
import sagbook.estimate.curve.MixedPair;
import sagbook.model.Chemistry;
import sagbook.numeric.EvenTable;

/**
 * What an LFP cell lost in lithium beyond what it lost in capacity. A worn cell is emptied by its
 * graphite alone. Where its neighbours are emptied by their positive electrode before that, they
 * never use the last of their graphite, and what the worn cell lost of it costs nothing.
 *
 * <p>The worn cell runs empty first, so the end of the string's curve may be what it alone showed,
 * its graphite. What several cells showed says more of theirs: each published positive electrode is
 * laid over it with each published graphite, since makers combine them freely ({@link
 * BothElectrodes}), and counts by how well it lies there (Bayes' rule). Where none passes a
 * chi-square test, none says what was not seen, and what is held likely of all of them has to do.
 * What they differ by, and what each leaves open, is the uncertainty.
 */
final class ExcessLoss {
  /** A cell that holds more than its neighbours has so much more lithium at most. */
  private static final double MOST_GAINED = 0.02;

  /** By how much published curves are gentler or steeper than the cells' own. */
  private static final double SHAPE_SHARE = 0.25;

  /** From which sizes of electrodes the fits start. */
  private static final double[] SIZES = {0.95, 1.05};

  private final List<BothElectrodes> laid;
  private final double emptyV;

  private ExcessLoss(List<BothElectrodes> laid, double emptyV) {
    this.laid = laid;
    this.emptyV = emptyV;
  }

  /**
   * By published electrodes laid over the string's curve.
   *
   * @param capacityAh of the median cell
   * @param trusted whether the curve lies on a counted axis; one that was made up is warped, and
   *     what is held likely has to do
   * @param emptyV rest voltage of an empty cell
   */
  static ExcessLoss of(CellCurve curve, double capacityAh, boolean trusted, double emptyV) {
    EvenTable ah = curve.whole();
    EvenTable whole = new EvenTable(ah.start() / capacityAh, ah.step() / capacityAh, ah.values());
    double to = curve.visitedToAh() / capacityAh - whole.step();
    double from = curve.sharedFromAh() / capacityAh + whole.step();
    List<BothElectrodes> seen = trusted ? laid(SeenPart.ofSeveral(whole, from, to)) : List.of();
    boolean oneHolds = seen.stream().anyMatch(BothElectrodes::mayHold);
    return new ExcessLoss(oneHolds ? seen : laid(SeenPart.ofSeveral(whole, to, to)), emptyV);
  }

  private static List<BothElectrodes> laid(SeenPart part) {
    List<HalfCells> published = HalfCells.of(Chemistry.LFP);
    return published.stream()
        .flatMap(n -> published.stream().<ElectrodePair>map(p -> new MixedPair(p, n)))
        .flatMap(pair -> BothElectrodes.of(pair, part, SIZES).stream())
        .toList();
  }

  private static double least(List<BothElectrodes> laid) {
    return laid.stream().mapToDouble(BothElectrodes::squares).min().orElse(0);
  }

  /**
   * Of a cell that lost some lithium; all are shares of capacity.
   *
   * @param lost lithium lost beyond what its neighbours did; negative where it holds more
   */
  Figure of(double lost) {
    double further = Math.max(-MOST_GAINED, lost);
    double least = least(laid);
    double weights = 0;
    double sum = 0;
    double squares = 0;
    for (BothElectrodes one : laid) {
      double weight = Math.exp(-0.5 * (one.squares() - least));
      Figure excess = one.excess(further, emptyV);
      if (!Double.isFinite(excess.value()) || !Double.isFinite(excess.sd())) {
        continue;
      }
      weights += weight;
      sum += weight * excess.value();
      squares += weight * (sq(excess.value()) + sq(excess.sd()));
    }
    if (!(weights > 0)) {
      return new Figure(0, Math.abs(further));
    }
    double mean = sum / weights;
    double sd = Math.sqrt(Math.max(0, squares / weights - mean * mean));
    return new Figure(mean, Math.hypot(sd, SHAPE_SHARE * mean));
  }

  private static double sq(double x) {
    return x * x;
  }
}
