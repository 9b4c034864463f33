package sagbook.estimate.capacity;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.function.IntConsumer;
import java.util.function.IntPredicate;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import sagbook.numeric.Ridge;
import sagbook.numeric.Robust;

/**
 * Fits all cells of a string and its curve in turns: cells against the curve, then the curve from
 * the cells, until both stand.
 */
final class StringFit {
  private static final int MOST_ROUNDS = 12;

  /** Once no cell moves more than this share of capacity in a round, more rounds tell nothing. */
  private static final double STANDS = 0.0002;

  /** After these, cells go half the way, since cells and curve may chase each other. */
  private static final int FREE_ROUNDS = 2;

  /** An explanation has to leave this much less than a simpler one to be preferred. */
  private static final double CLEARLY = 0.8;

  /** A cell that moves less than this share of capacity in one step has settled. */
  private static final double SETTLED = 0.001;

  /** An explanation that has not settled by then is not one. */
  private static final int MOST_PASSES = 15;

  /**
   * Share of the log for which a cell has to stay near full to be told by it: a quarter of an hour
   * a day. Common practice, no source.
   */
  private static final double STAYED_SHARE = 0.01;

  /** The least of it, rows. */
  private static final double STAYED_ROWS = 15;

  /** More is not asked of a short log. */
  private static final double MOST_STAYED_SHARE = 0.1;

  /** Rise of the knee at the end of charge that can't be missed, V. */
  private static final double KNEE_SEEN_V = 0.008;

  /** Rise of the median cell there that is plain to see, V. */
  private static final double KNEE_CLIMBED_V = 0.024;

  private final StringView view;
  private final TimeGrid grid;
  private final CurveLearner learner;

  /** How each cell is fitted. */
  private final CellFit[] fits;

  private final Explanations explanations;
  private final double nominalAh;
  private final double splitAh;
  private CellCurve curve;
  private final CellState[] states;
  private final CommonPart common;

  /**
   * Explanations of each cell that fit better than the one that was taken, but not clearly so, or
   * were passed over though they do: for having strayed or for what was seen at full.
   */
  private final List<List<Rival>> rivals;

  /** Where each cell came nearest to full and stayed for some rows, Ah. */
  private final double[] nearestToFullAh;

  StringFit(
      StringView view,
      TimeGrid grid,
      CurveLearner learner,
      CommonPart common,
      Explanations explanations,
      CellCurve curve,
      double splitAh,
      double nominalAh) {
    this.view = view;
    this.grid = grid;
    this.learner = learner;
    this.explanations = explanations;
    this.fits = new CellFit[view.cells()];
    Arrays.fill(fits, explanations.usual());
    this.curve = curve;
    this.splitAh = splitAh;
    this.nominalAh = nominalAh;
    this.states = new CellState[view.cells()];
    this.nearestToFullAh = new double[view.cells()];
    this.rivals = new ArrayList<>(Collections.nCopies(view.cells(), List.of()));
    this.common = common;
  }

  CellCurve curve() {
    return curve;
  }

  /** How much of the curve was gone through, Ah. */
  double seenAh() {
    return curve.visitedToAh() - curve.visitedFromAh();
  }

  /** Median slope of the curve where it was gone through, V/Ah. */
  double usualSlope() {
    double step = curve.bottom().step();
    int n = (int) Math.max(1, seenAh() / step);
    double[] slopes = new double[n];
    for (int i = 0; i < n; i++) {
      double q = curve.visitedFromAh() + (i + 0.5) * step;
      slopes[i] = curve.top().slopeAt(q) + curve.bottom().slopeAt(q);
    }
    return Math.abs(Robust.median(slopes));
  }

  CellState[] states() {
    return states;
  }

  void run() {
    new StartSearch(view, curve, nominalAh, grid.knots(), explanations.mostOffsetAtFirstV())
        .fill(states);
    updateCommon();
    double[] beside = besideMedian(c -> true);
    eachCell(c -> states[c] = bestStart(c, beside[c]));
    boolean stands = false;
    for (int round = 0; round < MOST_ROUNDS && !stands; round++) {
      updateCommon();
      boolean free = round < FREE_ROUNDS;
      CellState[] before = states.clone();
      eachCell(
          c -> {
            CellState settled = settled(fits[c], states[c], c);
            states[c] = free ? settled : settled.halfwayFrom(states[c]);
          });
      recentre();
      stands = furthestMovedAh(before) < STANDS * nominalAh;
      if (!stands && round < MOST_ROUNDS - 1) {
        curve = learner.pooled(curve, states, splitAh);
      }
    }
    updateCommon();
    eachCell(c -> nearestToFullAh[c] = nearestToFullAh(c));
  }

