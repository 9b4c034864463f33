package sagbook.estimate.capacity;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import sagbook.estimate.axis.AxisBuilder;
import sagbook.estimate.axis.ChargeAxis;
import sagbook.evidence.Evidence;
import sagbook.model.Chemistry;
import sagbook.model.PackDescription;
import sagbook.numeric.EvenTable;

/** Capacity, offset, self-discharge and voltage error of every cell of a bank. */
public final class CapacityEstimator {
  private final Evidence evidence;
  private final PackDescription pack;
  private final ChargeAxis axis;
  private final double slowOhm;
  private final double nominalAh;

  /**
   * An estimator for one bank.
   *
   * @param axis charge axis of the string
   * @param slowOhm response of the string's cells some minutes after a step, ohm
   */
  public CapacityEstimator(
      Evidence evidence, PackDescription pack, ChargeAxis axis, double slowOhm) {
    this.evidence = evidence;
    this.pack = pack;
    this.axis = axis;
    this.slowOhm = slowOhm;
    this.nominalAh = pack.nominalCapacityAh();
  }

  /** For the workbench. */
  public List<String> explore() {
    List<String> out = new ArrayList<>();
    StringView view =
        StringView.of(
            evidence.thinned(), axis.chargeAh(), nominalAh, pack.bleedResistorOhm().orElse(3.3));
    double[] resting = AxisBuilder.restingVoltage(evidence.thinned(), slowOhm);
    TimeGrid grid = TimeGrid.over(view.days());
    double stepAh = nominalAh / 560;
    CurveLearner probe = new CurveLearner(view, grid, slowOhm, stepAh, 0);
    CurveLearner.Learned first = probe.first(resting);
    out.add(
        String.format(
            "axis pinned %s fulls %d offset %.3f A; curve %.1f..%.1f hyst %.4f",
            axis.pinned(),
            axis.fullCharges(),
            axis.offsetA(),
            first.fromAh(),
            first.toAh(),
            first.hysteresisV()));
    EvenTable f = first.curve();
    boolean knee = f.at(first.toAh()) > 3.385;
    double split = StringFit.split(f, first.toAh(), nominalAh);
    CellCurve curve;
    if (pack.chemistry() == Chemistry.LFP) {
      curve = splitAt(f, split, first, knee);
    } else {
      return out;
    }
    double anchorAh = first.toAh() - 1.0 * nominalAh;
    CurveLearner learner = new CurveLearner(view, grid, slowOhm, stepAh, anchorAh);
    double noise = 0.001;
    CellFit.Priors priors =
        new CellFit.Priors(
            0.2 * nominalAh,
            0.08 * nominalAh,
            0.008,
            0.05,
            0.3 * Math.max(1e-5, slowOhm),
            0.01 * nominalAh,
            view.bleedKnown() ? 0.0002 * nominalAh : 0.003 * nominalAh,
            noise,
            0.0006 * nominalAh);
    StringFit fit = new StringFit(view, grid, learner, priors, curve, split, nominalAh);
    fit.run();
    for (int c = 0; c < view.cells(); c++) {
      CellState s = fit.states()[c];
      out.add(
          String.format(
              "cell %d shift %.2f loss %.2f stretch %.4f off %.2f mV ohm %.4f slow %.4f drift"
                  + " %.2f..%.2f",
              c + 1,
              s.shiftAh(),
              s.lossAh(),
              s.stretch(),
              s.offsetV() * 1000,
              s.ohm() * 1000,
              s.slowOhm() * 1000,
              s.driftAh()[0],
              s.driftAh()[s.driftAh().length - 1]));
    }
    for (HalfCells pair : HalfCells.of(pack.chemistry())) {
      EvenTable whole = sum(fit.curve());
      Optional<CurveAnchor> anchor =
          CurveAnchor.fit(
              pair,
              whole,
              fit.curve().visitedFromAh() + stepAh,
              Math.min(fit.curve().visitedToAh(), first.toAh()) - stepAh,
              nominalAh,
              pack.limits().cellFullVoltage(),
              pack.limits().cellEmptyVoltage());
      out.add(pair + " " + anchor);
    }
    return out;
  }

  private static EvenTable sum(CellCurve curve) {
    EvenTable b = curve.bottom();
    double[] v = new double[b.values().length];
    for (int i = 0; i < v.length; i++) {
      double q = b.start() + i * b.step();
      v[i] = curve.at(q, q);
    }
    return new EvenTable(b.start(), b.step(), v);
  }

  private static CellCurve splitAt(
      EvenTable f, double split, CurveLearner.Learned first, boolean knee) {
    double[] bottom = f.values().clone();
    double[] top = new double[bottom.length];
    double level = f.at(split);
    for (int i = 0; i < bottom.length; i++) {
      double place = f.start() + i * f.step();
      if (knee && place > split) {
        top[i] = Math.max(0, bottom[i] - level);
        bottom[i] = level;
      }
    }
    return new CellCurve(
        new EvenTable(f.start(), f.step(), bottom),
        new EvenTable(f.start(), f.step(), top),
        first.fromAh(),
        first.toAh(),
        knee,
        first.hysteresisV());
  }
}
