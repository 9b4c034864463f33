package sagbook.verdict;

import java.util.List;
import sagbook.estimate.CellEstimates;
import sagbook.evidence.Evidence;
import sagbook.evidence.StepWindow;
import sagbook.model.Estimate;
import sagbook.numeric.Robust;
import sagbook.wording.Words;

/**
 * How narrow an interval would become, predicted from this month's evidence: half-widths in % of
 * the median cell's value (of charge, in % of nominal capacity).
 *
 * <p>Repetition only narrows what repetition shows. On invented months (healthy, 4 to 30 days) the
 * capacity's half-width stayed at 0.52 to 0.57 % however often the battery was full and empty, and
 * that of resistance between 2.9 and 4.3 %: so no prediction goes below what the best-told cell of
 * this month has, whose log holds the same repetitions.
 */
final class Precision {
  private static final Words WORDS = Words.english();

  /** Faster than this buys nothing more, s. */
  static final double FAST_S = 10;

  /**
   * Half-width of resistance at a cadence over that at 10 s or faster, medians of 16 cells in 15
   * invented days, two seeds each (own measurement, no outside source).
   */
  private static final double[][] SLOWER = {{10, 1}, {60, 1.3}, {120, 1.6}, {300, 3.9}};

  /** Pairs of rows that the evidence takes across a step, by their distance, s. */
  private static final double[] PAIRS_S = {10, 30, 60, 120};

  private Precision() {}

  /** What the others have who were seen as this one would be then: their median. */
  static Estimate likeTheOthers(Doubt doubt, List<CellEstimates> cells) {
    double[] widths = widths(doubt, cells);
    if (widths.length == 0) {
      return Estimate.unknown(WORDS.say("unknown.no-such"));
    }
    double usual = Robust.median(widths);
    return Doubt.Kind.exact(
        doubt.kind().halfWidthPercent(doubt.cell().estimates()) instanceof Estimate.Known now
            ? Math.min(now.value(), usual)
            : usual);
  }

  /**
   * Independent repetitions of equal worth narrow what they show by the square root of their
   * number; the worth of an edge is the square of its current.
   *
   * @param edges how many more
   * @param ampere of each, A
   */
  static Estimate moreEdges(
      Doubt doubt, List<CellEstimates> cells, Evidence evidence, int edges, double ampere) {
    if (!(doubt.kind().halfWidthPercent(doubt.cell().estimates()) instanceof Estimate.Known now)) {
      return likeTheOthers(doubt, cells);
    }
    double best = Robust.quantile(widths(doubt, cells), 0);
    double floor = Math.min(best, now.value());
    double had = evidence.steps().stream().mapToDouble(StepWindow::immediateSquares).sum();
    double more = edges * ampere * ampere * pairs(evidence.cadenceS());
    // Without a current the squares are of voltage: then the test counts as one window more.
    double left =
        evidence.channels().hasCurrent()
            ? had / (had + more)
            : evidence.steps().size() / (evidence.steps().size() + 1.0);
    return Doubt.Kind.exact(
        Math.sqrt(floor * floor + (now.value() * now.value() - floor * floor) * left));
  }

  private static double pairs(double cadenceS) {
    int pairs = 0;
    for (double apart : PAIRS_S) {
      pairs += apart >= cadenceS ? 1 : 0;
    }
    return Math.max(1, pairs);
  }

  /** What the interval would be had the log been written every ten seconds. */
  static Estimate fasterLogging(Doubt doubt, double cadenceS) {
    Estimate now = doubt.kind().halfWidthPercent(doubt.cell().estimates());
    return now.map(width -> width / slower(cadenceS));
  }

  /** Between the measured cadences by the logarithm of time; beyond the last as there. */
  private static double slower(double cadenceS) {
    for (int k = 1; k < SLOWER.length; k++) {
      double[] from = SLOWER[k - 1];
      double[] to = SLOWER[k];
      if (cadenceS <= to[0]) {
        double share = Math.max(0, Math.log(cadenceS / from[0]) / Math.log(to[0] / from[0]));
        return from[1] + share * (to[1] - from[1]);
      }
    }
    return SLOWER[SLOWER.length - 1][1];
  }

  private static double[] widths(Doubt doubt, List<CellEstimates> cells) {
    return cells.stream()
        .flatMapToDouble(c -> doubt.kind().halfWidthPercent(c).find().stream())
        .toArray();
  }
}
