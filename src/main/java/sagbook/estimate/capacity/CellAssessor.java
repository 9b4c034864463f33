package sagbook.estimate.capacity;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import sagbook.model.Estimate;
import sagbook.model.PackDescription;
import sagbook.numeric.BoundedNormal;
import sagbook.numeric.Robust;
import sagbook.wording.Words;

/**
 * Turns what was read off the fitted cells into estimates. What no fit shows widens them here: how
 * cells wear, how far a made-up charge axis can be trusted, what polarisation does near full.
 *
 * <p>Shares and voltages were set on invented packs of a generator that shares no code with this
 * project, unless they say otherwise.
 */
final class CellAssessor {
  private static final Words WORDS = Words.english();

  /**
   * An offset that is known less well, as a share of capacity, one standard deviation, is not told.
   */
  private static final double WIDEST_OFFSET_SD = 0.03;

  /**
   * How well the place is known from which a cell would have been seen on the knee, share of
   * capacity, one standard deviation. Common practice, no source.
   */
  private static final double KNEE_PLACE_SD = 0.005;

  /** How well a cell's place is known at best, share of capacity. Common practice, no source. */
  private static final double PLACE_SD = 0.001;

  /** Share of capacity by which a charge axis made up from voltages misplaces a cell. */
  private static final double MADE_UP_AXIS_SD = 0.011;

  /**
   * The same of a flat curve that the string's own voltages chose. On 50 invented packs the sizes
   * of 527 cells that had not lost capacity came out 0.3 % wrong, root mean square, and 2.0 % at
   * most.
   */
  private static final double WARPED_AXIS_SD = 0.007;

  /** Share by which it misjudges what a cell lost. */
  private static final double MADE_UP_LOSS_SHARE = 0.3;

  /** The same at the upper end of the interval where the axis is warped. */
  private static final double WARPED_LOSS_SHARE = 0.2;

  /**
   * Spread of the sizes beyond which a made-up axis and not the cells are to blame, as a multiple
   * of what healthy cells differ by. Common practice, no source.
   */
  private static final double MOST_SPREAD = 3;

  /**
   * By how much more a cell may have lost, as a share of what it seems to, at the lower end of its
   * interval: a made-up axis is squeezed rather than stretched where a worn cell alone nears empty,
   * so that the loss comes out too small. Of seven worn cells of three batches that were told
   * without current the truth was at most 2.1 times what was read.
   */
  private static final double SQUEEZED_LOSS_SHARE = 1.5;

  /**
   * What it does to a voltage error, V: on a flat curve to that of a cell that stands elsewhere,
   * and little to the others'.
   */
  private static final double MADE_UP_AXIS_V = 0.005;

  private static final double MADE_UP_AXIS_FLAT_SHARE = 0.2;

  /** What an error of a counted axis does to it, V. */
  private static final double COUNTED_AXIS_V = 2e-4;

  /** A voltage error that is known no better than this is not known, V. */
  private static final double WIDEST_VOLTAGE_SD = 0.03;

  /** Voltage that no part of the model explains, one standard deviation, V. */
  private static final double UNEXPLAINED_V = 0.0015;

  /** The same for a cell that stands elsewhere near full and so is polarised otherwise, V. */
  private static final double UNEXPLAINED_APART_V = 0.0065;

  /** How far from the others that is, as a share of capacity. */
  private static final double APART = 0.03;

  /** Share of what was lost within which that is worth a number. Common practice, no source. */
  private static final double WORTH_TELLING = 0.25;

  /**
   * Share of capacity that must have been gone through for the steps to be told from each other.
   */
  static final double WELL_SEEN = 0.6;

  /** A curve that leaves so many times the noise of a reading does not fit. Common practice. */
  private static final double MOST_MISFIT = 4;

  /** The same along a made-up axis, along which a cell that stands elsewhere fits worse anyhow. */
  private static final double MOST_MISFIT_MADE_UP = 3;

  /** Share by which a made-up axis misjudges an imbalance. */
  private static final double MADE_UP_OFFSET_SHARE = 0.15;

