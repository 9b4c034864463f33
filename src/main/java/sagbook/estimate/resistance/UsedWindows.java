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
 * @param drive what the cells' answers are put against
 */
record UsedWindows(List<ReducedWindow> windows, double[] scale, double[] weight, Drive drive) {
  private static final int PASSES = 3;

  /** Departures beyond so many usual ones count less and less (Huber 1964); common practice. */
  private static final double USUAL = 2;

  /** All windows alike, in a log with current, whose cells are read as the response's. */
  static UsedWindows ofCurrent(
      List<ReducedWindow> windows, double[] scale, StringResponse response) {
    Drive drive = Drive.current(windows.size(), response);
    return new UsedWindows(windows, scale, ones(scale.length), drive);
  }

  /**
   * The same without current, where the string's mean voltage drives.
   *
   * @param fadingSeen whether rows are close enough for a joint's fading to show
   */
  static UsedWindows ofVoltage(
      List<ReducedWindow> windows, double[] scale, ResponseBasis basis, boolean fadingSeen) {
    Drive drive = Drive.voltage(windows, basis, fadingSeen);
    return new UsedWindows(windows, scale, ones(scale.length), drive);
  }

  private static double[] ones(int n) {
    double[] ones = new double[n];
    Arrays.fill(ones, 1);
    return ones;
  }

  private UsedWindows withWeight(double[] other) {
    return new UsedWindows(windows, scale, other, drive);
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
        drive.from(first));
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
  private double departure(Ridge window, double[] pooled, double ohm) {
    Ridge fit = new Ridge(pooled.length);
    fit.add(window);
    fit.prior(0, pooled[0], 1);
    fit.prior(1, pooled[1], ohm);
    fit.prior(2, pooled[2], drive.asideSd());
    double[] moved = fit.solve().value();
    for (int i = 0; i < moved.length; i++) {
      moved[i] -= pooled[i];
    }
    return Math.sqrt(window.squares(moved));
  }
}
