package sagbook.estimate.capacity;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import sagbook.evidence.ThinnedRecord;
import sagbook.model.PackDescription;
import sagbook.numeric.Robust;

/**
 * What a board may have bled beyond the string's median where that was not logged. Boards bleed
 * cells that read high while the string charges near full, and logged voltages tell how much that
 * comes to by each usual rule; which one they follow is not known, and they may not bleed at all.
 *
 * @param leastAh what it may have bled beyond the median at least, Ah; 0 or less
 * @param mostAh the same at most, Ah; 0 or more
 */
record UnloggedBleeding(double leastAh, double mostAh) {
  /** Nothing is left open. */
  static final UnloggedBleeding NONE = new UnloggedBleeding(0, 0);

  /**
   * Lowest voltage from which boards bleed, below the full cell's, V. Common practice, no source.
   */
  private static final double EARLIEST_V = 0.25;

  /** Highest, likewise. */
  private static final double LATEST_V = 0.05;

  private static final double START_STEP_V = 0.02;

  /** How far above the lowest a cell must read to be bled, V. Common practice, no source. */
  private static final double[] ABOVE_LOWEST_V = {0, 0.005, 0.01};

  /** Of each cell, cell 1 first; nothing is left open where bleeding was logged. */
  static List<UnloggedBleeding> of(ThinnedRecord record, PackDescription pack) {
    int cells = record.cells();
    if (record.hasBleed()) {
      return Collections.nCopies(cells, NONE);
    }
    double fullV = pack.limits().cellFullVoltage();
    int starts = (int) Math.round((EARLIEST_V - LATEST_V) / START_STEP_V) + 1;
    double[][] byRule = new double[cells][starts * ABOVE_LOWEST_V.length];
    for (int s = 0; s < starts; s++) {
      double startV = fullV - EARLIEST_V + s * START_STEP_V;
      for (int a = 0; a < ABOVE_LOWEST_V.length; a++) {
        double[] bled = bled(record, startV, ABOVE_LOWEST_V[a], pack.bleedOhm());
        double middle = Robust.median(bled);
        for (int c = 0; c < cells; c++) {
          byRule[c][s * ABOVE_LOWEST_V.length + a] = bled[c] - middle;
        }
      }
    }
    List<UnloggedBleeding> all = new ArrayList<>();
    for (double[] rules : byRule) {
      double least = Arrays.stream(rules).min().orElse(0);
      double most = Arrays.stream(rules).max().orElse(0);
      all.add(new UnloggedBleeding(Math.min(0, least), Math.max(0, most)));
    }
    return all;
  }

  /** What each cell is bled by one rule, Ah. */
  private static double[] bled(
      ThinnedRecord record, double startV, double aboveLowestV, double ohm) {
    double[] bled = new double[record.cells()];
    for (int r = 0; r < record.rows(); r++) {
      if (!(record.currentA()[r] > 0)) {
        continue;
      }
      double lowest = Double.POSITIVE_INFINITY;
      for (float[] cell : record.voltageV()) {
        lowest = cell[r] < lowest ? cell[r] : lowest;
      }
      for (int c = 0; c < bled.length; c++) {
        double v = record.voltageV()[c][r];
        if (v > startV && v >= lowest + aboveLowestV) {
          bled[c] += v / ohm * record.seconds()[r] / 3600;
        }
      }
    }
    return bled;
  }
}