  /** The same where little of the curve was gone through. */
  private static final double MADE_UP_OFFSET_SHARE_SHALLOW = 0.3;

  /**
   * How far cells of one string stand apart where nothing shows it, as a share of capacity; on the
   * flat part that looks like a voltage. Common practice, no source.
   */
  private static final double UNLEVEL = 0.03;

  /** An imbalance beyond this share of capacity, seen by steps alone, is more likely a bad fit. */
  private static final double FURTHEST_APART = 0.12;

  /** Share by which a cell may be larger or smaller as made. Twice what they differ by. */
  private static final double MADE_ALIKE = 2 * 0.008;

  private final StringFit fit;
  private final CellReading[] readings;
  private final List<UnloggedBleeding> bleeding;
  private final Estimate median;
  private final CurveTraits traits;
  private final double nominalAh;
  private final double spanAh;
  private final double days;
  private final boolean counted;
  private final boolean fast;
  private final boolean topSeen;
  private final boolean[] climbs;

  /** Whether the keeper gave the curve of the cells, so that their voltages chose none. */
  private final boolean ownTable;

  private final Optional<ExcessLoss> excess;

  /**
   * An assessor of one bank.
   *
   * @param readings one a cell
   * @param bleeding what each board may have bled, one a cell
   * @param median capacity of the median cell
   * @param days length of the log, days
   * @param counted whether the current was logged
   * @param fast whether the string was worked too hard
   */
  CellAssessor(
      StringFit fit,
      CellReading[] readings,
      List<UnloggedBleeding> bleeding,
      Estimate median,
      PackDescription pack,
      double days,
      boolean counted,
      boolean fast) {
    this.fit = fit;
    this.readings = readings;
    this.bleeding = bleeding;
    this.median = median;
    this.traits = CurveTraits.of(pack.chemistry());
    this.nominalAh = pack.nominalCapacityAh();
    this.spanAh = median.find().orElse(nominalAh);
    this.days = days;
    this.counted = counted;
    this.fast = fast;
    this.topSeen = fit.curve().topVisited();
    this.climbs = fit.climbs();
    this.ownTable = pack.openCircuit().isPresent();
    this.excess =
        traits.flat() && !ownTable
            ? Optional.of(
                ExcessLoss.of(fit.curve(), spanAh, counted, pack.limits().cellEmptyVoltage()))
            : Optional.empty();
  }

  /** Every cell's estimates, cell 1 first; unknown with a reason where the log can't tell. */
  List<CellCharge> cells() {
    double medianTop = middle(CellReading::topAtEndAh);
    double medianDrift = middle(CellReading::driftAhPerDay);
    double medianOffset = middle(CellReading::offsetV);
    double medianLoss = middle(CellReading::lossAh);
    List<CellCharge> all = new ArrayList<>();
    boolean onOneCurve = onOneCurve();
    for (int c = 0; c < readings.length; c++) {
      CellReading reading = readings[c];
      if (!onOneCurve) {
        Estimate apart = Estimate.unknown(WORDS.say("unknown.no-current.apart"));
        all.add(new CellCharge(apart, apart, apart, selfDischarge(c, medianDrift), apart));
        continue;
      }
      boolean misfit = reading.misfit() > (counted ? MOST_MISFIT : MOST_MISFIT_MADE_UP);
      // A voltage error keeps no cell below its knee.
      boolean misreadBehind = fit.misread(c) && staysBehind(c);
      boolean strained = !reading.worn() && fit.strained(c);
      if (strained || misfit || misreadBehind) {
        Estimate unlike = Estimate.unknown(WORDS.say("unknown.unlike"));
        Estimate drain = selfDischarge(c, medianDrift);
        all.add(new CellCharge(unlike, unlike, unlike, drain, unlike));
        continue;
      }
      CellReading.Figure excessAh = excessAh(c);
      double loss = reading.lossAh().value() - medianLoss - excessAh.value();
      double kneeSd = kneeSd(c, reading.topAtEndAh().value() - medianTop);
      double lossSd =
          Math.sqrt(
              sq(reading.lossAh().sd())
                  + sq(kneeSd)
                  + sq(traits.cellShapeSd() * spanAh)
                  + sq(excessAh.sd())
                  + sq(wearShare(reading) * loss)
                  + (counted ? 0 : sq(madeUpLossShare() * loss) + sq(madeUpAxisSd() * spanAh)));
      // On a slope what an explanation lost in lithium says little of what it lost in size.
      List<Rival> rivals = traits.flat() ? fit.rivals(c) : List.of();
      CellState taken = fit.states()[c];
      double moreAh =
          rivals.stream()
              .mapToDouble(rival -> rival.state().lossAh() - taken.lossAh())
              .reduce(0, Math::max);
      double furtherAh = loss + moreAh;
      double furtherSd = Math.hypot(lossSd, wearShare(reading) * moreAh);
      all.add(
          new CellCharge(
              downTo(capacity(loss, lossSd), capacity(furtherAh, furtherSd)),
              downTo(relative(loss, lossSd), relative(furtherAh, furtherSd)),
              offset(c, reading, kneeSd, medianTop, medianLoss, medianOffset),
              selfDischarge(c, medianDrift),
              Rival.reach(
                  voltageOffset(reading, loss, lossSd, medianTop, medianOffset),
                  rivals,
                  taken,
                  CellState::offsetV,
                  1000)));
    }
    return all;
  }

