package sagbook.evidence;

import java.util.Arrays;

/**
 * The functions of time out of which a cell's response to a current step is built: an immediate
 * part, and parts {@code 1 - exp(-t/tau)} that build up with given time constants. Any sum of
 * exponentials between them is followed closely, so the real time constants need not be known.
 *
 * <p>Regressor 0 is the immediate part, 1 and on the slow parts, then hysteresis (which turns round
 * as charge moves the other way, and would pass for a slow part in a log of few rows), the last the
 * charge moved (the open-circuit voltage's slope).
 *
 * @param tauS time constants, s, rising
 */
public record ResponseBasis(double[] tauS) {
  /** From this time between rows on, it does not matter when a board was read, s. */
  public static final double SLOW_CADENCE_S = 30;

  /** Time constants, s: any between two of them is followed closely. */
  private static final double[] ALL_S = {2.5, 5, 10, 20, 40, 80, 160, 320, 640};

  /** Time constants that a log of this cadence can tell apart, s. */
  static ResponseBasis forCadence(double cadenceS) {
    double[] kept =
        Arrays.stream(ALL_S)
            .filter(tau -> tau >= (cadenceS < SLOW_CADENCE_S ? 1 : 0.5) * cadenceS)
            .toArray();
    return new ResponseBasis(kept.length == 0 ? new double[] {3 * cadenceS} : kept);
  }

  /** Number of regressors. */
  public int size() {
    return tauS.length + 3;
  }

  /** Index of the immediate regressor. */
  public int immediate() {
    return 0;
  }

  /** Index of the hysteresis regressor. */
  public int hysteresis() {
    return tauS.length + 1;
  }

  /** Index of the charge regressor. */
  public int charge() {
    return tauS.length + 2;
  }

  /** Index of the slow part whose time constant is nearest to one, s. */
  public int slow(double aboutS) {
    int nearest = 0;
    for (int k = 1; k < tauS.length; k++) {
      if (Math.abs(Math.log(tauS[k] / aboutS)) < Math.abs(Math.log(tauS[nearest] / aboutS))) {
        nearest = k;
      }
    }
    return 1 + nearest;
  }

  /**
   * Weights that turn fitted coefficients into the response this long after a step.
   *
   * @param ageS time since the step, s
   */
  public double[] weightsAt(double ageS) {
    double[] weights = new double[size()];
    weights[0] = 1;
    for (int k = 0; k < tauS.length; k++) {
      weights[1 + k] = 1 - Math.exp(-ageS / tauS[k]);
    }
    return weights;
  }
}
