package sagbook.estimate.resistance;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import sagbook.estimate.response.ReadLag;
import sagbook.estimate.response.ReducedWindow;
import sagbook.estimate.response.StringResponse;
import sagbook.evidence.Evidence;
import sagbook.evidence.StepWindow;
import sagbook.model.Estimate;
import sagbook.wording.Words;

/**
 * DC resistance as change of voltage over change of current a stated time after the step (the
 * definition behind IEC 61960-3, IEC 62620 and the USABC/INL pulse tests), from all steps of the
 * log at once: present and past changes of current explain each change of voltage, so neither slow
 * logging nor a board that is read late biases it.
 *
 * <p>The string's mean carries the temperature and charge dependence ({@link ReferenceConditions});
 * each cell is compared with that mean in the same rows ({@link CellComparison}). Intervals come
 * from leaving out one stretch of the log at a time plus what no repetition shows: the current
 * sensor's gain and the unknown moment of a step between two rows.
 */
public final class ResistanceEstimator {
  private static final Words WORDS = Words.english();

  /**
   * What no repetition shows, one standard deviation, relative: gain of a current sensor, shape of
   * the response, the moment of a step between two rows. Set so that intervals hold the truth on
   * invented packs of a generator that shares no code with this project.
   */
  private static final double SYSTEMATIC = 0.01;

  private static final double FASTEST_PULSE_S = 10;

  /** Beyond these shares of the string's median a resistance is a misunderstanding. */
  private static final double LEAST_SHARE = 0.3;

  private static final double MOST_SHARE = 6;

  private final Evidence evidence;
  private final List<ReducedWindow> windows;
  private final boolean flat;
  private final boolean[] trusted;
  private final double[] offset;
  private final double[] charge;
  private final int cells;

  /**
   * An estimator for one bank.
   *
   * @param windows its step windows
   * @param flat whether the cells' open-circuit curve is flat between its knees
   * @param trusted whether each cell's thermometer is to be believed
   * @param offset charge of each cell beyond the string's, as a share of capacity; 0 when unknown
   * @param chargeAt charge 0 to 1 of the string at a time (s since 1970), NaN when unknown
   */
  public ResistanceEstimator(
      Evidence evidence,
      List<ReducedWindow> windows,
      boolean flat,
      boolean[] trusted,
      double[] offset,
      DoubleUnaryOperator chargeAt) {
    this.evidence = evidence;
    this.windows = windows;
    this.flat = flat;
    this.trusted = trusted.clone();
    this.offset = offset.clone();
    this.cells = evidence.channels().seriesCells();
    this.charge = new double[windows.size()];
    for (int w = 0; w < charge.length; w++) {
      charge[w] = charge(windows.get(w).window(), chargeAt);
    }
  }

  /**
   * Charge in the middle of a window, or that at its start or end where this is near empty or near
   * full: the slow parts of resistance rise there, so a window that so much as touches these ends
   * is none of mid charge.
   */
  private static double charge(StepWindow window, DoubleUnaryOperator chargeAt) {
    double start = chargeAt.applyAsDouble(window.startS());
    double end = chargeAt.applyAsDouble(window.endS());
    double low = Math.min(start, end);
    double high = Math.max(start, end);
    if (low < WindowSizes.LOWEST_CHARGE) {
      return low;
    }
    return high > WindowSizes.HIGHEST_CHARGE ? high : (low + high) / 2;
  }

  /** Pulse time that a log of this cadence can honestly show, s. */
  static double pulseS(double cadenceS) {
    if (showsPulse(cadenceS)) {
      return FASTEST_PULSE_S;
    }
    // The row right after a step is passed over, so the youngest answer is an interval and a half
    // old on average.
    return Math.rint(1.5 * cadenceS);
  }

  private static boolean showsPulse(double cadenceS) {
    return cadenceS <= 1.2 * FASTEST_PULSE_S;
  }

  /** Resistances of all cells; unknown with a reason where the log can't tell. */
  public ResistanceResult estimate() {
    double pulseS = pulseS(evidence.cadenceS());
    double[] scale = new double[windows.size()];
    for (int w = 0; w < scale.length; w++) {
      scale[w] = WindowSizes.isMid(charge[w]) ? 1 : 0;
    }
    Optional<StringResponse> response = StringResponse.of(evidence.basis(), windows, scale);
    if (response.isEmpty() || !(response.get().at(pulseS) > 0)) {
      return nothing(pulseS, WORDS.say("unknown.no-steps"));
    }
    if (!evidence.channels().hasCurrent()) {
      return assemble(pulseS, scale, response.get(), Optional.empty());
    }
    Optional<ReferenceConditions> reference = Optional.empty();
    for (int pass = 0; pass < 2; pass++) {
      reference = ReferenceConditions.fit(windows, response.get(), charge, pulseS);
      if (reference.isPresent()) {
        scale = reference.get().scale();
        response = StringResponse.of(evidence.basis(), windows, scale);
        if (response.isEmpty()) {
          return nothing(pulseS, WORDS.say("unknown.few-steps"));
        }
      }
    }
    reference = ReferenceConditions.fit(windows, response.get(), charge, pulseS);
    StringResponse read = response.get().read(ReadLag.of(evidence, windows, scale, response.get()));
    return assemble(pulseS, scale, read.at(pulseS) > 0 ? read : response.get(), reference);
  }

