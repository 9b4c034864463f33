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
 * @param curve what the open-circuit curve takes from a cell's share, likewise; empty with current
 * @param leastSd spread between cells that no repetition shows
 * @param fadingSeen whether rows are close enough for a joint's fading to show
 * @param cold logarithm of how much larger the string's response is in each window than at 25 °C,
 *     by the usual law; NaN where no temperature was logged, 0 with current
 * @param asideSd prior width of what stands beside scale and joint: a delay, s, or the curve's
 *     share
 */
record Drive(
    double[] joint,
    double[] curve,
    double leastSd,
    boolean fadingSeen,
    double[] cold,
    double asideSd) {
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

  /**
   * Share of the fading that lies between the pulse time and what rows of ten seconds show: a fifth
   * is over after 10 s, eight tenths after the minute that their answers are old on average.
   */
  private static final double AHEAD = 0.55;

  /** Beyond this the charge moved is all that goes on growing, s. Common practice, no source. */
  private static final double CURVE_S = 640;

  /** How much the curve may take, one standard deviation. Common practice, no source. */
  private static final double CURVE_SD = 0.5;

  /** No joint takes anything away, and sound ones are a tenth or so. Common practice, no source. */
  private static final double LEAST_JOINT = -0.15;

  /** How wide the prior of a joint that is let go is over what was found of it. Common practice. */
  private static final double LOOSE_JOINT = 2;

  /**
   * Spread between cells that no repetition shows; these two were set so that intervals hold the
   * truth on invented packs of a generator that shares no code with this project.
   */
  private static final double LEAST_SD_BY_CURRENT = 0.006;

  private static final double LEAST_SD_BY_VOLTAGE = 0.012;

  /** How far from 25 °C a string may be whose temperature was not logged, K. Common practice. */
  private static final double UNLOGGED_K = 10;

  private static final double USUAL_CELSIUS = 25;

  /** In a log with current: what a joint adds is there at once and stays. */
  static Drive current(int windows, StringResponse response) {
    return new Drive(
        immediate(response.basis()),
        new double[0],
        LEAST_SD_BY_CURRENT,
        true,
        new double[windows],
        response.lag().beyondSdS());
  }

  /** Without current, by the usual temperature law, as a month without current tells none. */
  static Drive voltage(List<ReducedWindow> windows, ResponseBasis basis, boolean fadingSeen) {
    double[] joint = immediate(basis);
    joint[basis.slow(FADES_S)] = -FADED;
    double[] curve = new double[basis.charge()];
    curve[basis.slow(CURVE_S)] = 1;
    double[] cold =
        windows.stream()
            .mapToDouble(w -> Robust.median(w.window().meanTemperatureC()))
            .map(
                celsius ->
                    ReferenceConditions.PRIOR_KILOJOULE * ReferenceConditions.perKilojoule(celsius))
            .toArray();
    return new Drive(joint, curve, LEAST_SD_BY_VOLTAGE, fadingSeen, cold, CURVE_SD);
  }

  private boolean isVoltage() {
    return curve.length > 0;
  }

  private static double[] immediate(ResponseBasis basis) {
    double[] joint = new double[basis.charge()];
    joint[basis.immediate()] = 1;
    return joint;
  }

  /** Mean of the cold in some windows, 0 where none was logged. */
  double cold(List<Integer> windows) {
    return windows.stream()
        .mapToDouble(w -> cold[w])
        .filter(x -> !Double.isNaN(x))
        .average()
        .orElse(0);
  }

  /** The same from a window on. */
  Drive from(int first) {
    return new Drive(
        joint, curve, leastSd, fadingSeen, Arrays.copyOfRange(cold, first, cold.length), asideSd);
  }

  /**
   * The least that a joint may add, as a share of the string's resistance. Beside a mean voltage,
   * which holds a share of every joint, that depends: a cell that answers by more than its share,
   * and increasingly so, has no less of a joint for that, while beside a cell with a bad joint all
   * others seem to have less than none.
   *
   * @param slow scale of the cell's whole response
   */
  double leastJoint(double slow) {
    if (!isVoltage()) {
      return LEAST_JOINT;
    }
    return slow > 1 ? -CellComparison.JOINTS_DIFFER : Double.NEGATIVE_INFINITY;
  }

  /**
   * Prior width of a joint that seems to add so much, as a share of the string's resistance. With a
   * current joints scatter as Student's t with one degree of freedom does, whose weight is that of
   * a normal distribution with the mean of both squares. Beside a mean voltage rows show less of a
   * joint than it adds, and a bad one is let go sooner.
   */
  double jointSd(double joint) {
    return isVoltage()
        ? looseJointSd(joint)
        : Math.hypot(CellComparison.JOINTS_DIFFER, joint) / Math.sqrt(2);
  }

  /**
   * The same where it is told whether a joint or its cell resists: what is found widens it twice as
   * fast, so that of a large joint next to nothing is lost, while a small one is still held likely
   * none. With nothing held likely, joints come out a fifth less exactly.
   */
  double looseJointSd(double joint) {
    return Math.hypot(CellComparison.JOINTS_DIFFER, LOOSE_JOINT * joint);
  }

  /** By how much the slow part may be wrong for the shape of the fading, standard deviation. */
  double shapeSd(double ohmic) {
    return isVoltage() ? FADED_SD / FADED * Math.abs(ohmic) : 0;
  }

  /**
   * By how much the whole may be wrong at the pulse time and 25 °C, standard deviation: for the
   * law, for the shape of the fading, and where none shows for not knowing what part of it is a
   * joint's.
   *
   * @param scale windows with 0 are left out
   * @param ohmic what the joint adds
   * @param whole resistance over the string's
   */
  double wholeSd(double[] scale, double ohmic, double whole) {
    if (!isVoltage()) {
      return 0;
    }
    double law = ReferenceConditions.PRIOR_SD_KILOJOULE / ReferenceConditions.PRIOR_KILOJOULE;
    double unlogged =
        Math.abs(
            ReferenceConditions.PRIOR_KILOJOULE
                * ReferenceConditions.perKilojoule(USUAL_CELSIUS - UNLOGGED_K));
    double byLaw = 0;
    double growth = 0;
    int used = 0;
    for (int w = 0; w < scale.length; w++) {
      if (scale[w] > 0) {
        boolean logged = !Double.isNaN(cold[w]);
        byLaw += logged ? law * Math.abs(cold[w]) : unlogged;
        growth += Math.expm1(logged ? Math.abs(cold[w]) : unlogged);
        used++;
      }
    }
    if (used == 0) {
      return 0;
    }
    double told = Math.abs(ohmic) * Math.hypot(byLaw, FADED_SD / FADED * growth) / used;
    double untold = fadingSeen ? 0 : growth / 2 * Math.abs(whole - 1 - ohmic) / used;
    return Math.hypot(Math.hypot(told, untold), FADED_SD * AHEAD * ohmic);
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
    return new double[][] {
      shape, times(Double.isNaN(cold[window]) ? 1 : Math.exp(-cold[window]), joint), aside
    };
  }

  /**
   * What each cell shows beyond the others, as a combination of the basis, for being read later
   * than they are by as much as the rows tell; empty where they don't.
   *
   * @param scale size of the string's response there
   */
  double[][] beyond(StringResponse response, double scale) {
    return Arrays.stream(response.lag().beyondS())
        .mapToObj(lateS -> response.grownBy(lateS, scale))
        .toArray(double[][]::new);
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
