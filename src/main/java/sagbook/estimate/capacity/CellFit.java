package sagbook.estimate.capacity;

import sagbook.numeric.EvenTable;
import sagbook.numeric.Ridge;

/**
 * Fits one cell's state against the string's curve by Gauss–Newton steps on {@code V - n}, where n
 * is what the string has in common at each row beyond the curve (polarisation, the fine print of
 * hysteresis, errors of the axis), so that only differences between neighbours count.
 *
 * <p>Parameters: 0 shift, 1 loss, 2 stretch, 3 voltage offset, 4 resistance (momentary), 5
 * resistance (slow), 6 and on the drift at the knots.
 */
final class CellFit {
  /** Share of the drop over the slow resistance by which cells differ beyond a mere resistance. */
  private static final double POLARISATION_SHARE = 0.05;

  /** The same of what the current has changed lately, which the slow parts have yet to follow. */
  private static final double RESTLESS_SHARE = 0.03;

  /** Residual by which all states are weighed alike, V. Common practice, no source. */
  private static final double USUAL_RESIDUAL_V = 0.002;

  /**
   * Share of a cell's rows that a state must have in sight of the curve: one that explains less
   * than a third of what the cell showed explains nothing. Common practice, no source.
   */
  static final double LEAST_SEEN = 1.0 / 3;

  /** Share of its own stretch to which a worn cell's is held. Common practice, no source. */
  private static final double LET_GO = 0.7;

  /** Error of a board's voltage, V. Common practice, no source. */
  private static final double BOARD_V = 0.003;

  /** The same of one that is held to be wrong, V. Common practice, no source. */
  private static final double MISREAD_V = 0.05;

  /** What a cell may differ by in size that is held to be sound, as a share of capacity. */
  static final double NO_LOSS_SHARE = 0.006;

  /** The same in its charge. */
  private static final double NO_SHIFT_SHARE = 0.003;

  static final int SHIFT = 0;
  static final int LOSS = 1;
  static final int STRETCH = 2;
  static final int OFFSET = 3;
  static final int OHM = 4;
  static final int SLOW_OHM = 5;
  static final int DRIFT = 6;

  private final StringView view;
  private final TimeGrid grid;
  private final CurveLearner places;
  private final Priors priors;
  private final boolean worn;

  /**
   * What is held likely before the data speak; standard deviations.
   *
   * @param shiftAh of the shift, Ah
   * @param lossAh of the loss, Ah
   * @param topAh of the shift less the loss, which is where a cell stands when the string is full,
   *     Ah
   * @param stretch of the stretch
   * @param offsetV of the voltage offset, V
   * @param ohm of both resistances, ohm
   * @param driftAhPerDay of a steady drift, Ah a day
   * @param wanderAh of what the drift wanders from knot to knot, Ah
   * @param noiseV of one voltage, V
   * @param axisAh of the charge axis within a day, Ah
   * @param rowsAlike how many neighbouring rows of the thinned record err alike, so that only one
   *     of them counts
   * @param apartAh how far apart cells must stand for their polarisation to differ, Ah
   */
  record Priors(
      double shiftAh,
      double lossAh,
      double topAh,
      double stretch,
      double offsetV,
      double ohm,
      double driftAhPerDay,
      double wanderAh,
      double noiseV,
      double axisAh,
      double rowsAlike,
      double apartAh) {

    /** The same for a cell that stands elsewhere but holds what its neighbours hold. */
    Priors displaced(double nominalAh) {
      return with(shiftAh, NO_LOSS_SHARE * nominalAh, topAh, BOARD_V);
    }

    /** The same for a cell that lost capacity but is as full as its neighbours when they are. */
    Priors level(double nominalAh) {
      return with(shiftAh, lossAh, NO_LOSS_SHARE * nominalAh, BOARD_V);
    }

    /** The same for a cell whose reading is held to be wrong, and nothing else. */
    Priors misread(double nominalAh) {
      return with(NO_SHIFT_SHARE * nominalAh, NO_LOSS_SHARE * nominalAh, topAh, MISREAD_V);
    }

    private Priors with(double shift, double loss, double top, double offset) {
      return new Priors(
          shift,
          loss,
          top,
          stretch,
          offset,
          ohm,
          driftAhPerDay,
          wanderAh,
          noiseV,
          axisAh,
          rowsAlike,
          apartAh);
    }
  }

  /**
   * How a cell is fitted.
   *
   * @param worn whether it is held to be worn as a whole: the further its size is from its
   *     neighbours', the less it is held to them
   */
  CellFit(StringView view, TimeGrid grid, CurveLearner places, Priors priors, boolean worn) {
    this.view = view;
    this.grid = grid;
    this.places = places;
    this.priors = priors;
    this.worn = worn;
  }

  int parameters() {
    return DRIFT + grid.knots();
  }

