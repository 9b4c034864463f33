package sagbook.estimate.capacity;

import java.util.ArrayList;
import java.util.List;

/**
 * What may be the matter with a cell that stands out: ways of fitting it, each from where it is
 * tried.
 *
 * <p>Along a good charge axis a cell is fitted with all its parts free, from many starts. One that
 * was made up from the voltages of a flat curve is stretched and squeezed by more than wear would
 * do; there a cell is misread, displaced as a whole, or worn and level with its neighbours at full,
 * but not a little of each: that would take up what the axis does.
 */
final class Explanations {
  private static final double[] LOSSES = {0.08, 0.16, 0.24, 0.32};
  private static final double[] DRAINS = {0.1, 0.3, 0.9};
  private static final double[] DISPLACED = {0.05, 0.1, 0.2};

  /** Voltage error beyond what boards have, in standard deviations. Common practice, no source. */
  private static final double MOST_OFFSET_SDS = 20;

  /**
   * The same along a warped axis for a cell that stands elsewhere, V: there the two make up for
   * what the axis does. Common practice, no source.
   */
  private static final double WARPED_MOST_OFFSET_V = 0.02;

  /**
   * How far a state may stray from what its explanation holds to be nothing, as a share of
   * capacity: three standard deviations of a sound cell's size. Common practice, no source.
   */
  private static final double MOST_STRAYED = 3 * CellFit.NO_LOSS_SHARE;

  /** How far elsewhere that is, as a share of capacity. */
  private static final double WARPED_APART = 0.03;

  /**
   * A cell that rises up its knee by less than half of what the median cell does stays behind: how
   * far above it that is, as a share of that rise. Common practice, no source.
   */
  static final double STAYED_BEHIND = -0.5;

  private final double usualOffsetV;
  private final CellFit usual;
  private final CellFit worn;
  private final CellFit displaced;
  private final CellFit level;
  private final CellFit misread;
  private final boolean warped;
  private final int knots;
  private final double nominalAh;

  /** One of them. */
  record Explanation(CellFit fit, CellState start) {}

  /**
   * Explanations for the cells of a string.
   *
   * @param warped whether the charge axis was made up from the voltages of a flat curve
   */
  Explanations(
      StringView view,
      TimeGrid grid,
      CurveLearner learner,
      CellFit.Priors priors,
      double nominalAh,
      boolean warped) {
    this.usual = new CellFit(view, grid, learner, priors, false);
    this.worn = new CellFit(view, grid, learner, priors, true);
    this.displaced = new CellFit(view, grid, learner, priors.displaced(nominalAh), false);
    this.level = new CellFit(view, grid, learner, priors.level(nominalAh), false);
    this.misread = new CellFit(view, grid, learner, priors.misread(nominalAh), false);
    this.warped = warped;
    this.usualOffsetV = priors.offsetV();
    this.knots = grid.knots();
    this.nominalAh = nominalAh;
  }

  /** Furthest a cell's voltage is taken to be off when its place is first looked for, V. */
  double mostOffsetAtFirstV() {
    return 2 * usualOffsetV;
  }

  /**
   * Whether a cell fits only with a voltage error that no board has, or, along a warped axis, with
   * a large one and far from its neighbours at once, though its reading is not what was held to be
   * wrong: then something else is.
   */
  boolean strained(CellFit fit, CellState state) {
    return fit != misread
        && (Math.abs(state.offsetV()) > MOST_OFFSET_SDS * usualOffsetV || excluded(fit, state));
  }

  /** Whether a state is none to be weighed along a warped axis: far away and far off at once. */
  boolean excluded(CellFit fit, CellState state) {
    double furthestAh = Math.max(Math.abs(state.shiftAh()), Math.abs(state.lossAh()));
    return warped
        && fit != misread
        && furthestAh > WARPED_APART * nominalAh
        && Math.abs(state.offsetV()) > WARPED_MOST_OFFSET_V;
  }

