package sagbook.estimate.resistance;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import sagbook.estimate.response.StringResponse;
import sagbook.evidence.Evidence;
import sagbook.evidence.ResponseBasis;
import sagbook.evidence.StepWindow;
import sagbook.model.Estimate;
import sagbook.numeric.Ridge;
import sagbook.numeric.Robust;

/**
 * DC resistance as change of voltage over change of current a stated time after the step (the
 * definition behind IEC 61960-3 and IEC 62620 and the USABC/INL pulse tests), from all steps of the
 * log at once: present and past changes of current explain each change of voltage, so neither slow
 * logging nor a board that is read late biases it.
 *
 * <p>Each cell is compared with the string's mean response in the same rows: {@code alpha} scales
 * the whole response (a worn cell), {@code beta} adds to the immediate part only (a joint). The
 * string's mean carries the temperature and charge dependence ({@link ReferenceConditions}).
 * Intervals come from leaving out one of twelve stretches of the log at a time (jackknife, Tukey
 * 1958) plus what no repetition shows: the current sensor's gain and the unknown moment of a step
 * between two rows.
 */
public final class ResistanceEstimator {
  /** Gain of a current sensor and the shape of the response, one standard deviation, relative. */
  private static final double SYSTEMATIC = 0.009;

  private static final int STRETCHES = 12;
  private static final double FASTEST_PULSE_S = 10;

  private final Evidence evidence;
  private final Optional<StringResponse> response;
  private final DoubleUnaryOperator chargeAt;
  private final int cells;

  /**
   * An estimator for one bank.
   *
   * @param chargeAt charge 0 to 1 of the string at a time (s since 1970), NaN when unknown
   */
  public ResistanceEstimator(
      Evidence evidence, Optional<StringResponse> response, DoubleUnaryOperator chargeAt) {
    this.evidence = evidence;
    this.response = response;
    this.chargeAt = chargeAt;
    this.cells = evidence.channels().seriesCells();
  }

  /** Resistances of all cells; unknown with a reason where the log can't tell. */
  public ResistanceResult estimate() {
    double pulseS =
        evidence.cadenceS() <= 1.2 * FASTEST_PULSE_S ? FASTEST_PULSE_S : evidence.cadenceS();
    if (response.isEmpty() || !(response.get().at(pulseS) > 0)) {
      return nothing(
          pulseS,
          "the log holds no clean load steps; switch a large load (a kettle, an oven) on and off a"
              + " few times a day");
    }
    List<StepWindow> windows = usable();
    double[] size = new double[windows.size()];
    double[] sizeSd = new double[windows.size()];
    sizes(windows, size, sizeSd);
    List<String> remarks = new ArrayList<>();
    Optional<ReferenceConditions> reference = Optional.empty();
    if (evidence.channels().hasCurrent()) {
      double[] charge = new double[windows.size()];
      for (int w = 0; w < charge.length; w++) {
        charge[w] = chargeAt.applyAsDouble((windows.get(w).startS() + windows.get(w).endS()) / 2);
      }
      reference = ReferenceConditions.fit(windows, size, sizeSd, charge);
    }
    double[] scale = reference.isPresent() ? reference.get().scale() : ones(windows.size());
    return assemble(pulseS, windows, scale, reference, remarks);
  }

  private static double[] ones(int n) {
    double[] all = new double[n];
    java.util.Arrays.fill(all, 1);
    return all;
  }

  private ResistanceResult nothing(double pulseS, String reason) {
    Estimate none = Estimate.unknown(reason);
    List<CellResistance> all = new ArrayList<>();
    for (int c = 0; c < cells; c++) {
      all.add(new CellResistance(none, none, none, none));
    }
    return new ResistanceResult(pulseS, none, all, List.of());
  }

  /** Windows in which every cell was heard in nine of ten rows. */
  private List<StepWindow> usable() {
    List<StepWindow> kept = new ArrayList<>();
    for (StepWindow window : evidence.steps()) {
      int least = Integer.MAX_VALUE;
      for (int n : window.cellRows()) {
        least = Math.min(least, n);
      }
      if (least >= 0.9 * window.rows()) {
        kept.add(window);
      }
    }
    return kept.isEmpty() ? evidence.steps() : kept;
  }

