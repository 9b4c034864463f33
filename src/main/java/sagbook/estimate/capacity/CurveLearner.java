package sagbook.estimate.capacity;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import sagbook.numeric.EvenTable;
import sagbook.numeric.Ridge;

/**
 * Learns the string's curve from its own cells: a shape-invariant model (Lawton, Sylvestre and
 * Maggio 1972), in which all cells share one curve and differ in where it lies. Resistance,
 * hysteresis and each cell's own differences are taken off before the voltages are averaged in bins
 * of charge.
 */
final class CurveLearner {
  /**
   * One or two cells alone somewhere on the curve teach it, but are not held to what they taught:
   * two that stand out in different ways would each be bent to the other.
   */
  private static final int FEWEST_TEACHERS = 3;

  /** Bins over which the slope of the flat part is taken. */
  private static final int FLAT_STEPS = 20;

  /** How well a cell's own curve is seen, V and bins of charge. Common practice, no source. */
  private static final double SEEN_V = 0.002;

  private static final double SEEN_BINS = 2;

  /** Beyond so many standard deviations a row counts less (Huber). */
  private static final double MOST_SDS = 3;

  /** Rows of a minute that err alike. Common practice, no source. */
  private static final double ROWS_ALIKE = 10;

  /** After these a cell's own curve and its resistance stand. */
  private static final int TURNS = 3;

  /** A drift that does not stand by then is not one. */
  private static final int MOST_TURNS = 25;

  private final StringView view;
  private final TimeGrid grid;
  private final CommonPart common;
  private final double slowOhm;
  private final double stepAh;
  private final double bottomAnchorAh;
  private final double topAnchorAh;

  /** How much each row says: less shortly after large steps. */
  private final double[] weight;

  /**
   * A learner.
   *
   * @param common what the string has in common, kept up to date by whoever fits the cells
   * @param slowOhm response of the string's cells some minutes after a step, ohm
   * @param stepAh width of a bin, Ah
   * @param bottomAnchorAh place about which a cell's size stretches the graphite's part, Ah
   * @param topAnchorAh place about which it stretches the positive electrode's part, Ah
   */
  CurveLearner(
      StringView view,
      TimeGrid grid,
      CommonPart common,
      double slowOhm,
      double stepAh,
      double bottomAnchorAh,
      double topAnchorAh) {
    this.topAnchorAh = topAnchorAh;
    this.view = view;
    this.common = common;
    this.grid = grid;
    this.slowOhm = slowOhm;
    this.stepAh = stepAh;
    this.bottomAnchorAh = bottomAnchorAh;
    this.weight = new double[view.rows()];
    Arrays.setAll(weight, r -> view.rowsOf()[r] / (1 + sq(slowOhm * restlessA(r) / 0.003)));
  }

  private double restlessA(int r) {
    return view.currentA()[r] - view.slowCurrentA()[r];
  }

  /** The curve of the string's median voltage: a first look, before cells are told apart. */
  Learned first(double[] restingV) {
    double[] range = range(view.chargeAh());
    Bins bins = new Bins(range[0], range[1], stepAh);
    double hysteresisV = 0.008;
    for (int pass = 0; pass < 3; pass++) {
      bins.clear();
      for (int r = 0; r < view.rows(); r++) {
        bins.add(view.chargeAh()[r], restingV[r] - hysteresisV * view.hysteresis()[r], weight[r]);
      }
      hysteresisV = hysteresis(bins, restingV, hysteresisV);
    }
    return new Learned(bins.table(), bins.from(), bins.to(), hysteresisV);
  }

  private double hysteresis(Bins bins, double[] restingV, double now) {
    EvenTable table = bins.table();
    double xy = 0;
    double xx = 1e-9;
    for (int r = 0; r < view.rows(); r++) {
      double q = view.chargeAh()[r];
      if (Math.abs(table.slopeAt(q)) * stepAh > 0.004) {
        continue;
      }
      double residual = restingV[r] - table.at(q);
      if (Math.abs(residual) < 0.05) {
        double h = view.hysteresis()[r];
        xy += weight[r] * residual * h;
        xx += weight[r] * h * h;
      }
    }
    return Math.max(0, Math.min(0.03, 0.5 * now + 0.5 * xy / xx));
  }

