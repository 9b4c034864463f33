package sagbook.evidence;

import java.util.ArrayList;
import java.util.List;

/**
 * Gathers {@link Onset}s. Days are dealt out to twelve of them in turns, so that leaving out one at
 * a time tells how sure the whole is.
 */
final class OnsetSums {
  private static final int PARTS = 12;
  private static final double DAY_S = 86_400;

  private final int[] steps = new int[PARTS];
  private final double[] squares = new double[PARTS];
  private final double[][] earlyState;
  private final double[][] laterState;
  private final double[][] early;
  private final double[][] later;

  OnsetSums(int cells, int stateSize) {
    earlyState = new double[PARTS][stateSize];
    laterState = new double[PARTS][stateSize];
    early = new double[PARTS][cells];
    later = new double[PARTS][cells];
  }

  /**
   * Takes the step into a row, unless a cell was not heard or is off its neighbours.
   *
   * @param before the row before the step; 1 or more, for the row after it is one fewer back
   */
  void take(StepHistory history, int before, double timeS) {
    int cells = early[0].length;
    double mean = 0;
    for (int c = 0; c < cells; c++) {
      mean += history.voltageChange(c, before + 1, 0) / cells;
    }
    for (int c = 0; c < cells; c++) {
      double answer = history.voltageChange(c, before + 1, 0);
      double soon =
          history.voltageChange(c, before + 1, before)
              + history.voltageChange(c, before + 1, before - 1);
      if (Double.isNaN(soon) || !StepCollector.likeTheMean(answer, mean)) {
        return;
      }
    }
    int part = Math.floorMod((long) Math.floor(timeS / DAY_S), PARTS);
    double step = history.step(before - 1);
    steps[part]++;
    squares[part] += step * step;
    int size = earlyState[part].length;
    double[] change = new double[size];
    for (int to = before - 1; to <= before; to++) {
      history.stateChange(before + 1, to, change, size);
      add(earlyState[part], step, change);
    }
    history.stateChange(before + 1, 0, change, size);
    add(laterState[part], step, change);
    for (int c = 0; c < cells; c++) {
      early[part][c] +=
          step
              * (history.voltageChange(c, before + 1, before)
                  + history.voltageChange(c, before + 1, before - 1));
      later[part][c] += step * history.voltageChange(c, before + 1, 0);
    }
  }

  private static void add(double[] sums, double step, double[] change) {
    for (int i = 0; i < sums.length; i++) {
      sums[i] += step * change[i];
    }
  }

  /** Those that hold steps. */
  List<Onset> finish() {
    List<Onset> all = new ArrayList<>();
    for (int k = 0; k < PARTS; k++) {
      if (steps[k] > 0) {
        all.add(new Onset(steps[k], squares[k], earlyState[k], laterState[k], early[k], later[k]));
      }
    }
    return all;
  }
}
