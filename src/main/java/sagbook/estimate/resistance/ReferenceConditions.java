package sagbook.estimate.resistance;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import sagbook.evidence.StepWindow;
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
 * @param scale factor from the string's resistance at each window to that at 25 °C and mid charge
 * @param size size of the response in each window, 1 for the pooled one
 * @param logAtReference ln of the size at 25 °C and mid charge
 * @param logSd its standard deviation
 * @param activationEnergy kJ/mol
 * @param activationEnergySd kJ/mol
 */
record ReferenceConditions(
    double[] scale,
    double[] size,
    double logAtReference,
    double logSd,
    double activationEnergy,
    double activationEnergySd) {
  static final double GAS_CONSTANT = 8.314462618;
  private static final double REFERENCE_KELVIN = 298.15;
  private static final double PRIOR_KILOJOULE = 16;
  private static final double PRIOR_SD_KILOJOULE = 5;

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
   * @param size response size in each window, NaN where unusable
   * @param sizeSd its standard deviation
   * @param charge charge 0 to 1 in each window, NaN when unknown
   */
  static Optional<ReferenceConditions> fit(
      List<StepWindow> windows, double[] size, double[] sizeSd, double[] charge) {
    int n = windows.size();
    double[] temperature = new double[n];
    boolean[] use = new boolean[n];
    int used = 0;
    for (int w = 0; w < n; w++) {
      temperature[w] = Robust.median(windows.get(w).meanTemperatureC());
      use[w] =
          size[w] > 0.2
              && size[w] < 8
              && sizeSd[w] < 0.2 * size[w]
              && !Double.isNaN(temperature[w])
              && !(charge[w] < 0.18)
              && !(charge[w] > 0.93);
      used += use[w] ? 1 : 0;
    }
    if (used < 1) {
      return Optional.empty();
    }
    double[] huber = new double[n];
    Arrays.fill(huber, 1);
    double excess = 0.01;
    Ridge.Solution solution = new Ridge(4).solve();
    for (int pass = 0; pass < 6; pass++) {
      Ridge fit = new Ridge(4);
      fit.prior(1, PRIOR_KILOJOULE, PRIOR_SD_KILOJOULE);
      fit.prior(2, 0, 0.3);
      fit.prior(3, 0, 1.0);
      fit.prior(0, 0, 3);
      for (int w = 0; w < n; w++) {
        if (use[w]) {
          double relativeSd = sizeSd[w] / size[w];
          double variance = relativeSd * relativeSd + excess * excess;
          fit.observe(row(temperature[w], charge[w]), Math.log(size[w]), huber[w] / variance);
        }
      }
      solution = fit.solve();
      double[] standard = new double[used];
      double[] raw = new double[used];
      int k = 0;
      for (int w = 0; w < n; w++) {
        if (use[w]) {
          double residual = Math.log(size[w]) - solution.combined(row(temperature[w], charge[w]));
          double relativeSd = sizeSd[w] / size[w];
          double z = Math.abs(residual) / Math.hypot(relativeSd, excess);
          huber[w] = z <= 1.5 ? 1 : 1.5 / z;
          standard[k] = z;
          raw[k++] = residual;
        }
      }
      double spread = used > 8 ? 1.4826 * Robust.median(standard) : 1;
      if (spread > 1 && used > 8) {
        excess = Math.min(0.2, Math.hypot(excess, 0.7 * Robust.spread(raw)));
      }
    }
    double[] scale = new double[n];
    for (int w = 0; w < n; w++) {
      double there = solution.combined(row(temperature[w], charge[w]));
      scale[w] = Math.exp(there);
    }
    return Optional.of(
        new ReferenceConditions(
            scale, size, solution.value()[0], solution.sd(0), solution.value()[1], solution.sd(1)));
  }

  private static double[] row(double celsius, double charge) {
    double u = Double.isNaN(charge) ? 0 : charge - 0.5;
    double kelvinTerm = Double.isNaN(celsius) ? 0 : 1000 / GAS_CONSTANT * inverse(celsius);
    return new double[] {1, kelvinTerm, u, u * u};
  }
}
