package sagbook.estimate.capacity;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Function;
import sagbook.estimate.axis.AxisBuilder;
import sagbook.estimate.axis.ChargeAxis;
import sagbook.estimate.curve.ElectrodePair;
import sagbook.evidence.ThinnedRecord;
import sagbook.model.Chemistry;
import sagbook.model.Estimate;
import sagbook.model.PackDescription;
import sagbook.numeric.EvenTable;
import sagbook.numeric.Robust;
import sagbook.wording.Words;

/**
 * Capacity, charge offset, self-discharge and voltage error of every cell of a bank.
 *
 * <p>Cells in series share one current, so at any moment they have moved the same charge; what
 * their voltages differ by tells where on the common curve each of them is (charge-curve comparison
 * within a string, after Zheng, Ouyang, Lu and co-authors, J. Power Sources 226 (2013) 33). Unlike
 * there, bottom and top of the curve move apart, because a cell that lost cyclable lithium is not a
 * stretched copy of its neighbours (Dubarry, Truchot and Liaw, J. Power Sources 219 (2012) 204).
 * The curve itself is learned from the string ({@link CurveLearner}) and anchored on published
 * half-cell functions where it was not visited ({@link CurveAnchor}).
 */
public final class CapacityEstimator {
  private static final Words WORDS = Words.english();

  // The shares and voltages below were set on invented packs of a generator that shares no code
  // with
  // this project; what is common practice says so.

  /** Standard uncertainty of a current sensor's gain and of the anchor's shape, relative. */
  private static final double SCALE_SD = 0.005;

  /** Share of capacity by which a charge axis made up from voltages misplaces a cell. */
  private static final double MADE_UP_AXIS_SD = 0.011;

  /** Share by which it misjudges what a cell lost. */
  private static final double MADE_UP_LOSS_SHARE = 0.3;

  /** What it does to a voltage error, V. */
  private static final double MADE_UP_AXIS_V = 0.005;

  /** Error of a counted charge axis within a day, one standard deviation, share of capacity. */
  private static final double COUNTED_AXIS_SD = 0.0006;

  /** The same of one made up from voltages. */
  private static final double MADE_UP_AXIS_WITHIN_DAY_SD = 0.003;

  /**
   * A walk at random of a day that is held at both ends by full charges has half the spread at its
   * middle (Brownian bridge).
   */
  private static final double BRIDGED = 0.5;

  /** How far an axis that wanders at random does so over the log, as a multiple of a day's. */
  private static final double AXIS_WANDERS = 3;

  /** Voltage that no part of the model explains, one standard deviation, V. */
  private static final double UNEXPLAINED_V = 0.0015;

  /** The same for a cell that stands elsewhere near full and so is polarised otherwise, V. */
  private static final double UNEXPLAINED_APART_V = 0.0065;

  /** How far from the others that is, as a share of capacity. */
  private static final double APART = 0.03;

  /**
   * Share by which the charge that a worn cell lost is misjudged, since cells wear in more ways
   * than two ends of a curve that move apart.
   */
  private static final double FLAT_WEAR_SHARE = 0.07;

  private static final double SLOPING_WEAR_SHARE = 0.12;

  /** Voltage by which a worn cell's curve departs from a usual one with its ends moved, V. */
  private static final double WORN_CURVE_V = 0.03;

  /** Share of capacity by which a single cell's curve may differ from the common one. */
  private static final double FLAT_CELL_SHAPE_SD = 0.0026;

  private static final double SLOPING_CELL_SHAPE_SD = 0.0045;

  /**
   * Current over capacity, 1/h, beyond which capacities can't be told: they are defined at low
   * rate. Common practice, no source.
   */
  private static final double FASTEST_RATE = 0.5;

  /** An uncertainty of capacity beyond this is not worth a number. Common practice, no source. */
  private static final double WIDEST_CAPACITY_SD = 0.016;

  /**
   * Share of the charge below the lowest place seen by which the curve of another maker's cell
   * misjudges it: published half-cells laid over three measured LFP tables (LithiumWerks, Sony
   * after Naumann 2018, TU/e), of which 5 to 20 % were hidden at the empty end, missed the empty
   * end by a quarter to a half of what was hidden.
   */
  private static final double UNSEEN_BY_OTHERS = 0.3;

