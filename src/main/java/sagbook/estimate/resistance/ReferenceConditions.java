package sagbook.estimate.resistance;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import sagbook.estimate.response.ReducedWindow;
import sagbook.estimate.response.StringResponse;
import sagbook.evidence.ResponseBasis;
import sagbook.numeric.Ridge;
import sagbook.numeric.Robust;

/**
 * Brings the string's resistance to 25 °C and mid charge: the logarithm of its size in every window
 * against inverse temperature (Arrhenius) and charge.
 *
 * <p>{@code ln A = c0 + Ea/Rg (1/T - 1/298.15 K) + c1 (z - 1/2) + c2 (z - 1/2)²}. Before the data
 * speak, Ea is taken as 16 give or take 5 kJ/mol: whole-cell values of a measured 3 Ah LFP cell run
 * from 11 to 22 (M. Naumann, doctoral thesis, TU Munich 2018, open table). Huber weights (Huber
 * 1964) keep odd windows from mattering.
 *
 * @param scale size of the string's response in each window over that at 25 °C and mid charge; 0
 *     where the window is not used
 * @param logLevel logarithm of the response at 25 °C and mid charge over the pooled one it was
 *     fitted with
 * @param logSd standard deviation of the logarithm of the response at 25 °C and mid charge
 * @param activationEnergy kJ/mol
 * @param activationEnergySd kJ/mol
 * @param chargeSlope by how much the logarithm rises with charge 0 to 1, mean over the windows used
 */