  /**
   * Pools all cells about their present states into a new curve with the same split place; a curve
   * without one (NaN), whose parts overlap everywhere, stays as it is.
   */
  CellCurve pooled(CellCurve curve, CellState[] states, double splitAh) {
    if (Double.isNaN(splitAh)) {
      return curve;
    }
    double[] range = range(view.chargeAh());
    double reach = 0.4 * (range[1] - range[0]);
    Bins bottoms = new Bins(range[0] - reach, range[1] + reach, stepAh);
    Bins tops = new Bins(splitAh - 2 * stepAh, range[1] + reach, stepAh);
    List<CellBins> own =
        IntStream.range(0, states.length)
            .parallel()
            .mapToObj(c -> own(c, states[c], curve, splitAh, new Bins(bottoms), new Bins(tops)))
            .toList();
    for (CellBins cell : own) {
      bottoms.addMeans(cell.bottom);
      tops.addMeans(cell.top);
    }
    // The knee must not be learned from one cell that is thought to be there by mistake.
    tops.dropBelow(Math.max(2, states.length / 4));
    if (!bottoms.filled()) {
      return curve;
    }
    EvenTable bottom = flatAbove(bottoms.table(), splitAh, slopeBeyond(curve, splitAh));
    EvenTable top = curve.top();
    if (curve.topVisited() && tops.filled()) {
      top = risingOnly(tops.table(), splitAh);
    }
    return new CellCurve(
        bottom,
        top,
        Math.min(curve.visitedFromAh(), bottoms.from()),
        Math.max(bottoms.from(), bottoms.fromOf(FEWEST_TEACHERS)),
        curve.topVisited() && tops.filled() ? tops.to() : curve.visitedToAh(),
        curve.topVisited(),
        curve.hysteresisV());
  }

  /** What one cell shows of both parts. */
  private record CellBins(Bins bottom, Bins top) {}

  private CellBins own(
      int c, CellState state, CellCurve curve, double splitAh, Bins bottom, Bins top) {
    for (int r = 0; r < view.rows(); r++) {
      double v = own(state, c, r, curve.hysteresisV());
      if (Double.isNaN(v)) {
        continue;
      }
      CellPlace place = place(state, c, r);
      if (place.topAh() <= splitAh) {
        bottom.add(place.bottomAh(), v, weight[r]);
      } else if (curve.topVisited()) {
        top.add(place.topAh(), v - curve.bottom().at(place.bottomAh()), weight[r]);
      }
    }
    return new CellBins(bottom, top);
  }

  /** A cell's voltage with everything taken off that is not its open-circuit curve, V. */
  private double own(CellState s, int c, int r, double hysteresisV) {
    return view.voltage(c, r)
        - s.offsetV()
        - (slowOhm + s.ohm()) * view.currentA()[r]
        - s.slowOhm() * view.slowCurrentA()[r]
        - hysteresisV * view.hysteresis()[r];
  }

  /**
   * One cell's own rest voltage along the charge axis, as it lay there at mid log, less what the
   * string has in common.
   */
  Learned own(CellState s, int c, double hysteresisV) {
    CellState unmoved = new CellState(0, 0, 0, 0, s.ohm(), s.slowOhm(), s.driftAh());
    double[] range = range(view.chargeAh());
    double reach = 0.1 * (range[1] - range[0]);
    Bins bins = new Bins(range[0] - reach, range[1] + reach, stepAh);
    for (int r = 0; r < view.rows(); r++) {
      if (common.known(r)) {
        double v = own(unmoved, c, r, hysteresisV) - common.volt(r);
        bins.add(place(unmoved, c, r).bottomAh(), v, weight[r]);
      }
    }
    return new Learned(bins.table(), bins.from(), bins.to(), hysteresisV);
  }

  /**
   * What follows from a cell's own curve.
   *
   * @param state how it resists and drifts; nothing else is held
   * @param driftAhPerDay the steady part of that, Ah a day
   * @param atEndSdAh how well it is known how far it has drifted from mid log to the end, Ah
   */
  record Steady(CellState state, CellReading.Figure driftAhPerDay, double atEndSdAh) {}

