package sagbook.estimate.capacity;

import java.util.Optional;
import sagbook.model.Chemistry;
import sagbook.model.PackDescription;
import sagbook.numeric.EvenTable;

/**
 * The first look at the string's curve, split into what belongs to the positive electrode and what
 * to the graphite.
 *
 * @param curve the two parts
 * @param splitAh place above which the positive electrode's part is learned, Ah
 * @param bottomAnchorAh place at which the graphite begins, about which a cell's size stretches, Ah
 * @param topAnchorAh place at which the positive electrode ends, about which it stretches, Ah
 * @param presumedFullAh where the string would be full, were it never seen full, Ah
 * @param anchor the published functions that tell the parts of a sloping curve, which is learned no
 *     further; empty on a flat one
 */
record CurveSplit(
    CellCurve curve,
    double splitAh,
    double bottomAnchorAh,
    double topAnchorAh,
    double presumedFullAh,
    Optional<CurveAnchor> anchor) {

  /** Rise above the flat part that counts as a knee seen, V. */
  private static final double KNEE_V = 0.055;

  /**
   * The same where the curve stands higher than the flat part of any LFP cell at rest: the string
   * may end its charges early, for one cell that is full before the others.
   */
  private static final double SMALL_KNEE_V = 0.02;

  /** Highest rest voltage of an LFP cell's flat part, V. Published curves end theirs at 3.35. */
  private static final double HIGHEST_FLAT_V = 3.365;

  /** A cell of LFP that rests above this is on the knee, whatever its flat part lies at, V. */
  static final double ON_KNEE_V = HIGHEST_FLAT_V + KNEE_V;

  /** The flat part reaches down from the knee at least so far, as a share of capacity. */
  private static final double FLAT_BEFORE = 0.14;

  static CurveSplit of(CurveLearner.Learned first, PackDescription pack, double nominalAh) {
    return pack.chemistry() == Chemistry.LFP
        ? flat(first, nominalAh)
        : sloping(first, pack, nominalAh);
  }

  /** A flat curve: what rises beyond the flat part near full is the positive electrode's. */
  private static CurveSplit flat(CurveLearner.Learned first, double nominalAh) {
    EvenTable f = first.curve();
    double kneeAh = knee(f, first.toAh(), nominalAh);
    boolean knee = !Double.isNaN(kneeAh);
    double split = flattest(f, knee ? kneeAh : first.toAh(), nominalAh);
    double[] bottom = f.values().clone();
    double[] top = new double[bottom.length];
    double level = f.at(split);
    double most = 0;
    for (int i = 0; i < bottom.length; i++) {
      if (knee && f.start() + i * f.step() > split) {
        // Beyond the knee a few rows at rest after full may lie lower again.
        most = Math.max(most, bottom[i] - level);
        top[i] = most;
        bottom[i] = level;
      }
    }
    CellCurve curve =
        new CellCurve(
            new EvenTable(f.start(), f.step(), bottom),
            new EvenTable(f.start(), f.step(), top),
            first.fromAh(),
            first.fromAh(),
            first.toAh(),
            knee,
            first.hysteresisV());
    double full = knee ? first.toAh() : first.toAh() + 0.05 * nominalAh;
    return new CurveSplit(
        curve,
        knee ? split : first.toAh() + nominalAh,
        full - 1.02 * nominalAh,
        full,
        full,
        Optional.empty());
  }

  /** Where the curve first stands on the knee at the end of charge, Ah; NaN when it never does. */
  private static double knee(EvenTable curve, double topAh, double nominalAh) {
    double level = curve.at(topAh - FLAT_BEFORE * nominalAh);
    double knee = firstAbove(curve, level + KNEE_V, topAh, nominalAh);
    double small = Math.max(level + SMALL_KNEE_V, HIGHEST_FLAT_V);
    return Double.isNaN(knee) ? firstAbove(curve, small, topAh, nominalAh) : knee;
  }

  private static double firstAbove(EvenTable curve, double volt, double topAh, double nominalAh) {
    for (double q = topAh - FLAT_BEFORE * nominalAh; q <= topAh; q += curve.step()) {
      if (curve.at(q) > volt) {
        return q;
      }
    }
    return Double.NaN;
  }

  /**
   * Place between the last step of the curve and the knee at the end of charge, where the curve is
   * flattest, Ah.
   *
   * @param kneeAh where the knee is steep, Ah
   */
  static double flattest(EvenTable curve, double kneeAh, double nominalAh) {
    double best = kneeAh - 0.06 * nominalAh;
    double least = Double.POSITIVE_INFINITY;
    double width = 0.015 * nominalAh;
    double from = kneeAh - FLAT_BEFORE * nominalAh;
    for (double q = from; q <= kneeAh - 0.03 * nominalAh; q += curve.step()) {
      double slope = Math.abs(curve.at(q + width) - curve.at(q - width)) / (2 * width);
      if (slope < least) {
        least = slope;
        best = q;
      }
    }
    return best;
  }

  /** A sloping curve: the published functions, laid over it, say which slope is whose. */
  private static CurveSplit sloping(
      CurveLearner.Learned first, PackDescription pack, double nominalAh) {
    EvenTable f = first.curve();
    Optional<CurveAnchor> anchor =
        CurveAnchor.closest(
            pack, f, first.fromAh() + f.step(), first.toAh() - f.step(), first.toAh() - f.step());
    double[] top = new double[f.values().length];
    double[] bottom = new double[top.length];
    for (int i = 0; i < top.length; i++) {
      double q = f.start() + i * f.step();
      top[i] = anchor.isPresent() ? anchor.get().positiveAt(q) : 0;
      bottom[i] = f.values()[i] - top[i];
    }
    CellCurve curve =
        new CellCurve(
            new EvenTable(f.start(), f.step(), bottom),
            new EvenTable(f.start(), f.step(), top),
            first.fromAh(),
            first.fromAh(),
            first.toAh(),
            anchor.isPresent(),
            first.hysteresisV());
    double full = anchor.map(CurveAnchor::fullAh).orElse(first.toAh() + 0.05 * nominalAh);
    double begin = anchor.map(CurveAnchor::negativeAh).orElse(full - 1.02 * nominalAh);
    double end = anchor.map(CurveAnchor::positiveAh).orElse(full);
    return new CurveSplit(curve, Double.NaN, begin, end, full, anchor);
  }
}
