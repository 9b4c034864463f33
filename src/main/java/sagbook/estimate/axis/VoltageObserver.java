package sagbook.estimate.axis;

import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import sagbook.estimate.curve.ElectrodePair;
import sagbook.evidence.ThinnedRecord;
import sagbook.model.Chemistry;
import sagbook.numeric.EvenTable;
import sagbook.numeric.Robust;

/**
 * Stands in for a current that was not logged: what the string's voltage lies above its
 * open-circuit curve drives the charge up, what it lies below drives it down (a first-order
 * observer, Luenberger 1964). The result is a charge axis good to a tenth or so of any distance
 * along it, enough to compare neighbours, never good for ampere-hours.
 */
public final class VoltageObserver {
  /**
   * Resistance some minutes after a step times capacity, V·h: alike for cells of all sizes, since
   * resistance falls as capacity grows. Common practice, no source.
   */
  private static final double OHM_AMPERE_HOURS = 0.11;

  private static final double HYSTERESIS_SHARE = 0.04;

  /** Places along the charge axis over which the string's time is counted. */
  private static final int PLACES = 50;

  /** Steps from one published curve to the other. */
  private static final int BETWEEN = 10;

  /** Time within which a steep curve brings the observer to where the string is, h. */
  private static final double HELD_WITHIN_H = 0.25;

  private final ThinnedRecord record;
  private final boolean flat;
  private final double nominalAh;
  private final Course course;

  private VoltageObserver(ThinnedRecord record, boolean flat, double nominalAh, Course course) {
    this.record = record;
    this.flat = flat;
    this.nominalAh = nominalAh;
    this.course = course;
  }

  /** Resistance that goes with {@link #observed}, ohm. */
  public static double slowOhm(double nominalAh) {
    return OHM_AMPERE_HOURS / nominalAh;
  }

  /**
   * Observers of one string, to be asked in turn. A flat curve lets the string's voltages choose
   * the one among those between the first and the last. Sloping curves lead all to an axis that is
   * nearly right, and the least moved is not always the best, so it comes second to the most usual.
   *
   * @param pairs open-circuit curves that may hold, the most usual first
   * @param nominalAh nominal capacity, Ah
   */
  public static List<VoltageObserver> of(
      ThinnedRecord record, List<ElectrodePair> pairs, double nominalAh) {
    boolean flat = pairs.get(0).chemistry() == Chemistry.LFP;
    Follower string =
        new Follower(record, AxisBuilder.restingVoltage(record, 0), flat ? 0.009 : 0.003);
    List<EvenTable> published = pairs.stream().map(VoltageObserver::table).toList();
    List<Course> courses =
        (flat ? between(published) : published).parallelStream().map(string::follow).toList();
    return Stream.of(courses.get(0), mostForLeast(courses))
        .skip(flat ? 1 : 0)
        .distinct()
        .map(course -> new VoltageObserver(record, flat, nominalAh, course))
        .toList();
  }

  /** The record with a current and a charge counter made up from its voltages. */
  public ThinnedRecord observed() {
    float[] current = new float[record.rows()];
    double[] charge = new double[record.rows()];
    for (int r = 0; r < record.rows(); r++) {
      current[r] = (float) (course.rate[r] * nominalAh);
      charge[r] = course.charge[r] * nominalAh;
    }
    return new ThinnedRecord(
        record.timeS(),
        record.seconds(),
        record.segment(),
        current,
        charge,
        record.voltageV(),
        record.temperatureC(),
        record.bleedFraction());
  }

  /**
   * The same record without the voltages of rows whose place on the made-up axis means little:
   * while the string charges along the flat part the observer runs ahead, and only where the curve
   * is steep does the voltage hold it. What is left, above all the discharges, follows one axis. On
   * a sloping curve the voltage holds it everywhere, and all rows stay.
   */
  public ThinnedRecord trusted() {
    ThinnedRecord observed = observed();
    if (!flat) {
      return observed;
    }
    float[][] trusted = new float[observed.cells()][];
    Arrays.setAll(trusted, c -> observed.voltageV()[c].clone());
    for (int r = 0; r < observed.rows(); r++) {
      double hours = OHM_AMPERE_HOURS / Math.max(1e-9, course.curve.slopeAt(course.charge[r]));
      if (course.rate[r] > 0 && hours > HELD_WITHIN_H) {
        for (float[] cell : trusted) {
          cell[r] = Float.NaN;
        }
      }
    }
    return new ThinnedRecord(
        observed.timeS(),
        observed.seconds(),
        observed.segment(),
        observed.currentA(),
        observed.chargeAh(),
        trusted,
        observed.temperatureC(),
        observed.bleedFraction());
  }