  /**
   * Whether the cells lie on one curve: if most came out of different sizes, it is the made-up axis
   * that doesn't fit them.
   */
  private boolean onOneCurve() {
    double[] loss = Arrays.stream(readings).mapToDouble(r -> r.lossAh().value()).toArray();
    return counted || Robust.spread(loss) < MOST_SPREAD * LikelySize.ALIKE * nominalAh;
  }

  /** Share by which what a cell lost is misjudged, since cells wear in more ways than one. */
  private double wearShare(CellReading reading) {
    return reading.worn() ? CurveTraits.WEAR_BY_GRAPHITE : traits.wearShare();
  }

  private double madeUpAxisSd() {
    return traits.flat() && !ownTable ? WARPED_AXIS_SD : MADE_UP_AXIS_SD;
  }

  private double madeUpLossShare() {
    return traits.flat() ? WARPED_LOSS_SHARE : MADE_UP_LOSS_SHARE;
  }

  /**
   * What a cell lost in lithium beyond what it lost in capacity, Ah. None on a sloping curve, whose
   * fit can't tell lost lithium from lost size that well, nor along the keeper's own table, whose
   * electrodes nobody knows.
   */
  private CellReading.Figure excessAh(int c) {
    CellReading.Figure share =
        excess.map(e -> e.of(slip(fit.states()[c]))).orElse(new CellReading.Figure(0, 0));
    return new CellReading.Figure(spanAh * share.value(), spanAh * share.sd());
  }

  /**
   * How much less charge a cell's electrodes have in common than its neighbours', as a share of
   * capacity. A cell that was made a little larger or smaller is so in both of them, which moves
   * them together; what one has shrunk beyond that is its graphite's.
   */
  private double slip(CellState s) {
    double made = Math.max(-MADE_ALIKE, Math.min(s.stretch(), MADE_ALIKE));
    return s.lossAh() / spanAh + made;
  }

  /** Uncertainty of a cell's end of charge from voltage that nothing explains, Ah. */
  private double kneeSd(int cell, double topAh) {
    if (staysBehind(cell)) {
      return nominalAh;
    }
    // A sloping curve tells charge everywhere and does not rest on what happens at the knee.
    double apart = traits.flat() ? apart(topAh) : 0;
    double volt = UNEXPLAINED_V + apart * (UNEXPLAINED_APART_V - UNEXPLAINED_V);
    return volt / Math.max(1e-9, fit.topSlopeReached(cell));
  }

  /**
   * Whether a cell stays below the knee when the others climb it. How far below is counted where
   * the current was logged; along a made-up axis nothing tells.
   */
  private boolean staysBehind(int cell) {
    return !counted && traits.flat() && topSeen && !climbs[cell];
  }

