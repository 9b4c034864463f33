package sagbook.estimate.capacity;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import sagbook.estimate.axis.AxisBuilder;
import sagbook.estimate.axis.ChargeAxis;
import sagbook.evidence.ThinnedRecord;
import sagbook.model.CapacitySource;
import sagbook.model.Chemistry;
import sagbook.model.Estimate;
import sagbook.model.PackDescription;
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

  /**
   * Error of a counted charge axis within a day, one standard deviation, share of capacity; these
   * were set on invented packs of a generator that shares no code with this project.
   */
  private static final double COUNTED_AXIS_SD = 0.0006;

  /** The same of one made up from voltages of a sloping curve. */
  private static final double MADE_UP_AXIS_WITHIN_DAY_SD = 0.003;

  /** The same of one made up from voltages of a flat curve. */
  private static final double WARPED_AXIS_WITHIN_DAY_SD = 0.01;

  /** Rows of a minute that err alike, so that one counts. Common practice, no source. */
  private static final double ROWS_ALIKE = 10;

  /** The same along a warped axis, whose error lasts as long as a load does: an hour. */
  private static final double WARPED_ROWS_ALIKE = 60;

  /**
   * A walk at random of a day that is held at both ends by full charges has half the spread at its
   * middle (Brownian bridge).
   */
  private static final double BRIDGED = 0.5;

  /** How far an axis that wanders at random does so over the log, as a multiple of a day's. */
  private static final double AXIS_WANDERS = 3;

  /**
   * Current over capacity, 1/h, beyond which capacities can't be told: they are defined at low
   * rate. Common practice, no source.
   */
  private static final double FASTEST_RATE = 0.5;

  /**
   * Share of capacity beyond the knee within which an LFP cell is full. Common practice, no source.
   */
  private static final double MOST_BEYOND_KNEE = 0.05;

  /** Bins of the learned curve to a nominal capacity. */
  private static final double CURVE_BINS = 560;

  /**
   * What a cell must seem to have lost to be read as a worn one, as a share of capacity: beyond
   * what healthy cells differ by. Common practice, no source.
   */
  private static final double LOST_MUCH = 0.03;

  private final ThinnedRecord record;
  private final PackDescription pack;
  private final double slowOhm;
  private final double nominalAh;
  private final boolean counted;

  /** Error of the charge axis, one standard deviation, Ah. */
  private final double axisSdAh;

  /** Whether the string was worked so hard that the drop inside the cells bends their curves. */
  private final boolean fast;

  /** Every row of the record. */
  private final StringView rows;

  /** The same with rows that say the same taken together. */
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
            .orElse(AXIS_WANDERS * axisWithinDaySd() * nominalAh);
    // Bled ampere-hours have no place on an axis that is no ampere-hours.
    boolean shares = !counted && pack.capacitySource() == CapacitySource.ASSUMED;
    this.rows =
        StringView.of(
            shares ? record.withoutBleed() : record, axis.chargeAh(), nominalAh, pack.bleedOhm());
    // Within one bin the curve can't tell rows apart.
    this.view = rows.of(RowGroups.of(record, axis.chargeAh(), nominalAh / CURVE_BINS));
    this.grid = TimeGrid.over(view.day());
    this.fast = rows.usualRate() > FASTEST_RATE;
  }

  /** Estimates for all cells; unknown with a reason where the log can't tell. */
  public CapacityResult estimate() {
    double stepAh = nominalAh / CURVE_BINS;
    CommonPart common =
        new CommonPart(view.day(), view.rowsOf(), view.cells(), axisSdAh, rowsAlike());
    CurveLearner.Learned first =
        new CurveLearner(rows, grid, common, slowOhm, stepAh, 0, 0)
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
            view,
            grid,
            learner,
            common,
            new Explanations(view, grid, learner, priors(), nominalAh, warped()),
            split.curve(),
            split.splitAh(),
            nominalAh);
    fit.run();
    Optional<CurveAnchor> anchor =
        split.anchor().isPresent() ? split.anchor() : anchor(fit.curve(), first, stepAh);
    CellReading.Lever lever =
        anchor
            .map(
                a ->
                    new CellReading.Lever(
                        a.fullAh() - split.topAnchorAh(), a.emptyAh() - split.bottomAnchorAh()))
            .orElse(new CellReading.Lever(0, 0));
    double[] misfits = fit.misfits();
    CellReading[] readings =
        IntStream.range(0, view.cells())
            .parallel()
            .mapToObj(c -> CellReading.of(fit, view, grid, c, misfits[c], lever))
            .toArray(CellReading[]::new);
    boolean wellSeen = fit.seenAh() > CellAssessor.WELL_SEEN * nominalAh;
    if (counted && wellSeen && !CurveTraits.of(pack.chemistry()).flat() && anchor.isPresent()) {
      readWornCells(readings, fit, learner, anchor.get().fullAh());
    }
    boolean topSeen = fit.curve().topVisited();
    MedianCapacity capacity = new MedianCapacity(record, pack, counted, fast);
    Optional<StringEnds> ends = ends(fit, anchor, capacity);
    Estimate median =
        ends.map(e -> capacity.of(e, fit.curve()))
            .orElseGet(() -> capacity.of(anchor, fit.curve()));
    List<CellCharge> cells =
        new CellAssessor(
                fit,
                readings,
                UnloggedBleeding.of(record, pack),
                median,
                pack,
                view.days(),
                counted,
                fast)
            .cells();
    double fullAh =
        topSeen
            ? ends.map(StringEnds::fullAh)
                .or(() -> anchor.map(CurveAnchor::fullAh))
                .orElse(split.presumedFullAh())
            : split.presumedFullAh();
    CapacityResult result =
        new CapacityResult(median, fullAh, median.find().orElse(nominalAh), cells);
    return counted && pack.capacitySource() == CapacitySource.ASSUMED
        ? result.withoutShares(WORDS.say("unknown.no-size"))
        : result;
  }

  /** Both ends by all published pairs, where the log can tell them. */
  private Optional<StringEnds> ends(
      StringFit fit, Optional<CurveAnchor> anchor, MedianCapacity capacity) {
    boolean published = pack.chemistry() == Chemistry.LFP && pack.openCircuit().isEmpty();
    boolean told = capacity.untold(anchor, fit.curve().topVisited()).isEmpty();
    return published && told
        ? StringEnds.of(fit.curve(), lostByLowest(fit), nominalAh, pack.limits())
        : Optional.empty();
  }

  /**
   * Charge that the cell which came lowest lost between bottom and top, Ah, where that is plain.
   */
  private static Optional<Double> lostByLowest(StringFit fit) {
    int lowest = fit.furthestBehind();
    return fit.plain(lowest) ? Optional.of(fit.states()[lowest].lossAh()) : Optional.empty();
  }

  /** Cells that lost much on a sloping curve are read anew, by what their graphite shows. */
  private void readWornCells(
      CellReading[] readings, StringFit fit, CurveLearner learner, double fullAh) {
    CellCurve curve = fit.curve();
    WornCellFit worn =
        new WornCellFit(curve.whole(), curve.visitedFromAh(), curve.visitedToAh(), fullAh, pack);
    for (int c = 0; c < readings.length; c++) {
      CellReading usual = readings[c];
      if (usual.lossAh().value() > LOST_MUCH * nominalAh && !fit.misread(c)) {
        // Where the usual fit only holds by a reading that is wrong as none is, its drift and
        // resistance are as wrong, and would smear what the cell showed.
        CurveLearner.Steady alone =
            fit.strained(c)
                ? learner.steady(c, curve.hysteresisV(), priors())
                : new CurveLearner.Steady(
                    fit.states()[c],
                    usual.driftAhPerDay(),
                    usual.topAtEndAh().sd() / usual.misfit());
        CurveLearner.Learned own = learner.own(alone.state(), c, curve.hysteresisV());
        double atEndAh =
            alone.state().driftAh()[grid.knots() - 1] + view.bledAh()[c][view.rows() - 1];
        CellReading.Figure movedAh = new CellReading.Figure(atEndAh, alone.atEndSdAh());
        readings[c] =
            worn.of(own.curve(), own.fromAh(), own.toAh())
                .map(cell -> cell.reading(alone.driftAhPerDay(), movedAh, nominalAh))
                .orElse(usual);
      }
    }
  }

  private CellFit.Priors priors() {
    return new CellFit.Priors(
        0.2 * nominalAh,
        (fast ? 0.012 : 0.08) * nominalAh,
        0.3 * nominalAh,
        0.008,
        // On a sloping curve a few millivolt are a per cent of charge, so a board is held to its
        // word.
        pack.chemistry() == Chemistry.LFP ? 0.05 : 0.002,
        0.3 * Math.max(1e-5, slowOhm),
        0.01 * nominalAh,
        view.bleedKnown() ? 0.0002 * nominalAh : 0.003 * nominalAh,
        0.0012,
        axisWithinDaySd() * nominalAh,
        rowsAlike(),
        0.03 * nominalAh);
  }

  private double rowsAlike() {
    return warped() ? WARPED_ROWS_ALIKE : ROWS_ALIKE;
  }

  /**
   * Whether the charge axis was made up from voltages that tell little: then it is stretched in
   * places and squeezed in others.
   */
  private boolean warped() {
    return !counted && CurveTraits.of(pack.chemistry()).flat();
  }

  private double axisWithinDaySd() {
    if (counted) {
      return COUNTED_AXIS_SD;
    }
    return warped() ? WARPED_AXIS_WITHIN_DAY_SD : MADE_UP_AXIS_WITHIN_DAY_SD;
  }

  private Optional<CurveAnchor> anchor(CellCurve curve, CurveLearner.Learned first, double stepAh) {
    return CurveAnchor.closest(
            pack,
            curve.whole(),
            curve.visitedFromAh() + stepAh,
            Math.min(curve.visitedToAh(), first.toAh()) - stepAh,
            curve.visitedToAh() - stepAh)
        .filter(anchor -> endsAtTheKnee(anchor, curve));
  }

  /**
   * Whether full lies where the knee was seen to lead. Published functions laid over a curve whose
   * far bottom one drained cell showed may end up somewhere else altogether.
   */
  private boolean endsAtTheKnee(CurveAnchor anchor, CellCurve curve) {
    boolean kneeSeen = pack.chemistry() == Chemistry.LFP && curve.topVisited();
    double beyondAh = Math.abs(anchor.fullAh() - curve.visitedToAh());
    return !kneeSeen || beyondAh < MOST_BEYOND_KNEE * nominalAh;
  }

  private CapacityResult nothing(String reason) {
    Estimate none = Estimate.unknown(reason);
    List<CellCharge> all = new ArrayList<>();
    for (int c = 0; c < view.cells(); c++) {
      all.add(new CellCharge(none, none, none, none, none));
    }
    return new CapacityResult(none, 0, nominalAh, all);
  }
}