  private double furthestMovedAh(CellState[] before) {
    return IntStream.range(0, states.length)
        .mapToDouble(c -> states[c].movedAh(before[c]))
        .max()
        .orElse(0);
  }

  /** Cells are fitted side by side: each looks at the curve and at what all have in common only. */
  private void eachCell(IntConsumer task) {
    IntStream.range(0, states.length).parallel().forEach(task);
  }

  private CellState step(CellFit fit, CellState from, int c) {
    Ridge sums = new Ridge(fit.parameters());
    fit.observe(curve, from, c, common, 0, view.rows(), sums);
    fit.observePriors(from, sums);
    return fit.stepped(from, sums.solve(), 0.02 * nominalAh);
  }

  /**
   * Of several explanations of a cell that stands out, tried in earnest, the one that leaves least;
   * the simpler one where they leave the same, and first those that kept to what they say.
   *
   * @param besideMedian how far above the median cell it stands when most are full, NaN where that
   *     was not seen
   */
  private CellState bestStart(int c, double besideMedian) {
    CellState found = states[c];
    double far = 0.015 * nominalAh;
    rivals.set(c, List.of());
    boolean usual =
        Math.abs(found.shiftAh()) < far
            && Math.abs(found.lossAh()) < far
            && Math.abs(found.offsetV()) < 0.007;
    if (usual) {
      return found;
    }
    List<Tried> all =
        explanations.of(found).parallelStream()
            .map(one -> tried(one, c))
            .filter(tried -> !explanations.excluded(tried.fit, tried.state))
            .toList();
    List<Tried> likely =
        anyOf(all, tried -> !explanations.barred(tried.fit, besideMedian)).stream()
            .sorted(Comparator.comparing(t -> explanations.strayed(t.fit, t.state)))
            .toList();
    CellState best = found;
    double least = Double.POSITIVE_INFINITY;
    for (Tried tried : likely) {
      if (tried.cost < CLEARLY * least) {
        least = tried.cost;
        fits[c] = tried.fit;
        best = tried.state;
      }
    }
    List<Rival> others =
        all.stream()
            .filter(tried -> !explanations.strained(tried.fit, tried.state))
            .map(tried -> new Rival(tried.cost, tried.state))
            .toList();
    rivals.set(c, Rival.betterThan(least, others));
    return best;
  }

  private Tried tried(Explanations.Explanation one, int c) {
    CellState settled = settled(one.fit(), one.start(), c);
    return new Tried(one.fit(), settled, one.fit().cost(curve, settled, c, common));
  }

  /**
   * An explanation that was tried.
   *
   * @param fit how the cell was fitted
   * @param state that it settled in
   * @param cost what it leaves
   */
  private record Tried(CellFit fit, CellState state, double cost) {}

  /** Those of some explanations that are so, or all where none is. */
  private static List<Tried> anyOf(List<Tried> all, Predicate<Tried> so) {
    List<Tried> some = all.stream().filter(so).toList();
    return some.isEmpty() ? all : some;
  }

  private CellState settled(CellFit fit, CellState start, int c) {
    CellState s = start;
    for (int pass = 0; pass < MOST_PASSES; pass++) {
      CellState before = s;
      s = step(fit, s, c);
      if (s.movedAh(before) < SETTLED * nominalAh) {
        break;
      }
    }
    return s;
  }

  private void updateCommon() {
    IntStream.range(0, view.rows())
        .parallel()
        .forEach(
            r -> {
              CommonPart.Row row = common.row(r);
              for (int c = 0; c < states.length; c++) {
                CellPlace place = fits[c].place(states[c], c, r);
                if (fits[c].inSight(curve, place, c, r)) {
                  row.gather(
                      view.voltage(c, r) - fits[c].predicted(curve, states[c], place, r),
                      fits[c].slope(curve, place));
                }
              }
              row.settle();
            });
    common.share();
  }