  /** How far from the others a cell stands, near full or by its size, 0 to 1. */
  private double apart(double ah) {
    return Math.min(1, Math.abs(ah) / (APART * nominalAh));
  }

  private double middle(Function<CellReading, CellReading.Figure> of) {
    double[] all = new double[readings.length];
    for (int c = 0; c < all.length; c++) {
      all[c] = of.apply(readings[c]).value();
    }
    return Robust.median(all);
  }

  /**
   * The same value, down to the lower end of what another explanation gives that fits as well:
   * which of them holds is not known. Where that one gives no value worth telling, there is none.
   */
  static Estimate downTo(Estimate taken, Estimate further) {
    return taken instanceof Estimate.Known t && further instanceof Estimate.Known f
        ? new Estimate.Known(t.value(), Math.min(t.low(), f.low()), t.high())
        : further;
  }

  private Estimate capacity(double loss, double lossSd) {
    if (!(median instanceof Estimate.Known m)) {
      return median;
    }
    if (!sizesTell() || !(lossSd < worthTelling(MedianCapacity.WIDEST_SD * m.value(), loss))) {
      return unseen();
    }
    return Estimate.of(m.value() - loss, Math.hypot(lossSd, m.sd()));
  }

  /** A large loss is worth telling though it be known to its quarter only. */
  private static double worthTelling(double widestAh, double lossAh) {
    return Math.max(widestAh, WORTH_TELLING * lossAh);
  }

  private static Estimate.Unknown tooFast() {
    return Estimate.unknown(WORDS.say("unknown.too-fast"));
  }

  private static Estimate.Unknown unseen() {
    return Estimate.unknown(WORDS.say("unknown.unclear"));
  }

  private Estimate relative(double loss, double lossSd) {
    if (fast) {
      return tooFast();
    }
    double widest = (counted ? 1.25 : 4) * MedianCapacity.WIDEST_SD * spanAh;
    if (!sizesTell() || !(lossSd < worthTelling(widest, loss))) {
      return unseen();
    }
    Estimate.Known relative = Estimate.of(1 - loss / spanAh, lossSd / spanAh);
    if (counted || !traits.flat()) {
      return relative;
    }
    double furtherAh = SQUEEZED_LOSS_SHARE * Math.max(0, loss);
    return new Estimate.Known(
        relative.value(),
        Math.max(
            0,
            relative.value() - Math.hypot(relative.value() - relative.low(), furtherAh / spanAh)),
        relative.high());
  }

  /**
   * Whether what was gone through tells one size from another. A knee does where the charge is
   * counted; a slope or a made-up axis has to be seen for most of its length, or the cells come out
   * as alike as they were held to be.
   */
  private boolean sizesTell() {
    return topSeen && ((counted && traits.flat()) || wellSeen());
  }

  private double madeUpOffsetShare() {
    return wellSeen() ? MADE_UP_OFFSET_SHARE : MADE_UP_OFFSET_SHARE_SHALLOW;
  }

  private boolean wellSeen() {
    return fit.seenAh() > WELL_SEEN * nominalAh;
  }

