package sagbook.estimate.resistance;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import sagbook.estimate.response.StringResponse;
import sagbook.numeric.LevelBreak;
import sagbook.numeric.Robust;

/**
 * Each cell's resistance over the string's median day by day, to see one that became another within
 * the log: a joint that works loose. A day averages over its warm and its cold hours, and what
 * disturbs all cells alike goes out with the day's median.
 *
 * <p>A break counts when its step is worth telling and stands clear of two kinds of noise: the
 * scatter of the cell's own days, and what the other cells do at the same break, which holds
 * whatever the comparison leaves in of weather and charge.
 *
 * @param startS start of each day that was measured, s since 1970
 * @param cold logarithm of how much the cold adds to the string's response on each day, without
 *     current; 0 with current and where no temperature was logged
 * @param relative resistance over the day's median, [cell][day]
 */
record DayByDay(double[] startS, double[] cold, double[][] relative) {
  private static final double DAY_S = 86_400;

  /** A day on which a cell is told no better than this, one standard deviation, is left out. */
  private static final double TOLD_SD = 0.1;

  /** Steps that are not worth telling: below what the rules call sure of a resistance. */
  private static final double LEAST_STEP = 0.1;

  /**
   * By how many standard deviations a step has to stand clear. It is the greatest of some thirty
   * places in each of up to 32 cells: five sigma leave it one false alarm in about 1,700 logs.
   */
  private static final double CLEAR = 5;

  static DayByDay of(UsedWindows used, StringResponse response, double pulseS) {
    TreeMap<Long, List<Integer>> days = new TreeMap<>();
    for (int w = 0; w < used.size(); w++) {
      if (used.scale()[w] > 0) {
        long day = (long) Math.floor(used.windows().get(w).window().startS() / DAY_S);
        days.computeIfAbsent(day, d -> new ArrayList<>()).add(w);
      }
    }
    List<Double> starts = new ArrayList<>();
    List<Double> cold = new ArrayList<>();
    List<double[]> all = new ArrayList<>();
    days.forEach(
        (day, chosen) -> {
          CellComparison.Sums sums =
              CellComparison.Sums.of(used, response, chosen.stream().mapToInt(w -> w));
          double[] whole =
              sums.whole(response.at(pulseS), used.drive().jointShare(response, pulseS), TOLD_SD);
          double median = Robust.median(whole);
          if (median > 0) { // not so on a day that tells too little, whose median is NaN
            starts.add(day * DAY_S);
            cold.add(used.drive().cold(chosen));
            for (int c = 0; c < whole.length; c++) {
              whole[c] /= median;
            }
            all.add(whole);
          }
        });
    int cells = all.isEmpty() ? 0 : all.get(0).length;
    double[][] relative = new double[cells][all.size()];
    for (int d = 0; d < all.size(); d++) {
      for (int c = 0; c < cells; c++) {
        relative[c][d] = all.get(d)[c];
      }
    }
    return new DayByDay(array(starts), array(cold), relative);
  }

  private static double[] array(List<Double> values) {
    return values.stream().mapToDouble(v -> v).toArray();
  }

  /** The day from which on a cell, 0 for the first, is another one, if there is such a day. */
  Optional<LevelBreak> breakOf(int cell) {
    if (startS.length < LevelBreak.FEWEST) {
      return Optional.empty();
    }
    LevelBreak found = LevelBreak.of(relative[cell]);
    double[] others = new double[relative.length];
    for (int c = 0; c < others.length; c++) {
      others[c] = LevelBreak.step(relative[c], found.before());
    }
    double noise = Math.hypot(found.stepSd(), Robust.spread(others));
    boolean real = Math.abs(found.step()) - byWeather(found) > Math.max(LEAST_STEP, CLEAR * noise);
    return real ? Optional.of(found) : Optional.empty();
  }

  /** Mean of a cell's days from one on. */
  double mean(int cell, int from) {
    return Arrays.stream(relative[cell], from, startS.length).average().orElseThrow();
  }

  /**
   * What a joint that stays as it is seems to change by when the weather turns, since the string's
   * mean voltage, which drives a log without current, is larger in the cold and a joint is not.
   */
  private double byWeather(LevelBreak found) {
    double before = Arrays.stream(cold, 0, found.before()).average().orElse(0);
    double after = Arrays.stream(cold, found.before(), cold.length).average().orElse(0);
    double excess = Math.max(Math.abs(found.level() - 1), Math.abs(found.end() - 1));
    return excess * Math.expm1(Math.abs(after - before));
  }
}