  /** Whether the curve says anything about this cell at this row. */
  boolean inSight(CellCurve curve, CellPlace place, int c, int r) {
    return place.bottomAh() >= curve.sharedFromAh()
        && place.topAh() <= curve.visitedToAh()
        && !Double.isNaN(view.voltage(c, r));
  }

  /** Where a cell in this state stands at this row. */
  CellPlace place(CellState s, int c, int r) {
    return places.place(s, c, r);
  }

  /** What the curve, hysteresis and resistance say of a cell at this row, V. */
  double predicted(CellCurve curve, CellState s, CellPlace place, int r) {
    return curve.at(place.topAh(), place.bottomAh())
        + s.offsetV()
        + curve.hysteresisV() * view.hysteresis()[r]
        + (places.slowOhm() + s.ohm()) * view.currentA()[r]
        + s.slowOhm() * view.slowCurrentA()[r];
  }

  /** Slope of the curve at a place, V/Ah. */
  double slope(CellCurve curve, CellPlace place) {
    return curve.top().slopeAt(place.topAh()) + curve.bottom().slopeAt(place.bottomAh());
  }

  /**
   * Adds some rows, linearised about a state, to a sum of observations.
   *
   * @param from first row
   * @param to one past the last
   */
  void observe(
      CellCurve curve, CellState s, int c, CommonPart common, int from, int to, Ridge into) {
    int r = from;
    while (r < to) {
      // Between two knots all but two parts of the drift are out of play: a sum of its own is
      // small.
      int k = grid.before()[r];
      Ridge between = new Ridge(DRIFT + 2);
      double[] x = new double[DRIFT + 2];
      for (; r < to && grid.before()[r] == k; r++) {
        if (common.known(r)) {
          observe(curve, s, c, common, r, x, between);
        }
      }
      into.add(
          between,
          new int[] {SHIFT, LOSS, STRETCH, OFFSET, OHM, SLOW_OHM, DRIFT + k, DRIFT + k + 1});
    }
  }

  private void observe(
      CellCurve curve, CellState s, int c, CommonPart common, int r, double[] x, Ridge into) {
    CellPlace place = place(s, c, r);
    if (!inSight(curve, place, c, r)) {
      return;
    }
    double topAh = place.topAh();
    double bottomAh = place.bottomAh();
    double topSlope = curve.top().slopeAt(topAh);
    double bottomSlope = curve.bottom().slopeAt(bottomAh);
    double slope = topSlope + bottomSlope;
    double residual = view.voltage(c, r) - common.volt(r) - predicted(curve, s, place, r);
    double variance = variance(slope, topAh, common.at(r, slope), r);
    double z = Math.abs(residual) / Math.sqrt(variance);
    double count = view.rowsOf()[r] / priors.rowsAlike();
    double weight = (z <= 2.5 ? 1 : 2.5 / z) / variance * count;
    x[SHIFT] = -slope;
    x[LOSS] = topSlope;
    x[STRETCH] =
        -bottomSlope * (bottomAh - places.bottomAnchorAh())
            - topSlope * (topAh - places.topAnchorAh());
    x[OFFSET] = 1;
    x[OHM] = view.currentA()[r];
    x[SLOW_OHM] = view.slowCurrentA()[r];
    double share = grid.share()[r];
    x[DRIFT] = -slope * (1 - share);
    x[DRIFT + 1] = -slope * share;
    into.observe(x, residual, weight);
  }

  private double variance(double slope, double topAh, double common, int r) {
    double restless =
        RESTLESS_SHARE * places.slowOhm() * Math.abs(view.currentA()[r] - view.slowCurrentA()[r]);
    // What the string has in common (polarisation, above all near full) is not shared by a cell
    // that stands elsewhere on the curve.
    double apart = Math.min(1, Math.abs(view.chargeAh()[r] - topAh) / priors.apartAh());
    return sq(priors.noiseV())
        + sq(slope * priors.axisAh())
        + sq(restless)
        + sq(POLARISATION_SHARE * places.slowOhm() * view.currentA()[r])
        + sq(0.7 * apart * common);
  }

  /**
   * Mean of Huber's loss over the rows; infinite when too few are in sight. A row at which a state
   * places the cell beyond the known curve counts too ({@link #shortOfEnd}): else a state that has
   * the cell out of sight whenever it fits badly would pass for a good one.
   */
  double cost(CellCurve curve, CellState s, int c, CommonPart common) {
    double sum = 0;
    int rows = 0;
    int seen = 0;
    EvenTable steepness = curve.steepness();
    for (int r = 0; r < view.rows(); r++) {
      if (!common.known(r) || Double.isNaN(view.voltage(c, r))) {
        continue;
      }
      CellPlace place = place(s, c, r);
      double residual = view.voltage(c, r) - common.volt(r) - predicted(curve, s, place, r);
      if (inSight(curve, place, c, r)) {
        seen += view.rowsOf()[r];
      } else {
        residual = shortOfEnd(curve, place, residual);
      }
      // Weighed by what the cell reads, alike for all states, or a steep place would excuse a bad
      // one.
      double v = Math.max(steepness.start(), Math.min(view.voltage(c, r), steepness.end()));
      double steep = steepness.at(v);
      double usual =
          Math.sqrt(
              sq(USUAL_RESIDUAL_V) + sq(0.7 * common.ofMost(r)) + sq(steep * priors.axisAh()));
      double z = Math.abs(residual) / usual;
      sum += view.rowsOf()[r] * (z <= 2.5 ? z * z / 2 : 2.5 * z - 3.125);
      rows += view.rowsOf()[r];
    }
    return seen < LEAST_SEEN * rows ? Double.POSITIVE_INFINITY : sum / rows;
  }