  /**
   * Whether a state has left what its explanation says: one that is misread and nothing else stands
   * with its neighbours, one that is displaced holds what they hold, one that lost capacity and is
   * level is as full as they when they are. What has strayed is a little of each, which takes up
   * what a warped axis does.
   */
  boolean strayed(CellFit fit, CellState state) {
    double size = state.lossAh();
    double top = state.shiftAh() - state.lossAh();
    double off =
        fit == misread
            ? Math.max(Math.abs(size), Math.abs(top))
            : fit == displaced ? Math.abs(size) : fit == level ? Math.abs(top) : 0;
    return warped && off > MOST_STRAYED * nominalAh;
  }

  /**
   * Whether an explanation can't be: one that says that a cell is as full as its neighbours when
   * they are, of one that was seen to stay behind then. Neither a misread voltage nor wear alone
   * keeps it there. A string that was nowhere plainly seen full bars none.
   *
   * @param besideMedian how far above the median cell it stands then, as a share of what that rises
   *     on its knee; NaN where that was not seen
   */
  boolean barred(CellFit fit, double besideMedian) {
    return warped && (fit == misread || fit == level) && besideMedian <= STAYED_BEHIND;
  }

  /** How a cell is fitted that does not stand out. */
  CellFit usual() {
    return usual;
  }

  /** How one is whose reading is held to be wrong, and nothing else. */
  CellFit misread() {
    return misread;
  }

  /** All that are tried on a cell that a search found to stand out so. */
  List<Explanation> of(CellState found) {
    List<Explanation> all = new ArrayList<>();
    if (warped) {
      alongWarpedAxis(found, all);
    } else {
      alongGoodAxis(found, all);
    }
    return all;
  }

  /**
   * Out of balance, worn at the top, off in voltage, as the search found it, worn at the top or as
   * a whole, or drained; last, misread and nothing else.
   */
  private void alongGoodAxis(CellState found, List<Explanation> all) {
    double offsetV = found.offsetV();
    all.add(new Explanation(usual, CellState.at(found.shiftAh(), 0, offsetV, knots)));
    all.add(new Explanation(usual, CellState.at(found.shiftAh(), found.shiftAh(), offsetV, knots)));
    all.add(new Explanation(usual, CellState.at(0, 0, offsetV, knots)));
    all.add(new Explanation(usual, found));
    for (double share : LOSSES) {
      double loss = share * nominalAh;
      all.add(new Explanation(usual, CellState.at(loss, loss, offsetV, knots)));
      all.add(
          new Explanation(
              worn, new CellState(loss, loss, -share, offsetV, 0, 0, new double[knots])));
    }
    for (double share : DRAINS) {
      all.add(new Explanation(usual, drained(share * nominalAh, offsetV)));
    }
    all.add(misread(offsetV));
  }

  private Explanation misread(double offsetV) {
    return new Explanation(misread, CellState.at(0, 0, offsetV, knots));
  }

  /** Misread, out of balance, worn at the top, or drained, and nothing else. */
  private void alongWarpedAxis(CellState found, List<Explanation> all) {
    all.add(misread(found.offsetV()));
    all.add(new Explanation(displaced, CellState.at(found.shiftAh(), 0, 0, knots)));
    all.add(new Explanation(level, CellState.at(found.shiftAh(), found.shiftAh(), 0, knots)));
    for (double share : DISPLACED) {
      all.add(new Explanation(displaced, CellState.at(share * nominalAh, 0, 0, knots)));
    }
    for (double share : LOSSES) {
      double loss = share * nominalAh;
      all.add(new Explanation(level, CellState.at(loss, loss, 0, knots)));
    }
    for (double share : DRAINS) {
      all.add(new Explanation(displaced, drained(share * nominalAh, 0)));
    }
  }

  /** A cell that loses so much evenly over the log. */
  private CellState drained(double ah, double offsetV) {
    double[] drift = new double[knots];
    for (int k = 0; k < knots; k++) {
      drift[k] = ah * (k / (knots - 1.0) - 0.5);
    }
    return new CellState(ah / 2, 0, 0, offsetV, 0, 0, drift);
  }
}