  /**
   * What the string did by one curve.
   *
   * @param curve open-circuit voltage over charge 0 to 1, V
   * @param charge at each row, 0 to 1
   * @param rate of charging at each row, 1/h
   * @param movedPerSpread charge moved over how many places it spread the time over
   */
  private record Course(EvenTable curve, double[] charge, double[] rate, double movedPerSpread) {}

  /** Curves in even steps from the first to the last of those published. */
  private static List<EvenTable> between(List<EvenTable> published) {
    EvenTable first = published.get(0);
    double[] last = published.get(published.size() - 1).values();
    return IntStream.rangeClosed(0, published.size() > 1 ? BETWEEN : 0)
        .mapToObj(
            k -> {
              double[] volt = first.values().clone();
              Arrays.setAll(volt, i -> volt[i] + (double) k / BETWEEN * (last[i] - volt[i]));
              return new EvenTable(first.start(), first.step(), volt);
            })
        .toList();
  }

  /**
   * The course along the curve by which the string spread its time over most charge while least was
   * moved, the first of equals. Makers' flat parts differ by some 30 mV, as much as one lies above
   * the other. By a curve that lies too low or too high the string rests on the knees and the step,
   * since the flat parts are passed over by what its rest voltage differs there, or it is driven to
   * and fro by currents that no house draws.
   */
  private static Course mostForLeast(List<Course> courses) {
    return Collections.min(courses, Comparator.comparingDouble(Course::movedPerSpread));
  }

  /**
   * Follows one string's voltages.
   *
   * @param voltage of the string at rest, as a mean cell's, at each row, V
   */
  private record Follower(ThinnedRecord record, double[] voltage, double hysteresisV) {
    Course follow(EvenTable curve) {
      int rows = voltage.length;
      double[] charge = new double[rows];
      double[] rates = new double[rows];
      double[] secondsAt = new double[PLACES];
      double charged = 0;
      double z = start(curve, voltage);
      double h = 0;
      for (int r = 0; r < rows; r++) {
        double seconds = r == 0 ? 0 : record.timeS()[r] - record.timeS()[r - 1];
        boolean follows = r > 0 && record.segment()[r] == record.segment()[r - 1];
        double v = Double.isNaN(voltage[r]) ? curve.at(z) + h * hysteresisV : voltage[r];
        int parts = (int) Math.max(1, Math.ceil(seconds / 30));
        double hours = follows ? seconds / 3600 / parts : 0;
        for (int k = 0; k < parts; k++) {
          rates[r] = (v - curve.at(z) - h * hysteresisV) / OHM_AMPERE_HOURS;
          double slope = Math.max(0, curve.slopeAt(z)) / OHM_AMPERE_HOURS;
          // Implicit in the slope, so that the knees don't make it ring.
          double moved = rates[r] * hours / (1 + slope * hours);
          z = Math.max(-0.05, Math.min(1.02, z + moved));
          h += (Math.signum(moved) - h) * (1 - Math.exp(-Math.abs(moved) / HYSTERESIS_SHARE));
          charged += Math.abs(moved);
        }
        charge[r] = z;
        secondsAt[(int) Math.max(0, Math.min(PLACES - 1, z * PLACES))] += follows ? seconds : 0;
      }
      return new Course(curve, charge, rates, charged / spread(secondsAt));
    }
  }

  /** How many equal shares the time was spread over: the exponential of its entropy (Hill 1973). */
  private static double spread(double[] secondsAt) {
    double all = Arrays.stream(secondsAt).sum();
    double entropy =
        Arrays.stream(secondsAt).filter(s -> s > 0).map(s -> -s / all * Math.log(s / all)).sum();
    return Math.exp(entropy);
  }

  private static double start(EvenTable curve, double[] voltage) {
    double first = Robust.median(Arrays.copyOf(voltage, Math.min(voltage.length, 30)));
    double z = 0.5;
    for (double trial = 0; trial <= 1; trial += 0.005) {
      if (curve.at(trial) <= first) {
        z = trial;
      }
    }
    return z;
  }

  private static EvenTable table(ElectrodePair pair) {
    int n = 500;
    double[] values = new double[n + 1];
    for (int i = 0; i <= n; i++) {
      values[i] = pair.openCircuit((double) i / n);
    }
    return new EvenTable(0, 1.0 / n, values);
  }
}
