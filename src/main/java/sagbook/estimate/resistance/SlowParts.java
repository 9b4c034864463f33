package sagbook.estimate.resistance;

import java.util.Arrays;
import java.util.List;
import sagbook.estimate.response.ReducedWindow;
import sagbook.estimate.response.StringResponse;
import sagbook.numeric.Ridge;

/**
 * By how much more than the immediate part the slow parts of the string's response grow in the
 * cold. A window's size weighs them as its pairs of rows do, which are up to minutes apart, and so
 * tells the temperature law of an answer that is older than the pulse: of measured and published
 * parts each has an activation energy of its own (charge transfer alone has 34 to 41 kJ/mol, whole
 * cells 11 to 22).
 *
 * <p>What is left of each window once its size is taken off is put against the slow parts, less
 * what the size takes up of them: a constant, a share that goes with charge, and one that goes with
 * {@code (1/T - 1/T0)/Rg}, which is the excess of their activation energy. Weighted least squares
 * with Huber's weights (Huber 1964) and normal priors.
 *
 * @param moreKilojoule excess of the slow parts' activation energy, kJ/mol
 * @param moreKilojouleSd its standard deviation, kJ/mol
 * @param shareOfSize share of the slow parts in the size of a window, mean over the windows by how
 *     well each tells it
 * @param slow coefficients of the slow parts alone
 */
record SlowParts(double moreKilojoule, double moreKilojouleSd, double shareOfSize, double[] slow) {
  /**
   * The excess before the data speak, one standard deviation: the difference between the two ranges
   * above; a measured cell of another kind has -4 (Leaf cell, 1 to 30 s pulses at 10 and 25 °C, Oak
   * Ridge National Laboratory).
   */
  private static final double MORE_SD = 15;

  /** What the slow parts' share is off by as a whole, and over all charge. Common practice. */
  private static final double SHARE_SD = 1;

  private static final double BY_CHARGE_SD = 0.5;

  /** What it is off by in a window to itself. Common practice, no source. */
  private static final double OF_A_WINDOW = 0.1;

  /** What is peculiar to a month's loads, its windows share. */
  private static final double ALIKE = CellShare.STRETCHES_ARE_ALIKE;

  private static final double USUAL = 1.5;
  private static final int PASSES = 8;

  private static final int SHARE = 0;
  private static final int BY_CHARGE = 1;
  private static final int MORE = 2;

  /**
   * Tells the excess from windows of mid charge.
   *
   * @param response whose shape the windows' sizes were found with
   * @param perKilojoule mean over the windows of what their logarithm grows by for each kJ/mol
   */
  static SlowParts of(
      List<ReducedWindow> windows,
      StringResponse response,
      WindowSizes sizes,
      double perKilojoule) {
    double[] shape = response.coefficients();
    double[] slow = shape.clone();
    slow[response.basis().immediate()] = 0;
    slow[response.basis().hysteresis()] = 0;
    int n = sizes.count();
    double[][] rows = new double[n][];
    double[] left = new double[n];
    double[] variance = new double[n];
    double share = 0;
    double weights = 0;
    for (int i = 0; i < n; i++) {
      ReducedWindow window = windows.get(sizes.window()[i]);
      double whole = window.product(shape, shape);
      double taken = window.product(slow, shape) / whole;
      double own = window.product(slow, slow) - taken * taken * whole;
      double size = Math.exp(sizes.log()[i]);
      left[i] =
          ReducedWindow.product(slow, window.meanCross(), slow.length)
              - taken * ReducedWindow.product(shape, window.meanCross(), shape.length);
      double full = size * own;
      double colder = ReferenceConditions.perKilojoule(sizes.celsius()[i]) - perKilojoule;
      rows[i] = new double[] {full, full * sizes.fromMid()[i], full * colder};
      double noise = sizes.sd()[i] * size;
      variance[i] = noise * noise * whole * own + OF_A_WINDOW * OF_A_WINDOW * full * full;
      double weight = 1 / (sizes.sd()[i] * sizes.sd()[i]);
      share += weight * taken;
      weights += weight;
    }
    Ridge.Solution solution = solve(rows, left, variance);
    return new SlowParts(solution.value()[MORE], solution.sd(MORE), share / weights, slow);
  }

  private static Ridge.Solution solve(double[][] rows, double[] left, double[] variance) {
    double[] counts = new double[left.length];
    Arrays.fill(counts, 1);
    Ridge.Solution solution = weighed(rows, left, variance, counts);
    for (int pass = 1; pass < PASSES; pass++) {
      for (int i = 0; i < left.length; i++) {
        double z = Math.abs(left[i] - solution.combined(rows[i])) / Math.sqrt(variance[i]);
        counts[i] = z <= USUAL ? 1 : USUAL / z;
      }
      solution = weighed(rows, left, variance, counts);
    }
    return solution;
  }

  private static Ridge.Solution weighed(
      double[][] rows, double[] left, double[] variance, double[] counts) {
    Ridge fit = new Ridge(3);
    for (int i = 0; i < left.length; i++) {
      // Without slow parts, or where they answer as the whole does, a window tells nothing.
      if (variance[i] > 0) {
        fit.observe(rows[i], left[i], counts[i] / (ALIKE * ALIKE * variance[i]));
      }
    }
    fit.prior(SHARE, 0, SHARE_SD);
    fit.prior(BY_CHARGE, 0, BY_CHARGE_SD);
    fit.prior(MORE, 0, MORE_SD);
    return fit.solve();
  }

  /**
   * By how much the activation energy of the answer at an age exceeds that of the windows' sizes,
   * over {@link #moreKilojoule}.
   */
  double shareBeyondSize(StringResponse response, double ageS) {
    double[] weights = response.basis().weightsAt(ageS);
    double part = 0;
    for (int k = 0; k < slow.length; k++) {
      part += weights[k] * slow[k];
    }
    return part / response.at(ageS) - shareOfSize;
  }
}
