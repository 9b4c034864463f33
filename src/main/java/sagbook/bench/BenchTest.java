package sagbook.bench;

import sagbook.model.BenchLog;
import sagbook.model.Estimate;

/**
 * What a bench test tells of one cell.
 *
 * <p>Capacity: the charge of a discharge at constant current, by the trapezoid, from the start of
 * the load to the first row at or below the end voltage. IEC 61960-3 and IEC 62620 ask for 0.2 It
 * (It: nominal capacity over an hour) from full; at another current the value is not the
 * standard's, so the current is said.
 *
 * <p>Resistance: {@code (U1 - U2) / (I2 - I1)}. IEC 61960-3: U1 after 10 s at I1 = 0.2 It, U2 after
 * 1 s at I2 = 1.0 It; IEC 62620 has the same form with other times and currents for each cell type
 * (from memory). A test with a single pulse from rest has I1 = 0 (the form of the USABC and INL
 * manuals); the time after the step is said, for values at different times can't be compared.
 *
 * @param name of the cell
 * @param capacityAh Ah; the interval is what the rounding of current and voltage leaves open
 * @param rateIt current of that discharge over It; NaN without one
 * @param milliohm mΩ; interval likewise
 * @param pulseS time after the step at which U2 was taken, s; NaN without a step
 * @param isTwoStep whether the step went from one load to a higher one, as the standards ask
 */
public record BenchTest(
    String name,
    Estimate capacityAh,
    double rateIt,
    Estimate milliohm,
    double pulseS,
    boolean isTwoStep) {
  /** A load from this share of It on. */
  private static final double LOAD_IT = 0.05;

  /** Current that counts as constant stays within this share. */
  private static final double CONSTANT = 0.05;

  /** A step of load from this share of It on. */
  private static final double STEP_IT = 0.3;

  private static final double FIRST_STAGE_S = 9;
  private static final double TWO_STEP_PULSE_S = 1;
  private static final double SINGLE_PULSE_S = 10;

  /**
   * Evaluates a test.
   *
   * @param nominalAh which makes It
   * @param endVoltage at which the cell counts as empty, V
   */
  public static BenchTest of(BenchLog log, double nominalAh, double endVoltage) {
    double[] load = load(log);
    Run best = Run.NONE;
    for (int r = 1; r < load.length; r++) {
      if (load[r] > LOAD_IT * nominalAh) {
        Run run = run(log, load, r, endVoltage);
        best = run.ampereHours() > best.ampereHours() ? run : best;
        r = run.last();
      }
    }
    Step step = step(log, load, nominalAh);
    return new BenchTest(
        log.name(),
        best.estimate(endVoltage),
        best.equals(Run.NONE) ? Double.NaN : best.meanA() / nominalAh,
        step.milliohm(),
        step.pulseS(),
        step.isTwoStep());
  }

  /** Discharge current, positive: the sign is told from how the voltage answers to steps. */
  private static double[] load(BenchLog log) {
    double sum = 0;
    for (int r = 1; r < log.timeS().length; r++) {
      sum +=
          (log.currentA()[r] - log.currentA()[r - 1]) * (log.voltageV()[r] - log.voltageV()[r - 1]);
    }
    double sign = sum > 0 ? -1 : 1;
    double[] load = new double[log.timeS().length];
    for (int r = 0; r < load.length; r++) {
      load[r] = sign * log.currentA()[r];
    }
    return load;
  }

  private record Run(int last, double ampereHours, double meanA, double lowestV, double stepAh) {
    static final Run NONE = new Run(0, 0, Double.NaN, Double.NaN, 0);

    Estimate estimate(double endVoltage) {
      if (this.equals(NONE)) {
        return Estimate.unknown("the test holds no discharge at constant current");
      }
      if (lowestV > endVoltage) {
        return Estimate.unknown(
            "the discharge stopped before the cell was down at its end voltage");
      }
      return new Estimate.Known(ampereHours, ampereHours - stepAh, ampereHours + stepAh);
    }
  }

  private static Run run(BenchLog log, double[] load, int from, double endVoltage) {
    double ampereHours = 0;
    double lowest = Double.POSITIVE_INFINITY;
    double last = 0;
    int r = from;
    boolean empty = false;
    while (r < load.length && Math.abs(load[r] - load[from]) <= CONSTANT * load[from]) {
      last = (load[r] + load[r - 1]) / 2 * (log.timeS()[r] - log.timeS()[r - 1]) / 3600;
      ampereHours += empty ? 0 : last;
      lowest = Math.min(lowest, log.voltageV()[r]);
      empty |= log.voltageV()[r] <= endVoltage;
      r++;
    }
    return new Run(r - 1, ampereHours, load[from], lowest, last);
  }

  private record Step(Estimate milliohm, double pulseS, boolean isTwoStep) {}

  /** The first step of the standards' form, or else the first from rest. */
  private static Step step(BenchLog log, double[] load, double nominalAh) {
    Step fromRest = new Step(Estimate.unknown("the test holds no step of load"), Double.NaN, false);
    for (int r = 1; r < load.length; r++) {
      boolean rises = load[r] - load[r - 1] > STEP_IT * nominalAh;
      boolean rest = Math.abs(load[r - 1]) < LOAD_IT * nominalAh;
      boolean known = fromRest.milliohm() instanceof Estimate.Known;
      if (rises && !rest && held(log, load, r - 1) >= FIRST_STAGE_S) {
        return at(log, load, r, TWO_STEP_PULSE_S, true);
      }
      if (rises && rest && !known && load[r - 1] > -LOAD_IT * nominalAh) {
        fromRest = at(log, load, r, SINGLE_PULSE_S, false);
      }
    }
    return fromRest;
  }

  /** How long the load had been as it is at a row, s. */
  private static double held(BenchLog log, double[] load, int row) {
    int r = row;
    while (r > 0 && Math.abs(load[r - 1] - load[row]) <= CONSTANT * load[row]) {
      r--;
    }
    return log.timeS()[row] - log.timeS()[r];
  }

  private static Step at(BenchLog log, double[] load, int first, double wantedS, boolean twoStep) {
    int r = first;
    while (r + 1 < load.length && log.timeS()[r] - log.timeS()[first - 1] < wantedS) {
      r++;
    }
    if (Math.abs(load[r] - load[first]) > CONSTANT * load[first]) {
      return new Step(
          Estimate.unknown("the step of load did not last long enough"), Double.NaN, twoStep);
    }
    double ampere = load[r] - load[first - 1];
    double milliohm = 1000 * (log.voltageV()[first - 1] - log.voltageV()[r]) / ampere;
    double open = 1000 * resolution(log.voltageV()) / ampere;
    return new Step(
        new Estimate.Known(milliohm, milliohm - open, milliohm + open),
        log.timeS()[r] - log.timeS()[first - 1],
        twoStep);
  }

  /** Smallest step that the voltages make, V; two of them rounded leave as much open. */
  private static double resolution(double[] values) {
    double least = Double.POSITIVE_INFINITY;
    for (int r = 1; r < values.length; r++) {
      double step = Math.abs(values[r] - values[r - 1]);
      least = step > 1e-6 ? Math.min(least, step) : least;
    }
    return Double.isFinite(least) ? least : 0;
  }
}