  /** The same for the cells' own table, which says where empty is. Common practice, no source. */
  private static final double UNSEEN_BY_TABLE = 0.05;

  /** Lithium that the cells of a string in use have lost already. Common practice, no source. */
  private static final double USUALLY_LOST = 0.02;

  /** Share by which published half-cells may misjudge what was lost beyond capacity. */
  private static final double EXCESS_SHARE = 0.5;

  /**
   * Share of capacity that must have been gone through for the steps to be told from each other.
   */
  private static final double WELL_SEEN = 0.6;

  /** An imbalance beyond this share of capacity, seen by steps alone, is more likely a bad fit. */
  private static final double FURTHEST_APART = 0.12;

  private final ThinnedRecord record;
  private final PackDescription pack;
  private final double slowOhm;
  private final double nominalAh;
  private final boolean counted;

  /** Error of the charge axis, one standard deviation, Ah. */
  private final double axisSdAh;

  /** Whether the string was worked so hard that the drop inside the cells bends their curves. */
  private final boolean fast;

  private final StringView view;
  private final TimeGrid grid;

  /**
   * An estimator for one bank.
   *
   * @param record thinned record; with a made-up current when none was logged
   * @param axis charge axis of the string
   * @param slowOhm response of the string's cells some minutes after a step, ohm
   * @param wanderAhInADay what the counted charge wanders in a day, one standard deviation, Ah;
   *     empty when the current was not logged
   */
  public CapacityEstimator(
      ThinnedRecord record,
      PackDescription pack,
      ChargeAxis axis,
      double slowOhm,
      Optional<Double> wanderAhInADay) {
    this.record = record;
    this.pack = pack;
    this.slowOhm = slowOhm;
    this.nominalAh = pack.nominalCapacityAh();
    this.counted = wanderAhInADay.isPresent();
    this.axisSdAh =
        wanderAhInADay
            .map(day -> Math.hypot(COUNTED_AXIS_SD * nominalAh, AXIS_WANDERS * BRIDGED * day))
            .orElse(AXIS_WANDERS * MADE_UP_AXIS_WITHIN_DAY_SD * nominalAh);
    this.view = StringView.of(record, axis.chargeAh(), nominalAh, pack.bleedOhm());
    this.grid = TimeGrid.over(view.days());
    this.fast = view.usualRate() > FASTEST_RATE;
  }

  /** Estimates for all cells; unknown with a reason where the log can't tell. */
  public CapacityResult estimate() {
    double stepAh = nominalAh / 560;
    CommonPart common = new CommonPart(view.rows(), view.cells(), axisSdAh);
    CurveLearner.Learned first =
        new CurveLearner(view, grid, common, slowOhm, stepAh, 0, 0)
            .first(AxisBuilder.restingVoltage(record, slowOhm));
    if (first.toAh() - first.fromAh() < 0.08 * nominalAh) {
      return nothing(WORDS.say("unknown.hardly-used"));
    }
    CurveSplit split = CurveSplit.of(first, pack, nominalAh);
    CurveLearner learner =
        new CurveLearner(
            view, grid, common, slowOhm, stepAh, split.bottomAnchorAh(), split.topAnchorAh());
    StringFit fit =
        new StringFit(
            view, grid, learner, common, priors(), split.curve(), split.splitAh(), nominalAh);
    fit.run();
    Optional<CurveAnchor> anchor = anchor(fit.curve(), first, stepAh);
    CellReading.Lever lever =
        anchor
            .map(
                a ->
                    new CellReading.Lever(
                        a.fullAh() - split.topAnchorAh(), a.emptyAh() - split.bottomAnchorAh()))
            .orElse(new CellReading.Lever(0, 0));
    CellReading[] readings = new CellReading[view.cells()];
    for (int c = 0; c < readings.length; c++) {
      readings[c] = CellReading.of(fit, view, grid, c, lever);
    }
    return assemble(fit, readings, anchor, split);
  }

