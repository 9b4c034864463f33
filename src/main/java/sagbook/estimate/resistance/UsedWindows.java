package sagbook.estimate.resistance;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import sagbook.estimate.response.ReducedWindow;
import sagbook.estimate.response.StringResponse;
import sagbook.evidence.ResponseBasis;
import sagbook.numeric.Ridge;
import sagbook.numeric.Robust;

/**
 * Step windows as cells are compared in them.
 *
 * @param windows in order of time
 * @param scale size of the string's response in each over the pooled one; 0 leaves a window out
 * @param weight what each counts, 0 to 1
 * @param joint what a joint adds to a cell's response, as a combination of the response's parts
 * @param leastSd what no repetition shows of a cell's share, one standard deviation
 */
record UsedWindows(
    List<ReducedWindow> windows, double[] scale, double[] weight, double[] joint, double leastSd) {
  /**
   * Beyond this the string's mean voltage answers by its slow parts. Common practice, no source.
   */
  private static final double FADES_S = 100;

  private static final int PASSES = 3;

  /** Departures beyond so many usual ones count less and less (Huber 1964); common practice. */
  private static final double USUAL = 2;

  /**
   * Spread between cells that no repetition shows; these two were set so that intervals hold the
   * truth on invented packs of a generator that shares no code with this project.
   */
  private static final double LEAST_SD_BY_CURRENT = 0.006;

  private static final double LEAST_SD_BY_VOLTAGE = 0.012;

  /** All windows alike, in a log with current: what a joint adds is there at once and stays. */
  static UsedWindows ofCurrent(List<ReducedWindow> windows, double[] scale, ResponseBasis basis) {
    double[] joint = new double[basis.charge()];
    joint[basis.immediate()] = 1;
    return new UsedWindows(windows, scale, ones(scale.length), joint, LEAST_SD_BY_CURRENT);
  }

  /**
   * The same without current, where the string's mean voltage drives. That goes on growing after a
   * step, so beside it what a joint adds fades.
   */
  static UsedWindows ofVoltage(List<ReducedWindow> windows, double[] scale, ResponseBasis basis) {
    double[] joint = new double[basis.charge()];
    joint[basis.immediate()] = 1;
    joint[basis.slow(FADES_S)] = -1;
    return new UsedWindows(windows, scale, ones(scale.length), joint, LEAST_SD_BY_VOLTAGE);
  }

  private static double[] ones(int n) {
    double[] ones = new double[n];
    Arrays.fill(ones, 1);
    return ones;
  }

  private UsedWindows withWeight(double[] other) {
    return new UsedWindows(windows, scale, other, joint, leastSd);
  }

  /** What one unit of a joint adds at the pulse time, as a share of the string's response there. */
  double jointShare(StringResponse response, double pulseS) {
    double sum = 0;
    double[] at = response.basis().weightsAt(pulseS);
    for (int i = 0; i < joint.length; i++) {
      sum += joint[i] * at[i];
    }
    return sum / response.at(pulseS);
  }

  int size() {
    return scale.length;
  }

  int cells() {
    return windows.get(0).cross().length;
  }

  /** The windows that began at or after a time, s since 1970. */
  UsedWindows since(double startS) {
    int first = 0;
    while (windows.get(first).window().startS() < startS) {
      first++;
    }
    return new UsedWindows(
        windows.subList(first, size()),
        Arrays.copyOfRange(scale, first, size()),
        Arrays.copyOfRange(weight, first, size()),
        joint,
        leastSd);
  }

  /**
   * The same windows, those counting less in which most cells depart from what all windows say of
   * them: there the cells stood on different parts of their curve, or were read askew. A cell that
   * changes on its own lowers no window.
   */
  UsedWindows weighed(StringResponse response, double ohm) {
    UsedWindows now = this;
    for (int pass = 0; pass < PASSES; pass++) {
      now = withWeight(now.weights(response, ohm));
    }
    return now;
  }

  private double[] weights(StringResponse response, double ohm) {
    CellComparison.Sums all = CellComparison.Sums.of(this, response, IntStream.range(0, size()));
    double[][] pooled = all.solutions(ohm);
    UsedWindows whole = withWeight(ones(size()));
    double[] departure = new double[size()];
    List<Double> known = new ArrayList<>();
    for (int w = 0; w < size(); w++) {
      if (scale[w] > 0) {
        Ridge[] one = CellComparison.Sums.of(whole, response, IntStream.of(w)).cell();
        double[] chi = new double[one.length];
        for (int c = 0; c < chi.length; c++) {
          chi[c] = departure(one[c], pooled[c], ohm);
        }
        departure[w] = Robust.median(chi);
        known.add(departure[w]);
      }
    }
    double usual = Robust.median(known.stream().mapToDouble(d -> d).toArray());
    double[] weights = new double[size()];
    for (int w = 0; w < size(); w++) {
      weights[w] = departure[w] <= USUAL * usual ? 1 : USUAL * usual / departure[w];
    }
    return weights;
  }

  /** How far one window alone would move a cell, in standard deviations of that window. */
  private static double departure(Ridge window, double[] pooled, double ohm) {
    Ridge fit = new Ridge(pooled.length);
    fit.add(window);
    fit.prior(0, pooled[0], 1);
    fit.prior(1, pooled[1], ohm);
    fit.prior(2, pooled[2], CellComparison.DELAY_S);
    double[] moved = fit.solve().value();
    for (int i = 0; i < moved.length; i++) {
      moved[i] -= pooled[i];
    }
    return Math.sqrt(window.squares(moved));
  }
}
