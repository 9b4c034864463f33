package sagbook.estimate.capacity;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import sagbook.estimate.capacity.CellReading.Figure;
import sagbook.estimate.curve.ElectrodePair;
import sagbook.estimate.curve.HalfCells;
import sagbook.model.PackDescription;
import sagbook.numeric.EvenTable;
import sagbook.numeric.NonlinearFit;

/**
 * Tells a cell that lost capacity on a sloping curve. Its neighbours show the sum of both
 * electrodes, it shows them moved against each other, and which slope is whose makes the
 * difference. Positive electrodes differ from make to make; graphite is graphite, give or take its
 * steps. So each published graphite is tried, its place and size free about those of a usual cell,
 * the rest of the string's curve is the positive electrode's, and the graphite that the worn cell
 * itself fits best counts most:
 *
 * <p>{@code V = U(t) + N(t) - N(b) + o}, with U the string's curve, N the graphite, t and b the
 * places of the cell's positive electrode and graphite ({@link Slippage}).
 *
 * <p>Cyclable lithium and material of the graphite may be lost, and of the positive electrode
 * little, or, more seldom, all of the cell alike. Where the cell is full and empty follows from its
 * electrodes ({@link PositiveCurve}).
 */
final class WornCellFit {
  private static final int POINTS = 120;

  /** Noise of a voltage as the usual fit takes it, one standard deviation, V. */
  private static final double CURVE_V = 0.0012;

  /** Error of the charge axis as the usual fit takes it, as a share of capacity. */
  private static final double AXIS = 0.0006;

  /** Neighbouring points that err alike. Common practice, no source. */
  private static final double POINTS_ALIKE = 5;

  /** Residual, in standard deviations, beyond which it counts less (Huber). */
  private static final double MOST = 2.5;

  /** Share of a cell's points that an explanation must have in sight of the curve. */
  private static final double LEAST_SEEN = CellFit.LEAST_SEEN;

  /** An explanation that is so much less likely than the best says nothing. */
  private static final double LEAST_WEIGHT = 1e-3;

  /**
   * Share by which published functions may misjudge how much later a cell is full and empty than
   * its electrodes end, as on a flat curve. Common practice, no source.
   */
  private static final double ENDS_SHARE = 0.5;

  /**
   * What is held likely, one standard deviation each, in the order of the parameters: shift, loss,
   * size of the positive electrode and of the graphite, voltage error (V), place and size of the
   * usual graphite. Common practice, no source.
   */
  private static final double[] PRIOR_SD = {0.35, 0.2, 0.02, 0.15, 0.002, 0.05, 0.06};

  /** The same for the end of charge. */
  private static final double FULL_SD = 0.1;

  private static final double[] DIFFERENCE = {5e-4, 5e-4, 5e-4, 5e-4, 1e-5, 5e-4, 5e-4};
  private static final int SHIFT = 0;
  private static final int LOSS = 1;
  private static final int POSITIVE = 2;
  private static final int NEGATIVE = 3;
  private static final int OFFSET = 4;
  private static final int BEGIN = 5;
  private static final int SIZE = 6;

  /** A way in which cells wear. */
  private enum Wear {
    /** Lithium is lost, or graphite, and of the positive electrode little. */
    BY_LITHIUM_AND_GRAPHITE(0),
    /** All that the cell holds has become less, as if it were a smaller one: one such in ten. */
    AS_A_WHOLE(2 * Math.log(9));

    /** What it costs beyond a more usual one: twice the logarithm of how seldom it is. */
    private final double seldom;

    Wear(double seldom) {
      this.seldom = seldom;
    }

    /** Where the fit starts for a loss, and for a shrinking of the graphite beyond it. */
    private double[] start(double loss, double shrunk) {
      double whole = this == AS_A_WHOLE ? -loss : 0;
      return new double[] {loss, loss, whole, whole - shrunk, 0, 0, 0};
    }

    /** What is held of both sizes: the positive electrode's then is that of the graphite. */
    private double heldPositive(double[] y) {
      return this == AS_A_WHOLE ? y[POSITIVE] - y[NEGATIVE] : y[POSITIVE];
    }
  }

  /** Losses and shrinking of the graphite from which the fit starts. */
  private static final double[][] STARTS = {
    {0.06, 0}, {0.12, 0}, {0.2, 0}, {0.3, 0}, {0.12, 0.1}, {0.25, 0.1}
  };

  /** So many of them are followed to their end. */
  private static final int PROMISING = 2;

  private final EvenTable curve;
  private final double from;
  private final double to;
  private final double full;
  private final double nominalAh;
  private final PackDescription pack;