  private CellFit.Priors priors() {
    return new CellFit.Priors(
        0.2 * nominalAh,
        (fast ? 0.012 : 0.08) * nominalAh,
        0.008,
        // On a sloping curve a few millivolt are a per cent of charge, so a board is held to its
        // word.
        pack.chemistry() == Chemistry.LFP ? 0.05 : 0.002,
        0.3 * Math.max(1e-5, slowOhm),
        0.01 * nominalAh,
        view.bleedKnown() ? 0.0002 * nominalAh : 0.003 * nominalAh,
        0.0012,
        (counted ? COUNTED_AXIS_SD : MADE_UP_AXIS_WITHIN_DAY_SD) * nominalAh,
        0.03 * nominalAh);
  }

  private Optional<CurveAnchor> anchor(CellCurve curve, CurveLearner.Learned first, double stepAh) {
    EvenTable whole = whole(curve);
    CurveAnchor best = null;
    for (ElectrodePair pair : ElectrodePair.of(pack)) {
      Optional<CurveAnchor> one =
          CurveAnchor.fit(
              pair,
              whole,
              curve.visitedFromAh() + stepAh,
              Math.min(curve.visitedToAh(), first.toAh()) - stepAh,
              nominalAh,
              pack.limits().cellFullVoltage(),
              pack.limits().cellEmptyVoltage());
      if (one.isPresent() && (best == null || one.get().misfitV() < best.misfitV())) {
        best = one.get();
      }
    }
    return Optional.ofNullable(best);
  }

  private static EvenTable whole(CellCurve curve) {
    EvenTable b = curve.bottom();
    double[] v = new double[b.values().length];
    for (int i = 0; i < v.length; i++) {
      double q = b.start() + i * b.step();
      v[i] = curve.at(q, q);
    }
    return new EvenTable(b.start(), b.step(), v);
  }

  private CapacityResult nothing(String reason) {
    Estimate none = Estimate.unknown(reason);
    List<CellCharge> all = new ArrayList<>();
    for (int c = 0; c < view.cells(); c++) {
      all.add(new CellCharge(none, none, none, none, none));
    }
    return new CapacityResult(none, 0, nominalAh, all);
  }

  private CapacityResult assemble(
      StringFit fit, CellReading[] readings, Optional<CurveAnchor> anchor, CurveSplit split) {
    boolean topSeen = fit.curve().topVisited();
    Estimate median = medianCapacity(anchor, topSeen, fit.curve().visitedFromAh());
    double spanAh = median.find().orElse(nominalAh);
    double fullAh = anchor.isPresent() && topSeen ? anchor.get().fullAh() : split.presumedFullAh();
    double medianTop = middle(readings, CellReading::topAtEndAh);
    double medianDrift = middle(readings, CellReading::driftAhPerDay);
    double medianOffset = middle(readings, CellReading::offsetV);
    double medianLoss = middle(readings, CellReading::lossAh);
    List<CellCharge> all = new ArrayList<>();
    for (int c = 0; c < readings.length; c++) {
      CellReading reading = readings[c];
      double excess = spanAh * excess(anchor, fit.states()[c].lossAh() / spanAh);
      double loss = reading.lossAh().value() - medianLoss - excess;
      double kneeSd = kneeSd(fit, c, reading.topAtEndAh().value() - medianTop);
      double lossSd =
          Math.sqrt(
              sq(reading.lossAh().sd())
                  + sq(kneeSd)
                  + sq(cellShapeSd() * spanAh)
                  + sq(EXCESS_SHARE * excess)
                  + sq(wearShare() * loss)
                  + (counted ? 0 : sq(MADE_UP_LOSS_SHARE * loss) + sq(MADE_UP_AXIS_SD * spanAh)));
      all.add(
          new CellCharge(
              capacity(median, loss, lossSd, topSeen),
              relative(loss, lossSd, spanAh, topSeen),
              offset(fit, c, reading, kneeSd, medianTop, medianLoss, topSeen),
              selfDischarge(reading, medianDrift, topSeen),
              fast
                  ? tooFast()
                  : !counted && !(lossSd < 2 * WIDEST_CAPACITY_SD * spanAh)
                      ? unseen()
                      : Estimate.of(
                          1000 * (reading.offsetV().value() - medianOffset),
                          1000
                              * Math.sqrt(
                                  sq(reading.offsetV().sd())
                                      + sq(counted ? 2e-4 : MADE_UP_AXIS_V)
                                      + sq(WORN_CURVE_V * loss / spanAh)))));
    }
    return new CapacityResult(median, fullAh, spanAh, all);
  }

