package sagbook.estimate.capacity;

import java.util.Optional;
import sagbook.estimate.curve.ElectrodePair;
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
 */
record CurveSplit(
    CellCurve curve,
    double splitAh,
    double bottomAnchorAh,
    double topAnchorAh,
    double presumedFullAh) {

  /** Rise above the flat part that counts as a knee seen, V. */
  private static final double KNEE_V = 0.055;

  static CurveSplit of(CurveLearner.Learned first, PackDescription pack, double nominalAh) {
    return pack.chemistry() == Chemistry.LFP
        ? flat(first, nominalAh)
        : sloping(first, pack, nominalAh);
  }

  /** A flat curve: what rises beyond the flat part near full is the positive electrode's. */
  private static CurveSplit flat(CurveLearner.Learned first, double nominalAh) {
    EvenTable f = first.curve();
    double split = StringFit.split(f, first.toAh(), nominalAh);
    boolean knee = f.at(first.toAh()) - f.at(split) > KNEE_V;
    double[] bottom = f.values().clone();
    double[] top = new double[bottom.length];
    double level = f.at(split);
    for (int i = 0; i < bottom.length; i++) {
      if (knee && f.start() + i * f.step() > split) {
        top[i] = Math.max(0, bottom[i] - level);
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
        curve, knee ? split : first.toAh() + nominalAh, full - 1.02 * nominalAh, full, full);
  }

  /** A sloping curve: the published functions, laid over it, say which slope is whose. */
  private static CurveSplit sloping(
      CurveLearner.Learned first, PackDescription pack, double nominalAh) {
    EvenTable f = first.curve();
    ElectrodePair pair = ElectrodePair.of(pack).get(0);
    Optional<CurveAnchor> anchor =
        CurveAnchor.fit(
            pair,
            f,
            first.fromAh() + f.step(),
            first.toAh() - f.step(),
            nominalAh,
            pack.limits().cellFullVoltage(),
            pack.limits().cellEmptyVoltage());
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
    return new CurveSplit(curve, Double.NaN, begin, end, full);
  }
}