  /**
   * A cell of which nothing is held but how it resists and that it drifts steadily, by its own
   * curve: what its voltage differs by at one charge goes with the current, or, where the curve is
   * steep, with time. Curve, resistance and drift are told in turns.
   *
   * @param priors what cells differ by
   */
  Steady steady(int c, double hysteresisV, CellFit.Priors priors) {
    CellState cell = CellState.reference(grid.knots());
    double perDay = 0;
    double sd = 0;
    boolean stands = false;
    for (int turn = 0; turn < TURNS || (!stands && turn < MOST_TURNS); turn++) {
      Ridge.Solution more = more(cell, perDay, c, hysteresisV, priors);
      double[] by = more.value();
      perDay += by[2];
      sd = more.sd(2);
      stands = Math.abs(by[2]) < sd;
      cell = new CellState(0, 0, 0, 0, cell.ohm() + by[0], cell.slowOhm() + by[1], drift(perDay));
    }
    double sure = stands ? sd : priors.driftAhPerDay();
    return new Steady(cell, new CellReading.Figure(perDay, sure), sure * grid.spanDays() / 2);
  }

  /** A steady drift that is none at mid log, Ah at each knot. */
  private double[] drift(double ahPerDay) {
    return IntStream.range(0, grid.knots())
        .mapToDouble(k -> ahPerDay * (grid.dayOf(k) - grid.spanDays() / 2))
        .toArray();
  }

  /**
   * How much more than it is held to a cell resists, momentarily and slowly, ohm, and drifts, Ah a
   * day.
   */
  private Ridge.Solution more(
      CellState held, double perDay, int c, double hysteresisV, CellFit.Priors priors) {
    EvenTable own = own(held, c, hysteresisV).curve();
    double[] day = drift(1);
    Ridge sums = new Ridge(3);
    for (int r = 0; r < view.rows(); r++) {
      double place = place(held, c, r).bottomAh();
      double left = own(held, c, r, hysteresisV) - common.volt(r) - own.at(place);
      if (common.known(r) && !Double.isNaN(left)) {
        double slope = own.slopeAt(place);
        double sd = Math.hypot(SEEN_V, SEEN_BINS * stepAh * slope);
        double counts = Math.min(1, MOST_SDS * sd / Math.max(Double.MIN_NORMAL, Math.abs(left)));
        double[] by = {view.currentA()[r], view.slowCurrentA()[r], -slope * grid.at(day, r)};
        sums.observe(by, left, counts * weight[r] / ROWS_ALIKE / (sd * sd));
      }
    }
    sums.prior(0, -held.ohm(), priors.ohm());
    sums.prior(1, -held.slowOhm(), priors.ohm());
    sums.prior(2, -perDay, priors.driftAhPerDay());
    return sums.solve();
  }

  double slowOhm() {
    return slowOhm;
  }

  double bottomAnchorAh() {
    return bottomAnchorAh;
  }

  double topAnchorAh() {
    return topAnchorAh;
  }

  /** Where a cell in this state stands at a row. */
  CellPlace place(CellState s, int c, int r) {
    double q =
        view.chargeAh()[r]
            + common.axisErrorAh(r)
            - view.bledAh()[c][r]
            - s.shiftAh()
            - grid.at(s.driftAh(), r);
    double shrunk = 1 / (1 + s.stretch());
    return new CellPlace(
        bottomAnchorAh + (q - bottomAnchorAh) * shrunk,
        topAnchorAh + (q + s.lossAh() - topAnchorAh) * shrunk);
  }

  /** Rise of the curve shortly beyond a place, V/Ah; none is below zero. */
  private static double slopeBeyond(CellCurve curve, double place) {
    double reach = FLAT_STEPS * curve.bottom().step();
    double rise = curve.at(place + reach, place + reach) - curve.at(place, place);
    return Math.max(0, rise / reach);
  }

  /**
   * The graphite's part beyond the split: as flat as the curve is there on either side, or the rest
   * of a step below it would be carried on all the way up.
   */
  private static EvenTable flatAbove(EvenTable table, double splitAh, double slopeBeyond) {
    double[] values = table.values().clone();
    double level = table.at(splitAh);
    double reach = FLAT_STEPS * table.step();
    double below = Math.max(0, (level - table.at(splitAh - reach)) / reach);
    double slope = Math.min(below, slopeBeyond);
    for (int i = 0; i < values.length; i++) {
      double place = table.start() + i * table.step();
      if (place > splitAh) {
        values[i] = level + slope * (place - splitAh);
      }
    }
    return new EvenTable(table.start(), table.step(), values);
  }

