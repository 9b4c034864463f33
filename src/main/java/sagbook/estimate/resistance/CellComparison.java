package sagbook.estimate.resistance;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import sagbook.estimate.response.ReducedWindow;
import sagbook.estimate.response.StringResponse;
import sagbook.numeric.Jackknife;
import sagbook.numeric.Ridge;

/**
 * Each cell's response against the string's mean response in the same rows: {@code slow} scales the
 * whole response (a worn cell), {@code ohmic} adds to the immediate part only (a joint), both as
 * shares of the string's resistance at the pulse time. Standard deviations by leaving out one of
 * twelve stretches at a time (jackknife, Tukey 1958).
 *
 * @param whole response at the pulse time over the string's mean, one a cell
 * @param wholeSd its standard deviation
 * @param slow scale of the whole response
 * @param slowSd its standard deviation
 * @param ohmic immediate part beyond that, as a share of the string's resistance
 * @param ohmicSd its standard deviation
 */
record CellComparison(
    double[] whole,
    double[] wholeSd,
    double[] slow,
    double[] slowSd,
    double[] ohmic,
    double[] ohmicSd) {
  private static final int STRETCHES = 12;
  private static final int PARAMETERS = 2;

  static CellComparison of(
      List<ReducedWindow> windows, double[] scale, StringResponse response, double pulseS) {
    int n = windows.size();
    int stretches = Math.max(1, Math.min(STRETCHES, n));
    List<Sums> parts = new ArrayList<>();
    for (int k = 0; k < stretches; k++) {
      int stretch = k;
      parts.add(
          Sums.of(
              windows,
              scale,
              response,
              IntStream.range(0, n).filter(w -> (long) w * stretches / n == stretch)));
    }
    double ohm = response.at(pulseS);
    Builder builder = new Builder(windows.get(0).cross().length);
    for (int c = 0; c < builder.cells(); c++) {
      int cell = c;
      builder.cell(c, parts.stream().map(sums -> sums.cell()[cell]).toArray(Ridge[]::new), ohm);
    }
    return builder.build();
  }

  /**
   * Sums of every cell over some windows, from which its two numbers follow by least squares.
   *
   * @param cell one a cell
   */
  record Sums(Ridge[] cell) {
    static Sums of(
        List<ReducedWindow> windows, double[] scale, StringResponse response, IntStream chosen) {
      Ridge[] sums = new Ridge[windows.get(0).cross().length];
      Arrays.setAll(sums, c -> new Ridge(PARAMETERS));
      double precision = 1 / (response.noiseV() * response.noiseV());
      chosen
          .filter(w -> scale[w] > 0)
          .forEach(w -> observe(windows.get(w), map(response, scale[w]), precision, sums));
      return new Sums(sums);
    }

    /**
     * Each cell's response at the pulse time over the string's mean; empty where these windows tell
     * a cell no better than {@code toldSd}.
     */
    double[] whole(double ohm, double toldSd) {
      double[] whole = new double[cell.length];
      double[] asked = {1, 1 / ohm};
      for (int c = 0; c < whole.length; c++) {
        Ridge.Solution solution = solution(new Ridge[] {cell[c]}, -1, ohm);
        if (!(solution.combinedSd(asked) < toldSd)) {
          return new double[0];
        }
        whole[c] = solution.combined(asked);
      }
      return whole;
    }

    /** Combinations of the basis that explain one cell. */
    private static double[][] map(StringResponse response, double scale) {
      int p = response.coefficients().length;
      double[] shape = response.coefficients().clone();
      for (int i = 0; i < p; i++) {
        shape[i] *= scale;
      }
      double[][] map = {shape, new double[p]};
      map[1][response.basis().immediate()] = 1;
      return map;
    }

    private static void observe(
        ReducedWindow window, double[][] map, double precision, Ridge[] sums) {
      Ridge common = new Ridge(PARAMETERS);
      for (int a = 0; a < PARAMETERS; a++) {
        for (int b = 0; b <= a; b++) {
          common.addNormal(a, b, precision * window.product(map[a], map[b]));
        }
      }
      for (int c = 0; c < sums.length; c++) {
        sums[c].addNormalOf(common);
        double[] cross = window.cross()[c];
        for (int a = 0; a < PARAMETERS; a++) {
          sums[c].addRight(a, precision * ReducedWindow.product(map[a], cross, cross.length));
        }
      }
    }
  }

  private static Ridge.Solution solution(Ridge[] stretch, int leftOut, double ohm) {
    Ridge fit = new Ridge(PARAMETERS);
    for (int k = 0; k < stretch.length; k++) {
      if (k != leftOut) {
        fit.add(stretch[k]);
      }
    }
    fit.prior(0, 1, 0.5);
    fit.prior(1, 0, 0.5 * ohm);
    return fit.solve();
  }

  /** Collects results cell by cell. */
  private static final class Builder {
    private final double[][] columns;

    Builder(int cells) {
      columns = new double[6][cells];
    }

    int cells() {
      return columns[0].length;
    }

    void cell(int c, Ridge[] stretch, double ohm) {
      int n = stretch.length;
      double[][] left = new double[n][];
      double[] all = solve(stretch, -1, ohm);
      for (int k = 0; k < n; k++) {
        left[k] = n > 1 ? solve(stretch, k, ohm) : all;
      }
      for (int q = 0; q < 3; q++) {
        columns[2 * q][c] = all[q];
        columns[2 * q + 1][c] = n > 2 ? Jackknife.sd(left, q) : 0.05;
      }
    }

    private static double[] solve(Ridge[] stretch, int leftOut, double ohm) {
      double[] b = solution(stretch, leftOut, ohm).value();
      return new double[] {b[0] + b[1] / ohm, b[0], b[1] / ohm};
    }

    CellComparison build() {
      return new CellComparison(
          columns[0], columns[1], columns[2], columns[3], columns[4], columns[5]);
    }
  }
}
