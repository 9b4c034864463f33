package sagbook.numeric;

/**
 * A quantity that wanders at random and is drawn back to zero (Ornstein–Uhlenbeck process), told
 * from all of its noisy observations together: Kalman filter forwards, Rauch–Tung–Striebel smoother
 * backwards (Rauch, Tung and Striebel, AIAA Journal 3 (1965) 1445). Sixty observations within an
 * hour tell one value, not sixty.
 */
public final class WanderSmoother {
  private final double sd;
  private final double keptFor;

  /**
   * A wandering quantity.
   *
   * @param sd how far it is from zero at any time, one standard deviation, above 0
   * @param keptFor time over which it forgets where it was, in the unit of the times, above 0
   */
  public WanderSmoother(double sd, double keptFor) {
    if (!(sd > 0) || !(keptFor > 0)) {
      throw new IllegalArgumentException("what wanders needs a spread and a time above 0");
    }
    this.sd = sd;
    this.keptFor = keptFor;
  }

  /**
   * Mean of the quantity at every time, given all observations {@code gain * quantity + noise}.
   *
   * @param time rising
   * @param observed one a time; NaN where nothing was observed
   * @param gain one a time
   * @param noiseSd of each observation, one standard deviation
   */
  public double[] smooth(double[] time, double[] observed, double[] gain, double[] noiseSd) {
    int n = time.length;
    double[] foreseen = new double[n];
    double[] foreseenVariance = new double[n];
    double[] kept = new double[n];
    double[] mean = new double[n];
    double[] variance = new double[n];
    for (int i = 0; i < n; i++) {
      kept[i] = i == 0 ? 0 : Math.exp(-Math.max(0, time[i] - time[i - 1]) / keptFor);
      foreseen[i] = i == 0 ? 0 : kept[i] * mean[i - 1];
      double carried = i == 0 ? 0 : sq(kept[i]) * variance[i - 1];
      foreseenVariance[i] = carried + sq(sd) * (1 - sq(kept[i]));
      double of = sq(gain[i]) * foreseenVariance[i] + sq(noiseSd[i]);
      double weight = Double.isNaN(observed[i]) ? 0 : gain[i] * foreseenVariance[i] / of;
      double surprise = weight == 0 ? 0 : observed[i] - gain[i] * foreseen[i];
      mean[i] = foreseen[i] + weight * surprise;
      variance[i] = (1 - weight * gain[i]) * foreseenVariance[i];
    }
    for (int i = n - 2; i >= 0; i--) {
      double back = kept[i + 1] * variance[i] / foreseenVariance[i + 1];
      mean[i] += back * (mean[i + 1] - foreseen[i + 1]);
    }
    return mean;
  }

  private static double sq(double x) {
    return x * x;
  }
}
