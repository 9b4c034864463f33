package sagbook.estimate.resistance;

import java.util.Arrays;
import java.util.List;
import sagbook.estimate.response.ReducedWindow;
import sagbook.estimate.response.StringResponse;
import sagbook.evidence.ResponseBasis;
import sagbook.numeric.Robust;

/**
 * What the cells' answers are put against: the current, or without one the string's mean voltage.
 *
 * <p>A mean voltage goes on growing after a step, while what a joint adds stays: beside it a joint
 * fades and a worn cell does not, which tells the two apart. The mean also holds what the charge
 * moved does to the open-circuit voltage, in which a resistive cell has no larger share than the
 * others. And it is larger in the cold, a joint is not.
 *
 * @param joint what a joint adds to a cell's response, as a combination of the response's parts
 * @param jointScale by how much a joint counts in each window
 * @param curve what the open-circuit curve takes from a cell's share, likewise; empty with current
 * @param leastJoint the least that a joint may add, as a share of the string's resistance
 * @param leastSd spread between cells that no repetition shows
 * @param shapeDoubt by which share of what a joint adds it may be wrong for the shape taken, one
 *     standard deviation; what the joint has too much the slow part has too little
 * @param coldDoubt by which share of that the whole may be wrong at 25 °C
 */
record Drive(
    double[] joint,
    double[] jointScale,
    double[] curve,
    double leastJoint,
    double leastSd,
    double shapeDoubt,
    double coldDoubt) {
  /**
   * Time constant of the fading, s, beside the minute or two between the rows that are compared.
   * Common practice, no source.
   */
  private static final double FADES_S = 40;

  /**
   * What a joint has lost by then: the immediate part of a cell's response makes up two thirds of
   * that after a minute or two, give or take. Common practice, no source.
   */
  private static final double FADED = 0.35;

  private static final double FADED_SD = 0.15;

  /** Beyond this the charge moved is all that goes on growing, s. Common practice, no source. */
  private static final double CURVE_S = 640;

  /** No joint takes anything away, and sound ones are a tenth or so. Common practice, no source. */
  private static final double LEAST_JOINT = -0.15;

  /**
   * Spread between cells that no repetition shows; these two were set so that intervals hold the
   * truth on invented packs of a generator that shares no code with this project.
   */
  private static final double LEAST_SD_BY_CURRENT = 0.006;

  private static final double LEAST_SD_BY_VOLTAGE = 0.012;

  /** How far from 25 °C a string may be whose temperature was not logged, K. Common practice. */
  private static final double UNLOGGED_K = 10;

  private static final double KELVIN_25C = 298.15;

  /** In a log with current: what a joint adds is there at once and stays. */
  static Drive current(int windows, ResponseBasis basis) {
    return new Drive(
        immediate(basis), ones(windows), new double[0], LEAST_JOINT, LEAST_SD_BY_CURRENT, 0, 0);
  }

  /**
   * Without current, by the usual temperature law, as a month without current tells none. A cell
   * that answers by more than its share of the mean, and increasingly so, has no less of a joint
   * for that: joints there differ downwards by what they usually do.
   */
  static Drive voltage(List<ReducedWindow> windows, ResponseBasis basis) {
    double[] joint = immediate(basis);
    joint[basis.slow(FADES_S)] = -FADED;
    double[] curve = new double[basis.charge()];
    curve[basis.slow(CURVE_S)] = 1;
    double[] scale = ones(windows.size());
    double cold = 0;
    for (int w = 0; w < scale.length; w++) {
      double kelvin = Robust.median(windows.get(w).window().meanTemperatureC()) + 273.15;
      double inverse = 1 / kelvin - 1 / KELVIN_25C;
      if (Double.isNaN(inverse)) {
        cold += UNLOGGED_K / KELVIN_25C / KELVIN_25C * ReferenceConditions.PRIOR_KILOJOULE;
      } else {
        scale[w] = Math.exp(-perKelvin(ReferenceConditions.PRIOR_KILOJOULE) * inverse);
        cold += Math.abs(inverse) * ReferenceConditions.PRIOR_SD_KILOJOULE;
      }
    }
    double shapeDoubt = FADED_SD / FADED;
    double byLaw = perKelvin(cold / Math.max(1, scale.length));
    double byShape = shapeDoubt * (1 - Arrays.stream(scale).average().orElse(1));
    return new Drive(
        joint,
        scale,
        curve,
        -CellComparison.JOINTS_DIFFER,
        LEAST_SD_BY_VOLTAGE,
        shapeDoubt,
        Math.hypot(byLaw, byShape));
  }

  private static double perKelvin(double kilojoule) {
    return 1000 * kilojoule / ReferenceConditions.GAS_CONSTANT;
  }

  private static double[] immediate(ResponseBasis basis) {
    double[] joint = new double[basis.charge()];
    joint[basis.immediate()] = 1;
    return joint;
  }

  private static double[] ones(int n) {
    double[] ones = new double[n];
    Arrays.fill(ones, 1);
    return ones;
  }

  /** The same from a window on. */
  Drive from(int first) {
    return new Drive(
        joint,
        Arrays.copyOfRange(jointScale, first, jointScale.length),
        curve,
        leastJoint,
        leastSd,
        shapeDoubt,
        coldDoubt);
  }

  /** What one unit of a joint adds at the pulse time, as a share of the string's response there. */
  double jointShare(StringResponse response, double pulseS) {
    double sum = 0;
    double[] at = response.basis().weightsAt(pulseS);
    for (int i = 0; i < joint.length; i++) {
      sum += joint[i] * at[i];
    }
    return sum / response.at(pulseS);
  }

  /**
   * The three combinations of the basis that explain a cell in one window: the string's response,
   * what a joint adds, and with current what a board adds that is read a second later, without what
   * the open-circuit curve takes.
   *
   * @param scale size of the string's response there
   */
  double[][] parts(StringResponse response, double scale, int window) {
    double[] shape = times(scale, response.coefficients());
    double[] aside = curve.length > 0 ? curve : rate(shape, response.basis().tauS());
    return new double[][] {shape, times(jointScale[window], joint), aside};
  }

  private static double[] times(double factor, double[] values) {
    return Arrays.stream(values).map(v -> factor * v).toArray();
  }

  /** What a second later adds to a response of this shape: its slow parts have built up more. */
  private static double[] rate(double[] shape, double[] tauS) {
    double[] rate = new double[shape.length];
    for (int k = 0; k < tauS.length; k++) {
      rate[0] += shape[1 + k] / tauS[k];
      rate[1 + k] = -shape[1 + k] / tauS[k];
    }
    return rate;
  }
}
