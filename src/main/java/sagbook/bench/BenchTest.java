package sagbook.bench;

import java.util.List;
import sagbook.model.BenchLog;
import sagbook.model.Estimate;
import sagbook.wording.Words;

/**
 * What a bench test tells of one cell.
 *
 * <p>Capacity: the charge of a discharge at constant current, by the trapezoid, from the start of
 * the load to the first row at or below the end voltage. IEC 61960-3 and IEC 62620 ask for 0.2 It
 * (It: nominal capacity over an hour) from full; at another current the value is not the
 * standard's, so the current is said.
 *
 * <p>Resistance: {@code (U1 - U2) / (I2 - I1)}, by the {@link Form} that the log allows. The time
 * after the step is said, for values at different times can't be compared.
 *
 * @param name of the cell
 * @param capacityAh Ah; the interval is what the rounding of current and voltage leaves open
 * @param rateIt current of that discharge over It; NaN without one
 * @param milliohm mΩ; interval likewise
 * @param pulseS time after the step at which U2 was taken, s; NaN without a step
 * @param form which definition the step allows
 * @param fromIt current before the step over It; NaN without a step
 * @param toIt current after it over It; NaN without a step
 */
public record BenchTest(
    String name,
    Estimate capacityAh,
    double rateIt,
    Estimate milliohm,
    double pulseS,
    Form form,
    double fromIt,
    double toIt) {
  private static final Words WORDS = Words.english();

  /** Definitions of resistance by a step of load. */
  public enum Form {
    /** 0.2 It for 10 s, then 1.0 It, read after 1 s (vendors' notes on the standard). */
    IEC_61960_3("IEC 61960-3", 9, 1),
    /** 0.2 It for 30 s, then the cell class's rate (M: 1.0 It), read after 5 s (from memory). */
    IEC_62620("IEC 62620", 29, 5),
    /** A single pulse from rest, as in the manuals of the USABC and INL, read after 10 s. */
    FROM_REST("a pulse from rest", 0, 10);

    private final String words;
    private final double firstStageS;
    private final double readS;

    Form(String words, double firstStageS, double readS) {
      this.words = words;
      this.firstStageS = firstStageS;
      this.readS = readS;
    }

    /** What it is called. */
    public String words() {
      return words;
    }
  }

  /** Currents of both two-step forms, It, and how far off they still count. */
  private static final double FIRST_IT = 0.2;

  private static final double SECOND_IT = 1.0;
  private static final double NEAR = 0.25;

  /** Whether the currents of a two-step form are those that the standards ask for. */
  public boolean isAtTheStandardsCurrents() {
    return Math.abs(fromIt - FIRST_IT) <= NEAR * FIRST_IT
        && Math.abs(toIt - SECOND_IT) <= NEAR * SECOND_IT;
  }

  /** A load from this share of It on. */
  private static final double LOAD_IT = 0.05;

  /** Current that counts as constant stays within this share. */
  private static final double CONSTANT = 0.05;

  /** A step of load from this share of It on. */
  private static final double STEP_IT = 0.3;

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
        step.form(),
        step.fromA() / nominalAh,
        step.toA() / nominalAh);
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
        return Estimate.unknown(WORDS.say("bench.no-discharge"));
      }
      if (lowestV > endVoltage) {
        return Estimate.unknown(WORDS.say("bench.stopped"));
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

  private record Step(Estimate milliohm, double pulseS, Form form, double fromA, double toA) {
    static Step none(String reason) {
      return new Step(Estimate.unknown(reason), Double.NaN, Form.FROM_REST, Double.NaN, Double.NaN);
    }
  }

  /** The first step of the standards' form, or else the first from rest. */
  private static Step step(BenchLog log, double[] load, double nominalAh) {
    Step fromRest = Step.none(WORDS.say("bench.no-step"));
    for (int r = 1; r < load.length; r++) {
      boolean rises = load[r] - load[r - 1] > STEP_IT * nominalAh;
      boolean rest = Math.abs(load[r - 1]) < LOAD_IT * nominalAh;
      boolean known = fromRest.milliohm() instanceof Estimate.Known;
      if (rises && !rest && load[r - 1] > 0) {
        for (Form form : List.of(Form.IEC_62620, Form.IEC_61960_3)) {
          if (held(log, load, r - 1) >= form.firstStageS && lasts(log, load, r) >= form.readS) {
            return at(log, load, r, form);
          }
        }
      }
      if (rises && rest && !known && load[r - 1] > -LOAD_IT * nominalAh) {
        fromRest = at(log, load, r, Form.FROM_REST);
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

  /** How long a load lasts from the row before its first one on, s. */
  private static double lasts(BenchLog log, double[] load, int first) {
    return log.timeS()[lastOf(load, first)] - log.timeS()[first - 1];
  }

  private static int lastOf(double[] load, int first) {
    int r = first;
    while (r + 1 < load.length && Math.abs(load[r + 1] - load[first]) <= CONSTANT * load[first]) {
      r++;
    }
    return r;
  }

  /** Read at the form's time, or at the end of a pulse that was shorter. */
  private static Step at(BenchLog log, double[] load, int first, Form form) {
    int last = lastOf(load, first);
    int r = first;
    while (r < last && log.timeS()[r] - log.timeS()[first - 1] < form.readS) {
      r++;
    }
    double ampere = load[r] - load[first - 1];
    double milliohm = 1000 * (log.voltageV()[first - 1] - log.voltageV()[r]) / ampere;
    double open = 1000 * resolution(log.voltageV()) / ampere;
    return new Step(
        new Estimate.Known(milliohm, milliohm - open, milliohm + open),
        log.timeS()[r] - log.timeS()[first - 1],
        form,
        Math.max(0, load[first - 1]),
        load[r]);
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
