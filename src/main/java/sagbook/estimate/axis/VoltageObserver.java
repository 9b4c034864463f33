package sagbook.estimate.axis;

import java.util.Arrays;
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

  /** Time within which a steep curve brings the observer to where the string is, h. */
  private static final double HELD_WITHIN_H = 0.25;

  private VoltageObserver() {}

  /** Resistance that goes with {@link #observed}, ohm. */
  public static double slowOhm(double nominalAh) {
    return OHM_AMPERE_HOURS / nominalAh;
  }

  /**
   * The record with a current and a charge counter made up from its voltages.
   *
   * @param pair the cells' open-circuit curve
   * @param nominalAh nominal capacity, Ah
   */
  public static ThinnedRecord observed(ThinnedRecord record, ElectrodePair pair, double nominalAh) {
    double[] voltage = AxisBuilder.restingVoltage(record, 0);
    EvenTable curve = table(pair);
    double hysteresisV = pair.chemistry() == Chemistry.LFP ? 0.009 : 0.003;
    int rows = record.rows();
    float[] current = new float[rows];
    double[] charge = new double[rows];
    double z = start(curve, voltage);
    double h = 0;
    for (int r = 0; r < rows; r++) {
      double seconds = r == 0 ? 0 : record.timeS()[r] - record.timeS()[r - 1];
      boolean follows = r > 0 && record.segment()[r] == record.segment()[r - 1];
      double v = Double.isNaN(voltage[r]) ? curve.at(z) + h * hysteresisV : voltage[r];
      int parts = (int) Math.max(1, Math.ceil(seconds / 30));
      double hours = follows ? seconds / 3600 / parts : 0;
      double rate = 0;
      for (int k = 0; k < parts; k++) {
        rate = (v - curve.at(z) - h * hysteresisV) / OHM_AMPERE_HOURS;
        double slope = Math.max(0, curve.slopeAt(z)) / OHM_AMPERE_HOURS;
        // Implicit in the slope, so that the knees don't make it ring.
        double moved = rate * hours / (1 + slope * hours);
        z = Math.max(-0.05, Math.min(1.02, z + moved));
        h += (Math.signum(moved) - h) * (1 - Math.exp(-Math.abs(moved) / HYSTERESIS_SHARE));
      }
      current[r] = (float) (rate * nominalAh);
      charge[r] = z * nominalAh;
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
   *
   * @param observed by {@link #observed}
   */
  public static ThinnedRecord trusted(
      ThinnedRecord observed, ElectrodePair pair, double nominalAh) {
    if (pair.chemistry() != Chemistry.LFP) {
      return observed;
    }
    EvenTable curve = table(pair);
    int rows = observed.rows();
    float[][] voltage = new float[observed.cells()][];
    for (int c = 0; c < voltage.length; c++) {
      voltage[c] = observed.voltageV()[c].clone();
    }
    for (int r = 0; r < rows; r++) {
      double hours =
          OHM_AMPERE_HOURS / Math.max(1e-9, curve.slopeAt(observed.chargeAh()[r] / nominalAh));
      if (observed.currentA()[r] > 0 && hours > HELD_WITHIN_H) {
        for (float[] cell : voltage) {
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
        voltage,
        observed.temperatureC(),
        observed.bleedFraction());
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