record ReferenceConditions(
    double[] scale,
    double logLevel,
    double logSd,
    double activationEnergy,
    double activationEnergySd,
    double chargeSlope) {
  /** Between these charges resistance changes little; beyond them it rises. */
  static final double LOWEST_CHARGE = 0.2;

  static final double HIGHEST_CHARGE = 0.9;
  static final double GAS_CONSTANT = 8.314462618;
  private static final double REFERENCE_KELVIN = 298.15;
  static final double PRIOR_KILOJOULE = 16;
  static final double PRIOR_SD_KILOJOULE = 5;

  private static final double FREE = 0.2;

  /**
   * What a parabola leaves of the charge dependence, as a share over the square of the charge from
   * the middle: cells of published parameters (Prada and co-authors, J. Electrochem. Soc. 159
   * (2012) A1508, as simulated for the tests) rise by a third at a fifth of charge and stay level
   * in between.
   */
  private static final double UNLIKE_MID_CHARGE = 0.5;

  /** Temperature factor relative to 25 °C for an activation energy in kJ/mol. */
  static double arrhenius(double kilojoule, double celsius) {
    return Math.exp(kilojoule * 1000 / GAS_CONSTANT * inverse(celsius));
  }

  private static double inverse(double celsius) {
    return 1 / (celsius + 273.15) - 1 / REFERENCE_KELVIN;
  }

  /**
   * Fits the temperature and charge dependence.
   *
   * @param response a first pooled response, whose shape the windows share
   * @param charge charge 0 to 1 in each window, NaN when unknown
   */
  static Optional<ReferenceConditions> fit(
      List<ReducedWindow> windows, StringResponse response, double pulseS, double[] charge) {
    int n = windows.size();
    double[] size = new double[n];
    double[] sizeSd = new double[n];
    double[] temperature = new double[n];
    boolean[] use = new boolean[n];
    int used = 0;
    for (int w = 0; w < n; w++) {
      measure(windows.get(w), response, pulseS, size, sizeSd, w);
      temperature[w] = Robust.median(windows.get(w).window().meanTemperatureC());
      use[w] =
          size[w] > 0.2
              && size[w] < 8
              && sizeSd[w] < 0.2 * size[w]
              && !Double.isNaN(temperature[w])
              && !(charge[w] < LOWEST_CHARGE)
              && !(charge[w] > HIGHEST_CHARGE);
      used += use[w] ? 1 : 0;
    }
    if (used < 1) {
      return Optional.empty();
    }
    double[] huber = new double[n];
    Arrays.fill(huber, 1);
    double excess = 0.01;
    double shrink = 1;
    Ridge.Solution solution = new Ridge(4).solve();
    for (int pass = 0; pass < 6; pass++) {
      Ridge fit = new Ridge(4);
      fit.prior(1, PRIOR_KILOJOULE, PRIOR_SD_KILOJOULE);
      fit.prior(2, 0, 0.3);
      fit.prior(3, 0, 1.0);
      fit.prior(0, 0, 3);
      for (int w = 0; w < n; w++) {
        if (use[w]) {
          double relativeSd = shrink * sizeSd[w] / size[w];
          double unlike = UNLIKE_MID_CHARGE * fromMid(charge[w]) * fromMid(charge[w]);
          double variance = relativeSd * relativeSd + excess * excess + unlike * unlike;
          fit.observe(row(temperature[w], charge[w]), Math.log(size[w]), huber[w] / variance);
        }
      }
      solution = fit.solve();
      double[] own = new double[used];
      double[] raw = new double[used];
      int k = 0;
      for (int w = 0; w < n; w++) {
        if (use[w]) {
          double residual = Math.log(size[w]) - solution.combined(row(temperature[w], charge[w]));
          double relativeSd = sizeSd[w] / size[w];
          double z = Math.abs(residual) / Math.hypot(relativeSd, excess);
          huber[w] = z <= 1.5 ? 1 : 1.5 / z;
          own[k] = relativeSd;
          raw[k++] = residual;
        }
      }
      if (used > 8) {
        double usualSd = Robust.median(own);
        double spread = Robust.spread(raw);
        excess = Math.max(0.005, Math.sqrt(Math.max(0, spread * spread - usualSd * usualSd)));
        shrink = Math.max(0.3, Math.min(1, spread / Math.hypot(usualSd, excess)));
      }
    }
    double[] scale = new double[n];
    double slope = 0;
    for (int w = 0; w < n; w++) {
      if (use[w]) {
        slope += (solution.value()[2] + 2 * solution.value()[3] * fromMid(charge[w])) / used;
      }
      double[] there = row(temperature[w], charge[w]);
      there[0] = 0;
      scale[w] = use[w] ? Math.exp(solution.combined(there)) : 0;
    }
    return Optional.of(
        new ReferenceConditions(
            scale,
            solution.value()[0],
            solution.sd(0),
            solution.value()[1],
            solution.sd(1),
            slope));
  }

  /**
   * Size of the response at the pulse time in one window. Each part of the response is free about
   * the pooled shape: the moment of a step between two rows is a matter of chance, which moves
   * response from one part to the next but hardly changes what has built up by the pulse time.
   */
  private static void measure(
      ReducedWindow window,
      StringResponse response,
      double pulseS,
      double[] size,
      double[] sizeSd,
      int w) {
    ResponseBasis basis = response.basis();
    int p = response.coefficients().length;
    double whole = response.at(pulseS);
    double[] weights = basis.weightsAt(pulseS);
    Ridge fit = new Ridge(p + 1);
    double[][] map = new double[p + 1][p];
    map[p] = response.coefficients();
    for (int k = 0; k < p; k++) {
      map[k][k] = 1;
    }
    double noise = response.noiseV() / Math.sqrt(window.cross().length);
    double precision = 1 / (noise * noise);
    double[] asked = new double[p + 1];
    asked[p] = 1;
    for (int a = 0; a <= p; a++) {
      for (int b = 0; b <= a; b++) {
        fit.addNormal(a, b, precision * window.product(map[a], map[b]));
      }
      fit.addRight(a, precision * ReducedWindow.product(map[a], window.meanCross(), p));
      if (a < p) {
        boolean slow = basis.isSlow(a);
        fit.prior(a, 0, (slow ? 1 : FREE) * whole);
        asked[a] = weights[a] / whole;
      }
    }
    fit.prior(p, 1, 2);
    Ridge.Solution solution = fit.solve();
    size[w] = solution.determined() ? solution.combined(asked) : Double.NaN;
    sizeSd[w] = solution.determined() ? solution.combinedSd(asked) : Double.NaN;
  }

  private static double fromMid(double charge) {
    return Double.isNaN(charge) ? 0 : charge - 0.5;
  }

  private static double[] row(double celsius, double charge) {
    double u = fromMid(charge);
    double kelvinTerm = Double.isNaN(celsius) ? 0 : 1000 / GAS_CONSTANT * inverse(celsius);
    return new double[] {1, kelvinTerm, u, u * u};
  }
}