  /**
   * Offset at the end of the log, by the cell's end of charge or by the steps of its curve,
   * whichever is surer.
   */
  private Estimate offset(
      int cell,
      CellReading reading,
      double kneeSd,
      double medianTop,
      double medianLoss,
      double medianOffset) {
    double loss = reading.lossAh().value() - medianLoss;
    double top = reading.topAtEndAh().value() - medianTop;
    // What wear and a cell's own shape do to its loss moves where its steps seem to place it.
    double lossSd =
        Math.sqrt(
            sq(reading.lossAh().sd())
                + sq(kneeSd)
                + sq(wearShare(reading) * loss)
                + sq(traits.cellShapeSd() * spanAh));
    double byTopSd = Math.hypot(reading.topAtEndAh().sd(), kneeSd);
    // The room was seen from where the fit left the cell, not from where its last step points to.
    // One that stays behind is at most as full as the fit has it.
    double roomAh = roomBelowKneeAh(cell);
    double seenLossAh = reading.worn() ? reading.lossAh().value() : fit.states()[cell].lossAh();
    double mostAh = seenLossAh - medianLoss + roomAh;
    LikelySize size = LikelySize.of(loss, lossSd, mostAh, nominalAh);
    double byBottomSd = Math.hypot(reading.bottomAtEndAh().sd(), size.sdAh());
    boolean byTop = topSeen && byTopSd < byBottomSd;
    double at = byTop ? top : top + loss - size.lossAh();
    // A cell that is ahead where the curve steps can't be so by wear; one behind may be worn
    // instead, unless the others were seen full and it was not.
    boolean stepsTell = counted && !fast && wellSeen() && at < -APART * nominalAh;
    if (traits.flat() && stepsTell && !byTop && fit.stoodOnKnee(cell)) {
      double seenSd =
          Math.hypot(
              reading.bottomAtEndAh().sd(),
              Math.hypot(traits.cellShapeSd() * spanAh, PLACE_SD * nominalAh));
      return ahead(-at, size, seenSd);
    }
    boolean tells = topSeen || stepsTell;
    if (!tells) {
      return Estimate.unknown(WORDS.say("unknown.flat"));
    }
    // On a slope hardly seen, the end of charge lies where a size that is not told would put it.
    double sd =
        Math.sqrt(
            sq(byTop ? byTopSd : byBottomSd)
                + sq(PLACE_SD * nominalAh)
                + sq(takenBackAh(reading, medianTop, medianOffset))
                + (traits.flat() || sizesTell()
                    ? 0
                    : sq(LikelySize.ALIKE * unseenShare() * nominalAh))
                + (counted ? 0 : sq(madeUpOffsetShare() * at) + sq(0.005 * nominalAh)));
    boolean far = !byTop && Math.abs(at) > FURTHEST_APART * nominalAh;
    if (far || (fast && !byTop)) {
      return unseen();
    }
    if (sd < WIDEST_OFFSET_SD * nominalAh) {
      return Estimate.of(-100 * at / nominalAh, 100 * sd / nominalAh);
    }
    // However badly its steps place it, one that was not seen on the knee stands somewhere below. A
    // sloping curve has no knee at its top.
    double leastAh = top - roomAh - Estimate.HALF_WIDTH_IN_SD * KNEE_PLACE_SD * nominalAh;
    return !byTop && traits.flat() && leastAh > 0 && sd < nominalAh
        ? behind(new BoundedNormal(at, sd, leastAh))
        : unseen();
  }

  /**
   * Charge that would have taken a cell on to the knee, Ah; infinite where nothing says that it was
   * not there. A cell that was charged beyond the end of the others' curve is out of its sight, but
   * not below the knee.
   */
  private double roomBelowKneeAh(int cell) {
    if (staysBehind(cell)) {
      return 0;
    }
    return traits.flat() && fit.stoodOnKnee(cell)
        ? Double.POSITIVE_INFINITY
        : fit.roomBelowKneeAh(cell);
  }

  /**
   * The offset of a cell that is full before the others and ahead where the curve steps. How far
   * they were from full then was not seen, so it is ahead there by what it may have lost more than
   * at the steps; but none has grown, so hardly by less.
   *
   * @param leadAh how far it is ahead, Ah
   * @param size what it is likely to have lost
   * @param seenSd how well its steps are seen, Ah, one standard deviation
   */
  private Estimate ahead(double leadAh, LikelySize size, double seenSd) {
    double lessAh =
        size.lossAh()
            + Estimate.HALF_WIDTH_IN_SD * Math.hypot(seenSd, LikelySize.ALIKE * nominalAh);
    double moreAh = Estimate.HALF_WIDTH_IN_SD * Math.hypot(seenSd, size.sdAh());
    double percent = 100 / nominalAh;
    return new Estimate.Known(
        percent * leadAh, percent * (leadAh - lessAh), percent * (leadAh + moreAh));
  }

  /** The offset of a cell that lies so far behind, Ah. */
  private Estimate behind(BoundedNormal ah) {
    double percent = -100 / nominalAh;
    return new Estimate.Known(
        percent * ah.quantile(0.5), percent * ah.quantile(0.975), percent * ah.quantile(0.025));
  }