  /**
   * Fits cells of one string.
   *
   * @param curveAh the string's curve, V along its charge axis in Ah
   * @param fromAh lowest place that was seen
   * @param toAh highest place that was seen
   * @param fullAh about where it is full
   */
  WornCellFit(EvenTable curveAh, double fromAh, double toAh, double fullAh, PackDescription pack) {
    this.nominalAh = pack.nominalCapacityAh();
    this.curve = shares(curveAh);
    // The outermost bins hold a few rows only.
    this.from = fromAh / nominalAh + 2 * curve.step();
    this.to = toAh / nominalAh - 2 * curve.step();
    this.full = fullAh / nominalAh;
    this.pack = pack;
  }

  private EvenTable shares(EvenTable ah) {
    return new EvenTable(ah.start() / nominalAh, ah.step() / nominalAh, ah.values());
  }

  /**
   * One explanation that was tried.
   *
   * @param graphite the graphite, laid as usual
   * @param squares sum of what it leaves and what it asks for
   */
  private record Tried(LaidGraphite graphite, NonlinearFit fit, double squares, double misfit) {}

  /**
   * What a cell's own curve tells; empty where no explanation holds.
   *
   * @param ownAh its rest voltage along the charge axis in Ah
   */
  Optional<WornCell> of(EvenTable ownAh, double ownFromAh, double ownToAh) {
    Points points = Points.of(shares(ownAh), ownFromAh / nominalAh, ownToAh / nominalAh);
    List<Tried> tried =
        HalfCells.graphites().parallelStream()
            .map(graphite -> LaidGraphite.usual(graphite, full))
            .flatMap(
                usual ->
                    Arrays.stream(Wear.values())
                        .flatMap(wear -> best(points, usual, wear).stream()))
            .toList();
    double least = tried.stream().mapToDouble(Tried::squares).min().orElse(0);
    // Where even the best does not fit, the others are worse by less (Birge).
    double scale = Math.max(1, least / (POINTS / POINTS_ALIKE));
    List<WornCell> told = new ArrayList<>();
    List<Double> weights = new ArrayList<>();
    for (Tried one : tried) {
      double weight = Math.exp(-0.5 * (one.squares() - least) / scale);
      if (weight > LEAST_WEIGHT) {
        told(one)
            .ifPresent(
                cell -> {
                  told.add(cell);
                  weights.add(weight);
                });
      }
    }
    return told.isEmpty()
        ? Optional.empty()
        : Optional.of(
            WornCell.mean(told, weights.stream().mapToDouble(Double::doubleValue).toArray()));
  }

  /** The best of the most promising starts. */
  private Optional<Tried> best(Points points, LaidGraphite usual, Wear wear) {
    return Arrays.stream(STARTS)
        .map(start -> wear.start(start[0], start[1]))
        .sorted(Comparator.comparingDouble(y -> squares(residuals(y, points, usual, wear))))
        .limit(PROMISING)
        .flatMap(y -> tried(y, points, usual, wear).stream())
        .min(Comparator.comparingDouble(Tried::squares));
  }

  private Optional<Tried> tried(double[] start, Points points, LaidGraphite usual, Wear wear) {
    return NonlinearFit.of(y -> residuals(y, points, usual, wear), start, DIFFERENCE)
        .filter(fit -> seen(fit.value(), points) >= LEAST_SEEN * POINTS)
        .map(
            fit -> {
              double[] r = residuals(fit.value(), points, usual, wear);
              double ofPoints = squares(Arrays.copyOf(r, POINTS));
              double ofPriors = squares(r) - ofPoints;
              // A point out of sight counts as one in sight: else what sees least would fit best.
              double ofAll = ofPoints * POINTS / seen(fit.value(), points);
              double misfit = Math.sqrt(ofAll * POINTS_ALIKE / POINTS);
              return new Tried(usual, fit, ofAll + ofPriors + wear.seldom, Math.max(1, misfit));
            });
  }

  private static double squares(double[] r) {
    return Arrays.stream(r).map(v -> v * v).sum();
  }

  /** A cell's own curve at even places, and how far each is to be trusted. */
  private record Points(double[] place, double[] volt, double[] sd) {
    static Points of(EvenTable own, double from, double to) {
      double[] place = new double[POINTS];
      double[] volt = new double[POINTS];
      double[] sd = new double[POINTS];
      for (int i = 0; i < POINTS; i++) {
        place[i] = from + (to - from) * (i + 0.5) / POINTS;
        volt[i] = own.at(place[i]);
        sd[i] = Math.hypot(CURVE_V, AXIS * own.slopeAt(place[i]));
      }
      return new Points(place, volt, sd);
    }
  }

  private static Slippage slippage(double[] y) {
    return new Slippage(y[SHIFT], y[LOSS], y[POSITIVE], y[NEGATIVE], y[OFFSET]);
  }

