package sagbook.estimate.capacity;

import java.util.Optional;
import java.util.OptionalInt;
import sagbook.evidence.ThinnedRecord;
import sagbook.model.Chemistry;
import sagbook.model.Estimate;
import sagbook.model.PackDescription;
import sagbook.wording.Words;

/**
 * Capacity of the string's median cell, which the curve laid over the published one tells.
 *
 * @param counted whether the current was logged
 * @param fast whether the string was worked too hard
 */
record MedianCapacity(ThinnedRecord record, PackDescription pack, boolean counted, boolean fast) {
  private static final Words WORDS = Words.english();

  /** Standard uncertainty of a current sensor's gain and of the anchor's shape, relative. */
  private static final double SCALE_SD = 0.005;

  /** An uncertainty of capacity beyond this is not worth a number. Common practice, no source. */
  static final double WIDEST_SD = 0.016;

  /**
   * Share of the charge below the lowest place seen by which the curve of another maker's cell
   * misjudges it: published half-cells laid over three measured LFP tables (LithiumWerks, Sony
   * after Naumann 2018, TU/e), of which 5 to 20 % were hidden at the empty end, missed the empty
   * end by a quarter to a half of what was hidden.
   */
  private static final double UNSEEN_BY_OTHERS = 0.3;

  /**
   * The same of a curve that passes for the cells' own by all that was seen of it. Common practice,
   * no source: half of it.
   */
  private static final double UNSEEN_BY_ALIKE = 0.15;

  /** The same for the cells' own table, which says where empty is. Common practice, no source. */
  private static final double UNSEEN_BY_TABLE = 0.05;

  /**
   * How much of either holds for what one cell alone showed: on 13 invented packs of a generator
   * that shares no code with this project it misplaced the others' empty end by 0.11 of itself
   * (root mean square; 0.22 at most), so half is enough.
   */
  private static final double ALONE = 0.5;

  /**
   * The same where the lithium that it lost is reckoned with ({@link SeenPart#lost()}): on 12
   * invented packs, of which a tenth of the charge was seen so, capacities erred by 0.08 of that
   * with all else that they err by (root mean square; 0.2 at most).
   */
  private static final double ALONE_BY_ELECTRODES = 0.075;

  /** The estimate by one pair of functions; unknown with a reason where the log can't tell. */
  Estimate of(Optional<CurveAnchor> anchor, CellCurve curve) {
    Optional<Estimate> untold = untold(anchor, curve.topVisited());
    if (untold.isPresent() || anchor.isEmpty()) {
      return untold.orElseThrow();
    }
    CurveAnchor a = anchor.get();
    double unseenShare = pack.openCircuit().isPresent() ? UNSEEN_BY_TABLE : UNSEEN_BY_OTHERS;
    double unseen = unseenShare * Math.max(0, curve.visitedFromAh() - a.emptyAh());
    // What one cell alone showed places the others' empty end little better than a published curve
    // would: it is the cell that differs.
    double alone = ALONE * unseenShare * Math.max(0, curve.sharedFromAh() - curve.visitedFromAh());
    return told(
        a.fullAh() - a.emptyAh(),
        Math.hypot(Math.hypot(a.fullSdAh(), a.emptySdAh()), unseen),
        a.misfitV(),
        alone);
  }

  /** The same by all published pairs, where the log can tell. */
  Estimate of(StringEnds ends, CellCurve curve) {
    double unseenShare = ends.holds() ? UNSEEN_BY_ALIKE : UNSEEN_BY_OTHERS;
    double below = unseenShare * Math.max(0, ends.usedFromAh() - ends.emptyAh());
    double above = unseenShare * Math.max(0, ends.fullAh() - curve.visitedToAh());
    return told(
        ends.fullAh() - ends.emptyAh(),
        Math.hypot(ends.sdAh(), Math.hypot(below, above)),
        ends.misfitV(),
        ALONE_BY_ELECTRODES * Math.max(0, curve.sharedFromAh() - ends.usedFromAh()));
  }

  private Estimate told(double capacity, double endsSd, double misfitV, double alone) {
    double misfit = Math.max(0, misfitV - 0.002) / 0.002 * 0.003;
    double sd = Math.sqrt(sq(endsSd) + sq(SCALE_SD * capacity) + sq(misfit * capacity));
    return sd < WIDEST_SD * capacity
        ? Estimate.of(capacity, Math.hypot(sd, alone))
        : notDeepEnough();
  }

  /** Why the log can't tell, if it can't whatever was seen of its lower end. */
  Optional<Estimate> untold(Optional<CurveAnchor> anchor, boolean topSeen) {
    if (!counted) {
      return Optional.of(Estimate.unknown(WORDS.say("unknown.no-current.capacity")));
    }
    if (fast) {
      return Optional.of(Estimate.unknown(WORDS.say("unknown.too-fast")));
    }
    if (pack.chemistry() != Chemistry.LFP && pack.openCircuit().isEmpty()) {
      // A measured NMC cell came out 4 % wrong by the published curve of another.
      return Optional.of(Estimate.unknown(WORDS.say("unknown.makes-differ")));
    }
    if (!topSeen || anchor.isEmpty()) {
      return Optional.of(Estimate.unknown(WORDS.say("unknown.never-full")));
    }
    return Optional.empty();
  }

  private Estimate notDeepEnough() {
    OptionalInt first = EmptyFirst.cell(record, pack.chemistry());
    return Estimate.unknown(
        first.isPresent()
            ? WORDS.say("unknown.empty-first", Integer.toString(first.getAsInt()))
            : WORDS.say("unknown.not-deep"));
  }

  private static double sq(double x) {
    return x * x;
  }
}
