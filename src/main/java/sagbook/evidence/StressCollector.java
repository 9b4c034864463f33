package sagbook.evidence;

import java.util.Arrays;
import sagbook.model.Channels;
import sagbook.model.Limits;
import sagbook.model.SampleBlock;

/** Adds up {@link Stress} row by row. */
final class StressCollector {
  /**
   * Below this share of nominal capacity an hour a current is noise. Common practice, no source.
   */
  private static final double NOISE = 0.005;

  private final double noiseA;
  private final Channels channels;
  private final Limits limits;
  private final int cells;
  private double hours;
  private double chargedAh;
  private double dischargedAh;
  private double chargedKWh;
  private double dischargedKWh;
  private double highestDischargeA;
  private double lastCurrentA = Double.NaN;
  private final double[] hoursAboveMax;
  private final double[] hoursBelowMin;
  private final double[] highestVoltage;
  private final double[] lowestVoltage;
  private final double[] hoursChargingCold;
  private final double[] hoursChargingHot;
  private final double[] hoursHot;
  private final double[] lowestTemperature;
  private final double[] highestTemperature;
  private final double[] temperatureHours;
  private final double[] temperatureSum;
  private final double[] bledAh;
  private final double[] lastVoltage;

  /**
   * Adds up for one bank.
   *
   * @param nominalAh nominal capacity, by which a current is told from noise, Ah
   */
  StressCollector(Channels channels, Limits limits, double nominalAh) {
    this.noiseA = NOISE * nominalAh;
    this.channels = channels;
    this.limits = limits;
    this.cells = channels.seriesCells();
    hoursAboveMax = new double[cells];
    hoursBelowMin = new double[cells];
    highestVoltage = filled(Double.NaN);
    lowestVoltage = filled(Double.NaN);
    hoursChargingCold = new double[cells];
    hoursChargingHot = new double[cells];
    hoursHot = new double[cells];
    lowestTemperature = filled(Double.NaN);
    highestTemperature = filled(Double.NaN);
    temperatureHours = new double[cells];
    temperatureSum = new double[cells];
    bledAh = filled(channels.hasBleed() ? 0 : Double.NaN);
    lastVoltage = filled(Double.NaN);
  }

  private double[] filled(double value) {
    double[] array = new double[cells];
    Arrays.fill(array, value);
    return array;
  }

  void take(SampleBlock block, int r, Stopwatch clock) {
    if (!clock.follows()) {
      Arrays.fill(lastVoltage, Double.NaN);
      lastCurrentA = channels.hasCurrent() ? block.currentA()[r] : Double.NaN;
      return;
    }
    double h = clock.elapsedS() / 3600;
    hours += h;
    double currentA = channels.hasCurrent() ? block.currentA()[r] : Double.NaN;
    double packVoltage = 0;
    for (int c = 0; c < cells; c++) {
      double v = block.voltageV()[c][r];
      packVoltage += v;
      voltage(c, v, h);
      if (channels.hasTemperature()) {
        temperature(c, block.temperatureC()[c][r], currentA, h);
      }
    }
    if (!Double.isNaN(currentA)) {
      move(Double.isNaN(lastCurrentA) ? currentA : (lastCurrentA + currentA) / 2, packVoltage, h);
      // Only a current that lasts two rows counts as seen.
      highestDischargeA = Math.max(highestDischargeA, Math.min(-currentA, -lastCurrentA));
      lastCurrentA = currentA;
    }
  }

  /** Counts charge and energy by the trapezoid of the current. */
  private void move(double meanA, double packVoltage, double h) {
    double kiloWattHours = Double.isNaN(packVoltage) ? 0 : meanA * packVoltage * h / 1000;
    if (meanA > 0) {
      chargedAh += meanA * h;
      chargedKWh += kiloWattHours;
    } else {
      dischargedAh -= meanA * h;
      dischargedKWh -= kiloWattHours;
    }
  }

  private void voltage(int c, double v, double h) {
    if (Double.isNaN(v)) {
      return;
    }
    double lastsAbove = Math.min(v, lastVoltage[c]);
    double lastsBelow = Math.max(v, lastVoltage[c]);
    if (!Double.isNaN(lastsAbove)) {
      highestVoltage[c] = Math.max(or(highestVoltage[c], lastsAbove), lastsAbove);
      lowestVoltage[c] = Math.min(or(lowestVoltage[c], lastsBelow), lastsBelow);
      if (lastsAbove > limits.cellMaxVoltage()) {
        hoursAboveMax[c] += h;
      }
      if (lastsBelow < limits.cellMinVoltage()) {
        hoursBelowMin[c] += h;
      }
    }
    lastVoltage[c] = v;
  }

  private void temperature(int c, double t, double currentA, double h) {
    if (Double.isNaN(t)) {
      return;
    }
    lowestTemperature[c] = Math.min(or(lowestTemperature[c], t), t);
    highestTemperature[c] = Math.max(or(highestTemperature[c], t), t);
    temperatureHours[c] += h;
    temperatureSum[c] += t * h;
    if (currentA > noiseA && t < limits.chargeMinTemperatureC()) {
      hoursChargingCold[c] += h;
    }
    if (currentA > noiseA && t > limits.chargeMaxTemperatureC()) {
      hoursChargingHot[c] += h;
    }
    if (t > limits.dischargeMaxTemperatureC()) {
      hoursHot[c] += h;
    }
  }

  private static double or(double value, double otherwise) {
    return Double.isNaN(value) ? otherwise : value;
  }

  Stress finish(ThinnedRecord thinned, double bleedResistorOhm) {
    if (channels.hasBleed()) {
      for (int c = 0; c < cells; c++) {
        for (int r = 0; r < thinned.rows(); r++) {
          double level = thinned.bleedFraction()[c][r];
          double v = thinned.voltageV()[c][r];
          if (level > 0 && v > 0) {
            bledAh[c] += level * v / bleedResistorOhm * thinned.seconds()[r] / 3600;
          }
        }
      }
    }
    double[] meanTemperature = new double[cells];
    for (int c = 0; c < cells; c++) {
      meanTemperature[c] =
          temperatureHours[c] > 0 ? temperatureSum[c] / temperatureHours[c] : Double.NaN;
    }
    boolean counted = channels.hasCurrent();
    return new Stress(
        hours,
        counted ? chargedAh : Double.NaN,
        counted ? dischargedAh : Double.NaN,
        counted ? chargedKWh : Double.NaN,
        counted ? dischargedKWh : Double.NaN,
        hoursAboveMax,
        hoursBelowMin,
        highestVoltage,
        lowestVoltage,
        hoursChargingCold,
        hoursChargingHot,
        hoursHot,
        lowestTemperature,
        highestTemperature,
        meanTemperature,
        bledAh,
        counted ? highestDischargeA : Double.NaN);
  }
}
