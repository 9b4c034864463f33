package sagbook.evidence;

import java.util.Arrays;
import sagbook.model.Channels;
import sagbook.model.SampleBlock;

/** Finds temperature channels that stand still while the others move. */
final class StandstillCollector {
  /** While the mean moves this much a temperature that stands still is stuck, K. */
  private static final double MOVES = 1.5;

  private static final double LEAST_STEP = 1e-3;

  /**
   * For so long the others have to be gone, s: one cell may lag behind them for an hour, as when
   * their boards warm them and its own does not. Common practice, no source.
   */
  private static final double LAG_S = 7200;

  private final double[] last;
  private final double[] heldSinceS;
  private final double[] meanAtChange;
  private final double[] awayS;
  private final double[] stuckS;

  StandstillCollector(Channels channels) {
    int n = channels.hasTemperature() ? channels.seriesCells() : 0;
    last = new double[n];
    Arrays.fill(last, Double.NaN);
    heldSinceS = new double[n];
    meanAtChange = new double[n];
    awayS = new double[n];
    stuckS = new double[n];
  }

  void take(SampleBlock block, int r, Stopwatch clock) {
    double sum = 0;
    int count = 0;
    for (int c = 0; c < last.length; c++) {
      double v = block.temperatureC()[c][r];
      if (!Double.isNaN(v)) {
        sum += v;
        count++;
      }
    }
    for (int c = 0; c < last.length; c++) {
      follow(c, block.temperatureC()[c][r], sum / count, clock);
    }
  }

  private void follow(int c, double v, double mean, Stopwatch clock) {
    if (Double.isNaN(v)) {
      return;
    }
    if (Math.abs(v - last[c]) < LEAST_STEP && clock.follows()) {
      heldSinceS[c] += clock.elapsedS();
      if (Math.abs(mean - meanAtChange[c]) > MOVES) {
        awayS[c] += clock.elapsedS();
        if (awayS[c] >= LAG_S) {
          stuckS[c] = Math.max(stuckS[c], heldSinceS[c]);
        }
      }
      return;
    }
    last[c] = v;
    heldSinceS[c] = 0;
    awayS[c] = 0;
    meanAtChange[c] = mean;
  }

  /** Longest time without any change while the others moved, one a cell, h; empty without any. */
  double[] finish() {
    return Arrays.stream(stuckS).map(s -> s / 3600).toArray();
  }
}