  /** Keeps the reference cell in the middle of the string. */
  private void recentre() {
    double shift = middle(CellState::shiftAh);
    double loss = middle(CellState::lossAh);
    double offset = middle(CellState::offsetV);
    double ohm = middle(CellState::ohm);
    double slow = middle(CellState::slowOhm);
    double stretch = middle(CellState::stretch);
    int n = grid.knots();
    double[] drift = new double[n];
    for (int k = 0; k < n; k++) {
      int knot = k;
      drift[k] = middle(s -> s.driftAh()[knot]);
    }
    for (int c = 0; c < states.length; c++) {
      CellState s = states[c];
      double[] own = s.driftAh().clone();
      for (int k = 0; k < n; k++) {
        own[k] -= drift[k];
      }
      states[c] =
          new CellState(
              s.shiftAh() - shift,
              s.lossAh() - loss,
              s.stretch() - stretch,
              s.offsetV() - offset,
              s.ohm() - ohm,
              s.slowOhm() - slow,
              own);
    }
  }

  private double middle(ToDoubleFunction<CellState> of) {
    return Robust.median(Arrays.stream(states).mapToDouble(of).toArray());
  }

  /**
   * Sums of one cell's observations in equal stretches of the log, about its present state, for the
   * uncertainty.
   */
  Ridge[] stretches(int c, int count) {
    Ridge[] sums = new Ridge[count];
    for (int k = 0; k < count; k++) {
      sums[k] = new Ridge(fits[c].parameters());
      int from = (int) ((long) view.rows() * k / count);
      int to = (int) ((long) view.rows() * (k + 1) / count);
      fits[c].observe(curve, states[c], c, common, from, to, sums[k]);
    }
    return sums;
  }

  /**
   * Slope of the positive electrode's part where the cell came nearest to full (and stayed for some
   * rows), V/Ah: what its end of charge can be told by.
   */
  double topSlopeReached(int c) {
    double nearest = nearestToFullAh[c];
    double steepest = 0;
    // The table ends flat, so the steepest place shortly before counts.
    for (int k = 0; k <= 8 && !Double.isNaN(nearest); k++) {
      steepest = Math.max(steepest, curve.top().slopeAt(nearest - k * curve.top().step()));
    }
    return steepest;
  }

  /**
   * Charge between where the cell came nearest to full and where it would have been seen on the
   * knee, Ah; infinite when it was seen there or the string never was.
   */
  double roomBelowKneeAh(int c) {
    double nearest = nearestToFullAh[c];
    if (!curve.topVisited() || !(curve.top().at(nearest) < KNEE_SEEN_V)) {
      return Double.POSITIVE_INFINITY;
    }
    double knee = nearest;
    while (knee < curve.visitedToAh() && curve.top().at(knee) < KNEE_SEEN_V) {
      knee += curve.top().step();
    }
    return knee - nearest;
  }

  private double nearestToFullAh(int c) {
    double[] place = new double[view.rows()];
    for (int r = 0; r < place.length; r++) {
      CellPlace at = fits[c].place(states[c], c, r);
      place[r] = fits[c].inSight(curve, at, c, r) ? at.topAh() : Double.NaN;
    }
    double[] places = ofEveryRow(place);
    double share = Math.max(STAYED_SHARE, STAYED_ROWS / places.length);
    return Robust.quantile(places, 1 - Math.min(MOST_STAYED_SHARE, share));
  }

  /** The same value for each of the record's rows that were taken together. */
  private double[] ofEveryRow(double[] value) {
    double[] every = new double[Arrays.stream(view.rowsOf()).sum()];
    int n = 0;
    for (int r = 0; r < value.length; r++) {
      int rows = view.rowsOf()[r];
      Arrays.fill(every, n, n + rows, value[r]);
      n += rows;
    }
    return every;
  }