  private static EvenTable risingOnly(EvenTable table, double splitAh) {
    double[] values = table.values().clone();
    double most = 0;
    for (int i = 0; i < values.length; i++) {
      if (table.start() + i * table.step() <= splitAh) {
        values[i] = 0;
      }
      most = Math.max(most, values[i]);
      values[i] = most;
    }
    return new EvenTable(table.start(), table.step(), values);
  }

  private static double[] range(double[] chargeAh) {
    double low = Arrays.stream(chargeAh).filter(q -> !Double.isNaN(q)).min().orElse(0);
    double high = Arrays.stream(chargeAh).filter(q -> !Double.isNaN(q)).max().orElse(1);
    return new double[] {low, high};
  }

  private static double sq(double x) {
    return x * x;
  }

  /**
   * What a first look shows.
   *
   * @param curve rest voltage along the axis
   */
  record Learned(EvenTable curve, double fromAh, double toAh, double hysteresisV) {}

  /** Weighted means in even bins; empty bins are bridged straight. */
  private static final class Bins {
    private static final double MOST_ROWS_OF_A_CELL = 8;

    private final double start;
    private final double step;
    private final double[] sum;
    private final double[] weight;
    private final int[] cells;

    Bins(Bins alike) {
      this(alike.start, alike.start + alike.step * (alike.sum.length - 1), alike.step);
    }

    Bins(double low, double high, double step) {
      this.start = low;
      this.step = step;
      int n = Math.max(3, (int) Math.ceil((high - low) / step) + 1);
      sum = new double[n];
      weight = new double[n];
      cells = new int[n];
    }

    /** Adds one cell's means, so that a cell that rests somewhere for hours counts as one cell. */
    void addMeans(Bins cell) {
      for (int i = 0; i < Math.min(sum.length, cell.sum.length); i++) {
        if (cell.has(i)) {
          double w = Math.min(MOST_ROWS_OF_A_CELL, cell.weight[i]);
          sum[i] += w * cell.sum[i] / cell.weight[i];
          weight[i] += w;
          cells[i]++;
        }
      }
    }

    void dropBelow(int fewestCells) {
      for (int i = 0; i < sum.length; i++) {
        if (cells[i] < fewestCells) {
          sum[i] = 0;
          weight[i] = 0;
        }
      }
    }

    void clear() {
      Arrays.fill(sum, 0);
      Arrays.fill(weight, 0);
    }

    void add(double place, double value, double w) {
      if (Double.isNaN(value) || Double.isNaN(place)) {
        return;
      }
      double bin = (place - start) / step + 0.5;
      int i = (int) bin;
      if (bin >= 0 && i < sum.length) {
        sum[i] += w * value;
        weight[i] += w;
      }
    }

    private boolean has(int i) {
      return weight[i] > 0.5;
    }

    boolean filled() {
      int n = 0;
      for (int i = 0; i < sum.length; i++) {
        n += has(i) ? 1 : 0;
      }
      return n >= 3;
    }

    double from() {
      int i = 0;
      while (i < sum.length - 1 && !has(i)) {
        i++;
      }
      return start + i * step;
    }

    /** Lowest place that at least so many cells taught. */
    double fromOf(int fewestCells) {
      int i = 0;
      while (i < sum.length - 1 && !(has(i) && cells[i] >= fewestCells)) {
        i++;
      }
      return start + i * step;
    }

    double to() {
      int i = sum.length - 1;
      while (i > 0 && !has(i)) {
        i--;
      }
      return start + i * step;
    }

    EvenTable table() {
      double[] values = new double[sum.length];
      int last = -1;
      for (int i = 0; i < values.length; i++) {
        if (has(i)) {
          values[i] = sum[i] / weight[i];
          for (int k = last + 1; k < i; k++) {
            values[k] =
                last < 0
                    ? values[i]
                    : values[last] + (values[i] - values[last]) * (k - last) / (i - last);
          }
          last = i;
        }
      }
      for (int k = last + 1; k < values.length; k++) {
        values[k] = last < 0 ? 0 : values[last];
      }
      return new EvenTable(start, step, values);
    }
  }
}
