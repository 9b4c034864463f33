package sagbook.estimate.resistance;

import java.util.Arrays;
import java.util.List;
import sagbook.estimate.response.ReducedWindow;
import sagbook.estimate.response.StringResponse;
import sagbook.numeric.Robust;

/**
 * How large the string's response is in each window of mid charge that tells it, and under which
 * conditions. All windows share one shape: freedom for each to have its own costs more than the
 * moments of its few steps, a matter of chance, do.
 *
 * @param window which of the windows given
 * @param log logarithm of the size over that of the pooled response
 * @param sd its standard deviation, were nothing but the rows' noise in it
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

  private static final double STRETCH_S = 7200;

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
    int used = 0;
    for (int w = 0; w < n; w++) {
      ReducedWindow one = windows.get(w);
      double pull = one.product(shape, shape);
      double size = ReducedWindow.product(shape, one.meanCross(), shape.length) / pull;
      double noise = response.noiseV() / Math.sqrt(pull * one.cross().length);
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