  /**
   * What a cell lost in lithium beyond what it lost in capacity, by published half-cells; both as
   * shares of capacity. None on a sloping curve, whose fit can't tell lost lithium from lost size
   * that well.
   */
  private double excess(Optional<CurveAnchor> anchor, double lost) {
    if (pack.chemistry() != Chemistry.LFP) {
      return 0;
    }
    ElectrodePair pair = anchor.map(CurveAnchor::pair).orElse(ElectrodePair.of(pack).get(0));
    double fullV = pack.limits().cellFullVoltage();
    double emptyV = pack.limits().cellEmptyVoltage();
    double usual = pair.charge(USUALLY_LOST, fullV, emptyV);
    double worn = pair.charge(USUALLY_LOST + Math.max(-USUALLY_LOST, lost), fullV, emptyV);
    return lost < -USUALLY_LOST ? 0 : lost - (usual - worn);
  }

  /** Uncertainty of a cell's end of charge from voltage that nothing explains, Ah. */
  private double kneeSd(StringFit fit, int cell, double topAh) {
    // A sloping curve tells charge everywhere and does not rest on what happens at the knee.
    boolean flat = pack.chemistry() == Chemistry.LFP;
    double apart = flat ? Math.min(1, Math.abs(topAh) / (APART * nominalAh)) : 0;
    double volt = UNEXPLAINED_V + apart * (UNEXPLAINED_APART_V - UNEXPLAINED_V);
    return volt / Math.max(1e-9, fit.topSlopeReached(cell));
  }

  private double wearShare() {
    return pack.chemistry() == Chemistry.LFP ? FLAT_WEAR_SHARE : SLOPING_WEAR_SHARE;
  }

  private double cellShapeSd() {
    return pack.chemistry() == Chemistry.LFP ? FLAT_CELL_SHAPE_SD : SLOPING_CELL_SHAPE_SD;
  }

  private static double middle(
      CellReading[] readings, Function<CellReading, CellReading.Figure> of) {
    double[] all = new double[readings.length];
    for (int c = 0; c < all.length; c++) {
      all[c] = of.apply(readings[c]).value();
    }
    return Robust.median(all);
  }

  private Estimate medianCapacity(
      Optional<CurveAnchor> anchor, boolean topSeen, double seenFromAh) {
    if (!counted) {
      return Estimate.unknown(WORDS.say("unknown.no-current.capacity"));
    }
    if (fast) {
      return tooFast();
    }
    if (pack.chemistry() != Chemistry.LFP && pack.openCircuit().isEmpty()) {
      // A measured NMC cell came out 4 % wrong by the published curve of another.
      return Estimate.unknown(WORDS.say("unknown.makes-differ"));
    }
    if (!topSeen || anchor.isEmpty()) {
      return Estimate.unknown(WORDS.say("unknown.never-full"));
    }
    CurveAnchor a = anchor.get();
    double capacity = a.fullAh() - a.emptyAh();
    double misfit = Math.max(0, a.misfitV() - 0.002) / 0.002 * 0.003;
    double unseenShare = pack.openCircuit().isPresent() ? UNSEEN_BY_TABLE : UNSEEN_BY_OTHERS;
    double unseen = unseenShare * Math.max(0, seenFromAh - a.emptyAh());
    double sd =
        Math.sqrt(
            sq(a.fullSdAh())
                + sq(a.emptySdAh())
                + sq(unseen)
                + sq(SCALE_SD * capacity)
                + sq(misfit * capacity));
    if (!(sd < WIDEST_CAPACITY_SD * capacity)) {
      return notDeepEnough();
    }
    return Estimate.of(capacity, sd);
  }