  /**
   * How much worse the curve fits each cell than a reading is held to be noisy, as a ratio of
   * residuals, 1 for those it fits as well or better: where the model does not hold for a cell or
   * for the string, formal standard deviations are too small by about that (Birge, Phys. Rev. 40
   * (1932) 207).
   */
  double[] misfits() {
    double[] misfit = new double[states.length];
    for (int c = 0; c < misfit.length; c++) {
      double cost = fits[c].cost(curve, states[c], c, common);
      misfit[c] = Math.sqrt(Math.max(1, cost / fits[c].costOfNoise()));
    }
    return misfit;
  }

  /** Whether a cell fits only by an explanation that is none. */
  boolean strained(int c) {
    return explanations.strained(fits[c], states[c]);
  }

  /**
   * Whether each cell goes along when most are driven up the knee: by half of what the median cell
   * rises there at least. One that stays behind lies somewhere below its knee, and where that is
   * the flat part does not tell. None is known to go along where the knee is nowhere plain to see.
   */
  boolean[] climbs() {
    double[] beside = besideMedian(this::misread);
    boolean[] climbs = new boolean[beside.length];
    for (int c = 0; c < climbs.length; c++) {
      climbs[c] = beside[c] > Explanations.STAYED_BEHIND;
    }
    return climbs;
  }

  /**
   * Whether a cell of LFP stood on the knee by its own voltage, its resistance and its voltage
   * error taken off, wherever the curve of the others ends.
   */
  boolean stoodOnKnee(int c) {
    CellState s = states[c];
    double rows = 0;
    double onKnee = 0;
    for (int r = 0; r < view.rows(); r++) {
      CellPlace at = fits[c].place(s, c, r);
      double restV =
          view.voltage(c, r)
              - fits[c].predicted(curve, s, at, r)
              + curve.at(at.topAh(), at.bottomAh());
      rows += view.rowsOf()[r];
      onKnee += restV > CurveSplit.ON_KNEE_V ? view.rowsOf()[r] : 0;
    }
    return onKnee > Math.max(STAYED_SHARE * rows, STAYED_ROWS);
  }

  /**
   * How far above the median cell each cell stands when most are driven up the knee, as a share of
   * what the median cell rises there; NaN where that is nowhere plain to see.
   *
   * @param offset which cells' voltages to take for off by what they were found to be
   */
  private double[] besideMedian(IntPredicate offset) {
    int cells = view.cells();
    double[][] share = new double[cells][view.rows()];
    double[] one = new double[cells];
    for (int r = 0; r < view.rows(); r++) {
      double rise = curve.top().at(view.chargeAh()[r] + common.axisErrorAh(r));
      boolean plain = rise > KNEE_CLIMBED_V;
      for (int c = 0; c < cells; c++) {
        one[c] = view.voltage(c, r) - (offset.test(c) ? states[c].offsetV() : 0);
      }
      double middle = plain ? Robust.median(one) : Double.NaN;
      for (int c = 0; c < cells; c++) {
        share[c][r] = (one[c] - middle) / rise;
      }
    }
    return Arrays.stream(share).mapToDouble(own -> Robust.median(ofEveryRow(own))).toArray();
  }

  /** The cell that was furthest behind at any time, bled or not, from 0. */
  int furthestBehind() {
    return IntStream.range(0, states.length)
        .boxed()
        .max(Comparator.comparingDouble(this::furthestBehindAh))
        .orElse(0);
  }

  /** How far behind a cell was where it was furthest, Ah. */
  private double furthestBehindAh(int c) {
    float[] bledAh = view.bledAh()[c];
    return states[c].shiftAh()
        + IntStream.range(0, view.rows())
            .mapToDouble(r -> bledAh[r] + grid.at(states[c].driftAh(), r))
            .max()
            .orElse(0);
  }

  /**
   * Whether a cell is explained by where it stands. Another explanation that fits nearly as well
   * puts its loss some per cent elsewhere, which hardly moves what its neighbours hold.
   */
  boolean plain(int c) {
    return !strained(c) && !misread(c);
  }

  /**
   * Explanations of a cell that fit better than the one that was taken, but not clearly so, or that
   * were passed over: ranges have to hold them all.
   */
  List<Rival> rivals(int c) {
    return rivals.get(c);
  }

  /** Whether a cell's reading is held to be wrong, and nothing else. */
  boolean misread(int c) {
    return fits[c] == explanations.misread();
  }

  CellFit fit(int c) {
    return fits[c];
  }
}
