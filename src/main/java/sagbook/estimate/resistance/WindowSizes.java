package sagbook.estimate.resistance;

import java.util.Arrays;
import java.util.List;
import sagbook.estimate.response.ReducedWindow;
import sagbook.estimate.response.StringResponse;
import sagbook.numeric.Robust;

/**
 * How large the string's response is in each window of mid charge that tells it, and under which
 * conditions. All windows share one shape: freedom for each to have its own costs more than the
 * moments of its few steps, a matter of chance, do. Where a load came and went between rows, what
 * they read is not what the cells went through: most such windows look small, and the response
 * leaves more of them unexplained, all cells alike, so each window's own misfit tells how well it
 * knows its size.
 *
 * @param window which of the windows given
 * @param log logarithm of the size over that of the pooled response
 * @param sd its standard deviation, were nothing in it but the rows' noise and what the response
 *     leaves unexplained of the window
 * @param celsius temperature of the median cell, °C
 * @param fromMid charge less one half; 0 when unknown
 * @param stretchOfDay which of the two-hour stretches of the day, 0 to 11
 */
record WindowSizes(
    int[] window,
    double[] log,
    double[] sd,
    double[] celsius,
    double[] fromMid,
    int[] stretchOfDay) {
  /** Between these charges resistance changes little; beyond them it rises. */
  static final double LOWEST_CHARGE = 0.2;

  static final double HIGHEST_CHARGE = 0.9;

  /** Two-hour stretches of a day. */
  static final int STRETCHES_A_DAY = 12;

  /** Twentieths of charge. */
  static final int PLACES_OF_CHARGE = 20;

  private static final double STRETCH_S = 7200;

  /**
   * Share of the windows in which nothing but the rows' noise is left unexplained. Common practice,
   * no source.
   */
  private static final double QUIET = 0.1;

  /** A size further from the pooled one than this is a misunderstanding. Common practice. */
  private static final double LEAST = 0.2;

  private static final double MOST = 8;

  /** A window that tells its size no better than this is left out, relative. Common practice. */
  private static final double VAGUE = 0.2;

  /**
   * Measures the windows.
   *
   * @param charge charge 0 to 1 in each, NaN when unknown
   */
  static WindowSizes of(List<ReducedWindow> windows, StringResponse response, double[] charge) {
    int n = windows.size();
    WindowSizes all =
        new WindowSizes(
            new int[n], new double[n], new double[n], new double[n], new double[n], new int[n]);
    double[] shape = response.coefficients();
    double[] misfit = windows.stream().mapToDouble(w -> w.misfit(shape)).toArray();
    double rowsAlone = Robust.quantile(misfit, QUIET);
    int used = 0;
    for (int w = 0; w < n; w++) {
      ReducedWindow one = windows.get(w);
      double pull = one.product(shape, shape);
      double size = ReducedWindow.product(shape, one.meanCross(), shape.length) / pull;
      // Each cell has its own noise, but all cells go through what the load did between two rows.
      double own = response.noiseV() * response.noiseV() / one.cross().length;
      // NaN in a window of too few rows to have a misfit, which is left out for it.
      double shared = Math.max(0, misfit[w] - rowsAlone);
      double noise = Math.sqrt((own + shared) / pull);
      double celsius = Robust.median(one.window().meanTemperatureC());
      if (isMid(charge[w])
          && !Double.isNaN(celsius)
          && size > LEAST
          && size < MOST
          && noise < VAGUE * size) {
        all.window[used] = w;
        all.log[used] = Math.log(size);
        all.sd[used] = noise / size;
        all.celsius[used] = celsius;
        all.fromMid[used] = Double.isNaN(charge[w]) ? 0 : charge[w] - 0.5;
        all.stretchOfDay[used++] =
            Math.floorMod((long) Math.floor(one.window().startS() / STRETCH_S), STRETCHES_A_DAY);
      }
    }
    return all.first(used);
  }

  /** Whether this charge, 0 to 1, is none near empty or full, as far as is known. */
  static boolean isMid(double charge) {
    return !(charge < LOWEST_CHARGE) && !(charge > HIGHEST_CHARGE);
  }

  /** Which twentieth of charge a window lies in, 0 to 19. */
  int placeOfCharge(int i) {
    int place = (int) Math.floor((fromMid[i] + 0.5) * PLACES_OF_CHARGE);
    return Math.max(0, Math.min(PLACES_OF_CHARGE - 1, place));
  }

  /** Charge less one half in the middle of such a twentieth. */
  static double fromMid(int placeOfCharge) {
    return (placeOfCharge + 0.5) / PLACES_OF_CHARGE - 0.5;
  }

  private WindowSizes first(int count) {
    return new WindowSizes(
        Arrays.copyOf(window, count),
        Arrays.copyOf(log, count),
        Arrays.copyOf(sd, count),
        Arrays.copyOf(celsius, count),
        Arrays.copyOf(fromMid, count),
        Arrays.copyOf(stretchOfDay, count));
  }

  int count() {
    return log.length;
  }
}
