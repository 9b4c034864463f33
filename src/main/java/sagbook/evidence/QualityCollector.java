package sagbook.evidence;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import sagbook.model.Channels;
import sagbook.model.SampleBlock;

/** Watches how good each channel is: validity, resolution, noise, standstill. */
final class QualityCollector {
  /** While the string moves this much a voltage that stands still is stuck, V. */
  private static final double VOLTAGE_MOVES = 0.02;

  /** While the others move this much a temperature that stands still is stuck, K. */
  private static final double TEMPERATURE_MOVES = 1.5;

  private final Channels channels;
  private final Watch voltage;
  private final Watch temperature;
  private final double[] lastDeviation;
  private final double[] deviationSum;
  private final long[] deviationRows;
  private double lastMeanVoltage = Double.NaN;
  private long rows;

  QualityCollector(Channels channels) {
    this.channels = channels;
    int n = channels.seriesCells();
    voltage = new Watch(n, VOLTAGE_MOVES, 5e-5);
    temperature = new Watch(channels.hasTemperature() ? n : 0, TEMPERATURE_MOVES, 1e-3);
    lastDeviation = new double[n];
    Arrays.fill(lastDeviation, Double.NaN);
    deviationSum = new double[n];
    deviationRows = new long[n];
  }

  void take(SampleBlock block, int r, Stopwatch clock) {
    rows++;
    double meanVoltage = voltage.take(block.voltageV(), r, clock);
    temperature.take(block.temperatureC(), r, clock);
    double moved = Math.abs(meanVoltage - lastMeanVoltage);
    for (int c = 0; c < lastDeviation.length; c++) {
      double deviation = block.voltageV()[c][r] - meanVoltage;
      double change = Math.abs(deviation - lastDeviation[c]);
      // Quiet rows only: away from load steps and without glitches.
      if (moved < 0.002 && change < 0.02) {
        deviationSum[c] += change * change;
        deviationRows[c]++;
      }
      lastDeviation[c] = deviation;
    }
    lastMeanVoltage = meanVoltage;
  }

  List<ChannelQuality> finish() {
    List<ChannelQuality> all = new ArrayList<>();
    int n = channels.seriesCells();
    for (int c = 0; c < n; c++) {
      double noise =
          deviationRows[c] > 30
              ? Math.sqrt(deviationSum[c] / deviationRows[c] / 2 * n / Math.max(1, n - 1))
              : Double.NaN;
      all.add(voltage.quality("cell " + (c + 1) + " voltage", c, rows, noise));
    }
    for (int c = 0; c < temperature.size(); c++) {
      all.add(temperature.quality("cell " + (c + 1) + " temperature", c, rows, Double.NaN));
    }
    return all;
  }

  /** One kind of channel, all cells. */
  private static final class Watch {
    private final double moves;
    private final double leastStep;
    private final double[] last;
    private final double[] step;
    private final long[] valid;
    private final double[] heldSinceS;
    private final double[] meanAtChange;
    private final double[] stuckS;

    Watch(int n, double moves, double leastStep) {
      this.moves = moves;
      this.leastStep = leastStep;
      last = new double[n];
      Arrays.fill(last, Double.NaN);
      step = new double[n];
      Arrays.fill(step, Double.NaN);
      valid = new long[n];
      heldSinceS = new double[n];
      meanAtChange = new double[n];
      stuckS = new double[n];
    }

    int size() {
      return last.length;
    }

    double take(double[][] values, int r, Stopwatch clock) {
      double sum = 0;
      int count = 0;
      for (int c = 0; c < last.length; c++) {
        double v = values[c][r];
        if (!Double.isNaN(v)) {
          sum += v;
          count++;
        }
      }
      double mean = count == 0 ? Double.NaN : sum / count;
      for (int c = 0; c < last.length; c++) {
        double v = values[c][r];
        if (!Double.isNaN(v)) {
          valid[c]++;
          follow(c, v, mean, clock);
        }
      }
      return mean;
    }

    private void follow(int c, double v, double mean, Stopwatch clock) {
      double change = Math.abs(v - last[c]);
      if (change < leastStep && clock.follows()) {
        heldSinceS[c] += clock.elapsedS();
        if (Math.abs(mean - meanAtChange[c]) > moves) {
          stuckS[c] = Math.max(stuckS[c], heldSinceS[c]);
        }
        return;
      }
      if (change >= leastStep && !(change >= step[c])) {
        step[c] = change;
      }
      last[c] = v;
      heldSinceS[c] = 0;
      meanAtChange[c] = mean;
    }

    ChannelQuality quality(String name, int c, long rows, double noise) {
      double share = rows == 0 ? 0 : (double) valid[c] / rows;
      return new ChannelQuality(name, share, step[c], noise, stuckS[c] / 3600);
    }
  }
}