  private boolean inSight(double top) {
    return top >= from && top <= to;
  }

  private int seen(double[] y, Points points) {
    Slippage s = slippage(y);
    return (int) Arrays.stream(points.place()).filter(q -> inSight(s.top(q, full))).count();
  }

  private double[] residuals(double[] y, Points points, LaidGraphite usual, Wear wear) {
    Slippage s = slippage(y);
    LaidGraphite graphite = usual.moved(y[BEGIN], y[SIZE]);
    double[] r = new double[POINTS + PRIOR_SD.length + 1];
    for (int i = 0; i < POINTS; i++) {
      double q = points.place()[i];
      double top = s.top(q, full);
      if (inSight(top)) {
        double v =
            curve.at(top) + graphite.volt(top) - graphite.volt(s.bottom(q, graphite)) + s.offsetV();
        r[i] = huber((v - points.volt()[i]) / points.sd()[i]) / Math.sqrt(POINTS_ALIKE);
      }
    }
    for (int k = 0; k < PRIOR_SD.length; k++) {
      r[POINTS + k] = y[k] / PRIOR_SD[k];
    }
    r[POINTS + POSITIVE] = wear.heldPositive(y) / PRIOR_SD[POSITIVE];
    r[POINTS + PRIOR_SD.length] = (y[SHIFT] - y[LOSS]) / FULL_SD;
    return r;
  }

  /** Whose square is twice Huber's loss. */
  private static double huber(double z) {
    double size = Math.abs(z);
    return size <= MOST ? z : Math.signum(z) * Math.sqrt(2 * MOST * size - MOST * MOST);
  }

  /** Full, empty and what lies between, with what is known of them. */
  private Optional<WornCell> told(Tried tried) {
    double[] y = tried.fit().value();
    LaidGraphite graphite = tried.graphite().moved(y[BEGIN], y[SIZE]);
    Optional<PositiveCurve> electrode =
        PositiveCurve.of(curve, from, to, graphite, ElectrodePair.of(pack), full);
    return electrode
        .flatMap(e -> slipped(y, tried, e))
        .map(ends -> cell(y, tried, electrode.get(), ends));
  }

  /** How much later a cell is full and empty than the usual one. */
  private Optional<Slippage.Ends> slipped(double[] y, Tried tried, PositiveCurve electrode) {
    PositiveCurve e = electrode.with(tried.graphite().moved(y[BEGIN], y[SIZE]));
    Optional<Slippage.Ends> usual = Slippage.NONE.ends(e, full, pack.limits());
    Optional<Slippage.Ends> own = slippage(y).ends(e, full, pack.limits());
    return usual.flatMap(
        u -> own.map(o -> new Slippage.Ends(o.full() - u.full(), o.empty() - u.empty())));
  }

  private WornCell cell(double[] y, Tried tried, PositiveCurve electrode, Slippage.Ends ends) {
    double[][] gradient = new double[3][y.length];
    for (int k = 0; k < y.length; k++) {
      double[] up = y.clone();
      double[] down = y.clone();
      up[k] += DIFFERENCE[k];
      down[k] -= DIFFERENCE[k];
      Slippage.Ends above = slipped(up, tried, electrode).orElse(ends);
      Slippage.Ends below = slipped(down, tried, electrode).orElse(ends);
      double step = 2 * DIFFERENCE[k];
      gradient[1][k] = (above.empty() - below.empty()) / step;
      gradient[2][k] = (above.full() - below.full()) / step;
      gradient[0][k] = gradient[1][k] - gradient[2][k];
    }
    double misfit = tried.misfit();
    double loss = ends.empty() - ends.full();
    // Were the cell full and empty where its electrodes end, it would be so that much later.
    double fullEnds = y[SHIFT] - y[LOSS];
    double emptyEnds =
        y[SHIFT] + y[NEGATIVE] * tried.graphite().of().emptyNegative() * tried.graphite().size();
    double fullSd = ENDS_SHARE * (fullEnds - ends.full());
    double emptySd = ENDS_SHARE * (emptyEnds - ends.empty());
    double[] offset = new double[y.length];
    offset[OFFSET] = 1;
    NonlinearFit fit = tried.fit();
    double endsSd = Math.hypot(emptySd, fullSd);
    return new WornCell(
        new Figure(loss, Math.hypot(misfit * fit.sd(gradient[0]), endsSd)),
        new Figure(ends.empty(), Math.hypot(misfit * fit.sd(gradient[1]), emptySd)),
        new Figure(ends.full(), Math.hypot(misfit * fit.sd(gradient[2]), fullSd)),
        new Figure(y[OFFSET], misfit * fit.sd(offset)),
        misfit);
  }
}