  /** Size of the string's response in each window relative to the pooled one. */
  private void sizes(List<StepWindow> windows, double[] size, double[] sizeSd) {
    StringResponse pooled = response.orElseThrow();
    ResponseBasis basis = pooled.basis();
    double noise = pooled.noiseV() / Math.sqrt(cells);
    for (int w = 0; w < size.length; w++) {
      StepWindow window = windows.get(w);
      double[][] map = new double[][] {shape(pooled), unit(basis.size(), basis.charge())};
      Ridge fit = new Ridge(2);
      project(window, map, fit, meanCross(window));
      // The charge regressor's coefficient is the slope of the open-circuit curve, V/Ah.
      fit.addNormal(1, 1, 1e-9);
      Ridge.Solution solution = fit.solve();
      size[w] = solution.determined() ? solution.value()[0] : Double.NaN;
      sizeSd[w] = solution.determined() ? noise * solution.sd(0) : Double.NaN;
    }
  }

  /** The pooled response without its charge part, as weights on the regressors. */
  private static double[] shape(StringResponse pooled) {
    double[] shape = pooled.coefficients().clone();
    shape[pooled.basis().charge()] = 0;
    return shape;
  }

  private static double[] unit(int n, int i) {
    double[] e = new double[n];
    e[i] = 1;
    return e;
  }

  private double[] meanCross(StepWindow window) {
    double[] mean = new double[response.orElseThrow().basis().size()];
    for (int c = 0; c < cells; c++) {
      for (int i = 0; i < mean.length; i++) {
        mean[i] += window.cross()[c][i] / cells;
      }
    }
    return mean;
  }

  /** Adds a window's sums to a fit whose regressors are combinations of the basis'. */
  private static void project(StepWindow window, double[][] map, Ridge fit, double[] cross) {
    int p = cross.length;
    for (int a = 0; a < map.length; a++) {
      double right = 0;
      for (int i = 0; i < p; i++) {
        right += map[a][i] * cross[i];
      }
      fit.addRight(a, right);
      for (int b = 0; b <= a; b++) {
        double sum = 0;
        for (int i = 0; i < p; i++) {
          if (map[a][i] == 0) {
            continue;
          }
          for (int j = 0; j < p; j++) {
            int hi = Math.max(i, j);
            int lo = Math.min(i, j);
            sum += map[a][i] * map[b][j] * window.gram()[hi * (hi + 1) / 2 + lo];
          }
        }
        fit.addNormal(a, b, sum);
      }
    }
  }

  private ResistanceResult assemble(
      double pulseS,
      List<StepWindow> windows,
      double[] scale,
      Optional<ReferenceConditions> reference,
      List<String> remarks) {
    StringResponse pooled = response.orElseThrow();
    double stringOhm =
        pooled.at(pulseS) * reference.map(r -> Math.exp(r.logAtReference())).orElse(1.0);
    double stringLogSd = reference.map(ReferenceConditions::logSd).orElse(0.0);
    int stretches = Math.min(STRETCHES, windows.size());
    double[][] alpha = new double[cells][stretches + 1];
    double[][] beta = new double[cells][stretches + 1];
    double[][] ratio = new double[cells][stretches + 1];
    for (int out = 0; out <= stretches; out++) {
      compare(pulseS, windows, scale, out - 1, stretches, stringOhm, alpha, beta, ratio, out);
      centre(ratio, out);
    }
    boolean absolute = reference.isPresent();
    String noAbsolute =
        evidence.channels().hasCurrent()
            ? "no temperature was logged, so the resistance can't be brought to 25 °C"
            : "no current was logged, so there is nothing to divide the voltage by";
    List<CellResistance> all = new ArrayList<>();
    double medianOhmic = medianOf(beta);
    double medianSlow = medianOf(alpha);
    for (int c = 0; c < cells; c++) {
      double relative = ratio[c][0];
      double relativeSd = Math.hypot(jackknife(ratio[c]), 0.004);
      double ohm = stringOhm * alpha[c][0] + beta[c][0];
      double ohmSd = ohm * Math.sqrt(sq(relativeSd / relative) + sq(stringLogSd) + sq(SYSTEMATIC));
      Estimate absoluteEstimate =
          absolute ? Estimate.of(ohm * 1000, ohmSd * 1000) : Estimate.unknown(noAbsolute);
      double excess = (beta[c][0] - medianOhmic) * (absolute ? 1000 : 1);
      double excessSd = Math.hypot(jackknife(beta[c]), 0.01 * stringOhm) * (absolute ? 1000 : 1);
      double slow = alpha[c][0] - medianSlow + 1;
      all.add(
          new CellResistance(
              absoluteEstimate,
              Estimate.of(relative, relativeSd),
              absolute
                  ? Estimate.of(excess, excessSd)
                  : Estimate.of(excess / stringOhm, excessSd / stringOhm),
              Estimate.of(slow, Math.hypot(jackknife(alpha[c]), 0.02))));
    }
    Estimate energy =
        reference
            .map(r -> (Estimate) Estimate.of(r.activationEnergy(), r.activationEnergySd()))
            .orElse(Estimate.unknown(noAbsolute));
    return new ResistanceResult(pulseS, energy, all, remarks);
  }