  private Estimate voltageOffset(
      CellReading reading, double loss, double lossSd, double medianTop, double medianOffset) {
    if (fast) {
      return tooFast();
    }
    // Where the string was never seen full, no size is told, but a cell's steps still place it.
    boolean bySteps = traits.flat() && !topSeen && wellSeen();
    double placeSd = bySteps ? reading.bottomAtEndAh().sd() : lossSd;
    if (!counted && !(placeSd < 2 * MedianCapacity.WIDEST_SD * spanAh)) {
      return unseen();
    }
    if (traits.flat() && !topSeen && apart(reading.bottomAtEndAh().value()) >= 1) {
      // On the flat part a cell that stands elsewhere differs by a few millivolt all month long.
      return unseen();
    }
    double elsewhere =
        traits.flat()
            ? Math.max(
                MADE_UP_AXIS_FLAT_SHARE,
                Math.max(apart(reading.topAtEndAh().value() - medianTop), apart(loss)))
            : 1;
    double sd =
        Math.sqrt(
            sq(reading.offsetV().sd())
                + sq(counted ? COUNTED_AXIS_V : elsewhere * MADE_UP_AXIS_V)
                + sq(ownShapeV())
                + sq(fit.usualSlope() * takenBackAh(reading, medianTop, medianOffset))
                + sq(traits.flat() && !topSeen ? fit.usualSlope() * UNLEVEL * nominalAh : 0)
                + sq(traits.wornCurveV() * loss / spanAh));
    return sd < WIDEST_VOLTAGE_SD
        ? Estimate.of(1000 * (reading.offsetV().value() - medianOffset), 1000 * sd)
        : unseen();
  }

  /**
   * A cell's own shape, read as a constant voltage where little of the curve was gone through, V,
   * one standard deviation.
   */
  private double ownShapeV() {
    return traits.cellShapeSd() * spanAh * fit.usualSlope() * Math.sqrt(unseenShare());
  }

  /**
   * How far a cell seems to be displaced, as far as what it seems to be misread by takes that back,
   * Ah. On a slope of which little was gone through both look alike, and a cell that reads as its
   * neighbours do is hardly wrong by much in two ways at once.
   */
  private double takenBackAh(CellReading reading, double medianTop, double medianOffset) {
    double misreadV = reading.offsetV().value() - medianOffset;
    double behindAh = reading.topAtEndAh().value() - medianTop;
    boolean toldApart = traits.flat() || wellSeen() || misreadV * behindAh <= 0;
    return toldApart ? 0 : Math.min(Math.abs(misreadV) / fit.usualSlope(), Math.abs(behindAh));
  }

  private double unseenShare() {
    return Math.max(0, 1 - fit.seenAh() / nominalAh);
  }

  private Estimate selfDischarge(int c, double medianDrift) {
    if (!counted || days < 5) {
      return Estimate.unknown(
          counted ? WORDS.say("unknown.five-days") : WORDS.say("unknown.no-current.drain"));
    }
    CellReading.Figure drift = readings[c].driftAhPerDay();
    double perDay = drift.value() - medianDrift;
    double sd = Math.hypot(drift.sd(), 0.0015 * nominalAh / days);
    double milliamp = perDay * 1000 / 24;
    double milliampSd = sd * 1000 / 24;
    if (!(milliampSd < 40 * nominalAh / 280) || (!topSeen && milliampSd > 20 * nominalAh / 280)) {
      return Estimate.unknown(WORDS.say("unknown.drain"));
    }
    // What a board bled is taken for a drain, and a drain that the others' boards match for none.
    double half = Estimate.HALF_WIDTH_IN_SD * milliampSd;
    double fromBoard = bleeding.get(c).mostAh() / days * 1000 / 24;
    double hidden = -bleeding.get(c).leastAh() / days * 1000 / 24;
    return new Estimate.Known(
        milliamp, milliamp - Math.hypot(half, fromBoard), milliamp + Math.hypot(half, hidden));
  }

  private static double sq(double x) {
    return x * x;
  }
}