  private ResistanceResult nothing(double pulseS, String reason) {
    Estimate none = Estimate.unknown(reason);
    List<CellResistance> all = new ArrayList<>();
    for (int c = 0; c < cells; c++) {
      all.add(new CellResistance(none, none, none, none, Optional.empty()));
    }
    return new ResistanceResult(pulseS, none, all);
  }

  private ResistanceResult assemble(
      double pulseS,
      double[] scale,
      StringResponse response,
      Optional<ReferenceConditions> reference) {
    double stringOhm =
        response.at(pulseS) * Math.exp(reference.map(ReferenceConditions::logLevel).orElse(0.0));
    UsedWindows used =
        (evidence.channels().hasCurrent()
                ? UsedWindows.ofCurrent(windows, scale, response)
                : UsedWindows.ofVoltage(
                    windows, scale, evidence.basis(), showsPulse(evidence.cadenceS())))
            .weighed(response, response.at(pulseS));
    CellComparison compared = CellComparison.of(used, response, pulseS);
    boolean absolute = reference.isPresent();
    String noAbsolute =
        evidence.channels().hasCurrent()
            ? WORDS.say("unknown.no-temperature")
            : WORDS.say("unknown.no-current.resistance");
    double kilojoule =
        reference
            .map(ReferenceConditions::activationEnergy)
            .orElse(ReferenceConditions.PRIOR_KILOJOULE);
    double kilojouleSd =
        reference
            .map(ReferenceConditions::activationEnergySd)
            .orElse(ReferenceConditions.PRIOR_SD_KILOJOULE);
    CellShare.AtOnePlace law =
        new CellShare.AtOnePlace(
            CellWarmth.of(used, trusted),
            kilojoule,
            kilojouleSd,
            reference.map(ReferenceConditions::chargeSlope).orElse(0.0),
            offset);
    double medianWhole = CellShare.medianWhole(compared, law);
    List<CellShare> shares = CellShare.all(used, response, pulseS, compared, law);
    List<CellResistance> all = new ArrayList<>();
    for (CellShare share : shares) {
      if (!(share.relative() > LEAST_SHARE && share.relative() < MOST_SHARE)) {
        return nothing(pulseS, WORDS.say("unknown.contradiction"));
      }
    }
    for (CellShare share : shares) {
      double milliohm = stringOhm * medianWhole * share.relative() * 1000;
      double elseSd =
          Math.hypot(
              share.relativeSd() / share.relative(),
              Math.hypot(
                  CellShare.stringSd(compared), Math.hypot(SYSTEMATIC, response.lagSd(pulseS))));
      double unit = stringOhm * 1000;
      all.add(
          new CellResistance(
              reference
                  .map(to25 -> absolute(milliohm, to25, elseSd))
                  .orElse(Estimate.unknown(noAbsolute)),
              Estimate.of(share.relative(), share.relativeSd()),
              absolute
                  ? Estimate.of(share.ohmicExcess() * unit, share.ohmicExcessSd() * unit)
                  : Estimate.unknown(noAbsolute),
              slow(share),
              share.change()));
    }
    Estimate energy =
        reference
            .map(r -> (Estimate) Estimate.of(r.activationEnergy(), r.activationEnergySd()))
            .orElse(Estimate.unknown(noAbsolute));
    return new ResistanceResult(pulseS, energy, all);
  }

  /**
   * Slow part of a cell's answer. Without current it shows only where rows show ten seconds and the
   * curve is flat; on a slope what the charge does to the voltage grows as slow parts do.
   */
  private Estimate slow(CellShare share) {
    if (evidence.channels().hasCurrent()) {
      return Estimate.of(share.slow(), share.slowSd());
    }
    if (!flat) {
      return Estimate.unknown(WORDS.say("unknown.no-current.slope"));
    }
    return showsPulse(evidence.cadenceS())
        ? Estimate.of(share.slow(), share.slowSd())
        : Estimate.unknown(WORDS.say("unknown.no-current.slow"));
  }

  /** A resistance at 25 °C; what else is unknown of it is told as a relative standard deviation. */
  private static Estimate absolute(double milliohm, ReferenceConditions to25, double elseSd) {
    return new Estimate.Known(
        milliohm,
        Estimate.of(milliohm, milliohm * Math.hypot(to25.sdBelow(), elseSd)).low(),
        Estimate.of(milliohm, milliohm * Math.hypot(to25.sdAbove(), elseSd)).high());
  }
}