  private Estimate notDeepEnough() {
    OptionalInt first = EmptyFirst.cell(record, pack.chemistry());
    return Estimate.unknown(
        first.isPresent()
            ? WORDS.say("unknown.empty-first", Integer.toString(first.getAsInt()))
            : WORDS.say("unknown.not-deep"));
  }

  private Estimate capacity(Estimate median, double loss, double lossSd, boolean topSeen) {
    if (!(median instanceof Estimate.Known m)) {
      return median;
    }
    if (!topSeen || !(lossSd < WIDEST_CAPACITY_SD * m.value())) {
      return unseen();
    }
    return Estimate.of(m.value() - loss, Math.hypot(lossSd, m.halfWidth() / 1.959964));
  }

  private static Estimate.Unknown tooFast() {
    return Estimate.unknown(WORDS.say("unknown.too-fast"));
  }

  private static Estimate.Unknown unseen() {
    return Estimate.unknown(WORDS.say("unknown.unclear"));
  }

  private Estimate relative(double loss, double lossSd, double spanAh, boolean topSeen) {
    if (fast) {
      return tooFast();
    }
    if (!topSeen || !(lossSd < (counted ? 1.25 : 4) * WIDEST_CAPACITY_SD * spanAh)) {
      return unseen();
    }
    return Estimate.of(1 - loss / spanAh, lossSd / spanAh);
  }

  /**
   * Offset at the end of the log, by the cell's end of charge or by the steps of its curve,
   * whichever is surer.
   */
  private Estimate offset(
      StringFit fit,
      int cell,
      CellReading reading,
      double kneeSd,
      double medianTop,
      double medianLoss,
      boolean topSeen) {
    double loss = reading.lossAh().value() - medianLoss;
    double top = reading.topAtEndAh().value() - medianTop;
    double lossSd = Math.hypot(reading.lossAh().sd(), kneeSd);
    double byTopSd = Math.hypot(reading.topAtEndAh().sd(), kneeSd);
    LikelySize size = LikelySize.of(loss, lossSd, loss + fit.roomBelowKneeAh(cell), nominalAh);
    double byBottomSd = Math.hypot(reading.shiftAh().sd(), size.sdAh());
    boolean byTop = topSeen && byTopSd < byBottomSd;
    double at = byTop ? top : top + loss - size.lossAh();
    // A cell that is ahead where the curve steps can't be so by wear; one behind may be worn
    // instead, unless the others were seen full and it was not.
    boolean tells =
        topSeen
            || (counted
                && !fast
                && fit.seenAh() > WELL_SEEN * nominalAh
                && at < -APART * nominalAh);
    if (!tells) {
      return Estimate.unknown(WORDS.say("unknown.flat"));
    }
    double sd =
        Math.sqrt(
            sq(byTop ? byTopSd : byBottomSd)
                + sq(0.001 * nominalAh)
                + (counted ? 0 : sq(0.15 * at) + sq(0.005 * nominalAh)));
    boolean far = !byTop && Math.abs(at) > FURTHEST_APART * nominalAh;
    if (far || (fast && !byTop) || !(sd < 0.03 * nominalAh)) {
      return unseen();
    }
    return Estimate.of(-100 * at / nominalAh, 100 * sd / nominalAh);
  }

  private Estimate selfDischarge(CellReading reading, double medianDrift, boolean topSeen) {
    if (!counted || view.days() < 5) {
      return Estimate.unknown(
          counted ? WORDS.say("unknown.five-days") : WORDS.say("unknown.no-current.drain"));
    }
    double perDay = reading.driftAhPerDay().value() - medianDrift;
    double sd = Math.hypot(reading.driftAhPerDay().sd(), 0.0015 * nominalAh / view.days());
    double milliamp = perDay * 1000 / 24;
    double milliampSd = sd * 1000 / 24;
    if (!(milliampSd < 40 * nominalAh / 280) || (!topSeen && milliampSd > 20 * nominalAh / 280)) {
      return Estimate.unknown(WORDS.say("unknown.drain"));
    }
    return Estimate.of(milliamp, milliampSd);
  }

  private static double sq(double x) {
    return x * x;
  }
}