  /**
   * What a cell's voltage falls short of the end of the known curve that it is placed beyond, V;
   * that it lies further out on that side is no fault.
   */
  private static double shortOfEnd(CellCurve curve, CellPlace place, double residual) {
    double topAh = place.topAh();
    double bottomAh = place.bottomAh();
    double end =
        curve.at(Math.min(topAh, curve.visitedToAh()), Math.max(bottomAh, curve.sharedFromAh()));
    double beyond = residual + curve.at(topAh, bottomAh) - end;
    boolean above = topAh > curve.visitedToAh();
    boolean below = bottomAh < curve.sharedFromAh();
    if (above && below) {
      return beyond;
    }
    return above ? Math.min(0, beyond) : Math.max(0, beyond);
  }

  /** What noise alone costs. */
  double costOfNoise() {
    return sq(priors.noiseV() / USUAL_RESIDUAL_V) / 2;
  }

  /** Adds what was held likely, as seen from a state (the unknown is the step from it). */
  void observePriors(CellState s, Ridge into) {
    into.prior(SHIFT, -s.shiftAh(), priors.shiftAh());
    into.prior(LOSS, -s.lossAh(), priors.lossAh());
    double[] top = new double[parameters()];
    top[SHIFT] = 1;
    top[LOSS] = -1;
    into.observe(top, s.lossAh() - s.shiftAh(), 1 / sq(priors.topAh()));
    double letGo = worn ? LET_GO * Math.abs(s.stretch()) : 0;
    into.prior(STRETCH, -s.stretch(), Math.max(priors.stretch(), letGo));
    into.prior(OFFSET, -s.offsetV(), priors.offsetV());
    into.prior(OHM, -s.ohm(), priors.ohm());
    into.prior(SLOW_OHM, -s.slowOhm(), priors.ohm());
    int n = grid.knots();
    double spacingDays = grid.spanDays() / (n - 1);
    // The mean drift is zero by definition: the shift is that at mid log.
    double[] x = new double[parameters()];
    double mean = 0;
    for (int k = 0; k < n; k++) {
      x[DRIFT + k] = 1.0 / n;
      mean += s.driftAh()[k] / n;
    }
    into.observe(x, -mean, 1e8);
    // A straight line is cheap, bends cost: second differences, and a mild pull on the slope.
    for (int k = 1; k < n - 1; k++) {
      double[] bend = new double[parameters()];
      bend[DRIFT + k - 1] = 1;
      bend[DRIFT + k] = -2;
      bend[DRIFT + k + 1] = 1;
      double now = s.driftAh()[k - 1] - 2 * s.driftAh()[k] + s.driftAh()[k + 1];
      into.observe(bend, -now, 1 / sq(priors.wanderAh()));
    }
    double[] tilt = new double[parameters()];
    tilt[DRIFT] = -1;
    tilt[DRIFT + n - 1] = 1;
    double now = s.driftAh()[n - 1] - s.driftAh()[0];
    into.observe(tilt, -now, 1 / sq(priors.driftAhPerDay() * spacingDays * (n - 1)));
  }

  /** The state reached by a step, no part of which goes further than the curve can be trusted. */
  CellState stepped(CellState s, Ridge.Solution step, double furthestAh) {
    if (!step.determined()) {
      return s;
    }
    double[] d = step.value();
    double most =
        Math.max(Math.abs(d[SHIFT]), Math.max(Math.abs(d[LOSS]), Math.abs(d[LOSS] - d[SHIFT])));
    double f = most > furthestAh ? furthestAh / most : 1;
    double[] drift = s.driftAh().clone();
    for (int k = 0; k < drift.length; k++) {
      drift[k] += f * d[DRIFT + k];
    }
    return new CellState(
        s.shiftAh() + f * d[SHIFT],
        s.lossAh() + f * d[LOSS],
        Math.max(-0.3, Math.min(0.3, s.stretch() + f * d[STRETCH])),
        s.offsetV() + f * d[OFFSET],
        s.ohm() + f * d[OHM],
        s.slowOhm() + f * d[SLOW_OHM],
        drift);
  }

  private static double sq(double x) {
    return x * x;
  }
}