  private static double sq(double x) {
    return x * x;
  }

  private static double medianOf(double[][] values) {
    double[] whole = new double[values.length];
    for (int c = 0; c < whole.length; c++) {
      whole[c] = values[c][0];
    }
    return Robust.median(whole);
  }

  private void centre(double[][] ratio, int column) {
    double[] all = new double[cells];
    for (int c = 0; c < cells; c++) {
      all[c] = ratio[c][column];
    }
    double median = Robust.median(all);
    for (int c = 0; c < cells; c++) {
      ratio[c][column] /= median;
    }
  }

  /** Fits every cell against the string over all windows but those of one stretch. */
  private void compare(
      double pulseS,
      List<StepWindow> windows,
      double[] scale,
      int leftOut,
      int stretches,
      double stringOhm,
      double[][] alpha,
      double[][] beta,
      double[][] ratio,
      int column) {
    StringResponse pooled = response.orElseThrow();
    ResponseBasis basis = pooled.basis();
    int p = basis.size();
    Ridge[] fits = new Ridge[cells];
    for (int c = 0; c < cells; c++) {
      fits[c] = new Ridge(4);
    }
    for (int w = 0; w < windows.size(); w++) {
      if (stretches > 1 && (long) w * stretches / windows.size() == leftOut) {
        continue;
      }
      double[] shape = shape(pooled);
      shape[0] = 0;
      for (int i = 0; i < p; i++) {
        shape[i] *= scale[w];
      }
      double[][] map = {shape, unit(p, 1), unit(p, 0), unit(p, basis.charge())};
      Ridge common = new Ridge(4);
      for (int c = 0; c < cells; c++) {
        if (c == 0) {
          project(windows.get(w), map, common, windows.get(w).cross()[0]);
          fits[0].add(common);
        } else {
          fits[c].addNormalOf(common);
          for (int a = 0; a < 4; a++) {
            double right = 0;
            for (int i = 0; i < p; i++) {
              right += map[a][i] * windows.get(w).cross()[c][i];
            }
            fits[c].addRight(a, right);
          }
        }
      }
    }
    double precision = 1 / sq(pooled.noiseV());
    double perString = pooled.at(pulseS);
    for (int c = 0; c < cells; c++) {
      fits[c].scale(precision);
      fits[c].prior(0, 1, 0.5);
      fits[c].prior(1, 0, 0.5 * perString);
      Ridge.Solution solution = fits[c].solve();
      alpha[c][column] = solution.value()[0];
      beta[c][column] = solution.value()[1];
      ratio[c][column] = solution.value()[0] + solution.value()[1] / stringOhm;
    }
  }

  /** Jackknife standard deviation; entry 0 is the estimate from all stretches. */
  private static double jackknife(double[] values) {
    int n = values.length - 1;
    if (n < 2) {
      return 0.05 * Math.abs(values[0]);
    }
    double mean = 0;
    for (int k = 1; k <= n; k++) {
      mean += values[k] / n;
    }
    double sum = 0;
    for (int k = 1; k <= n; k++) {
      sum += sq(values[k] - mean);
    }
    return Math.sqrt((n - 1.0) / n * sum);
  }
}
