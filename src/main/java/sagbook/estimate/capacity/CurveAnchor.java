package sagbook.estimate.capacity;

import java.util.Arrays;
import java.util.Comparator;
import java.util.Optional;
import java.util.stream.Stream;
import sagbook.estimate.curve.ElectrodePair;
import sagbook.model.Chemistry;
import sagbook.model.PackDescription;
import sagbook.numeric.EvenTable;
import sagbook.numeric.NonlinearFit;

/**
 * A pair of published half-cell functions laid over the learned curve: where each electrode begins
 * and how large it is. It says where full and empty lie beyond what was visited, and which part of
 * a slope belongs to which electrode (slippage, as in Dubarry, Truchot and Liaw, J. Power Sources
 * 219 (2012) 204).
 *
 * <p>{@code V(q) = Up((qp - q)/Qp) - Un((q - qn)/Qn) + c}, with q, Qp, Qn in shares of nominal
 * capacity.
 *
 * @param pair the functions
 * @param positiveAh place at which the positive electrode holds no lithium, Ah
 * @param positiveSizeAh size of the positive electrode, Ah
 * @param negativeAh place at which the graphite holds no lithium, Ah
 * @param negativeSizeAh size of the graphite, Ah
 * @param offsetV constant difference, V
 * @param misfitV root mean square of what is left, V
 * @param fullAh place of the full cell, Ah
 * @param emptyAh place of the empty cell, Ah
 * @param fullSdAh its standard deviation, Ah
 * @param emptySdAh its standard deviation, Ah
 */
record CurveAnchor(
    ElectrodePair pair,
    double positiveAh,
    double positiveSizeAh,
    double negativeAh,
    double negativeSizeAh,
    double offsetV,
    double misfitV,
    double fullAh,
    double emptyAh,
    double fullSdAh,
    double emptySdAh) {

  /** Voltage to which the learned curve is known at its end, V. Common practice, no source. */
  private static final double KNOWN_V = 0.005;

  /**
   * Share of capacity by which published functions may lag behind a curve at its ends, one standard
   * deviation: their knees are gentler than those of measured cells, by up to 3.6 % on invented
   * strings that ran on measured curves.
   */
  private static final double LAG = 0.01;

  /**
   * How far what functions lag behind a curve where that ends is seen there, 0 to 1: the better the
   * steeper the curve is.
   *
   * @param slope V per capacity
   */
  static double trust(double slope) {
    double lagV = LAG * slope;
    return lagV * lagV / (lagV * lagV + KNOWN_V * KNOWN_V);
  }

  double at(double q) {
    return pair.positive((positiveAh - q) / positiveSizeAh)
        - pair.negative((q - negativeAh) / negativeSizeAh)
        + offsetV;
  }

  double positiveAt(double q) {
    return pair.positive((positiveAh - q) / positiveSizeAh);
  }

  /**
   * The pair of those that may hold for a pack that lies closest to the visited part of a curve.
   *
   * @param fromAh lowest place used
   * @param toAh highest place used
   * @param endAh highest place that was seen, from where the functions carry on to full
   */
  static Optional<CurveAnchor> closest(
      PackDescription pack, EvenTable curve, double fromAh, double toAh, double endAh) {
    double fullV = pack.limits().cellFullVoltage();
    double emptyV = pack.limits().cellEmptyVoltage();
    return ElectrodePair.of(pack).parallelStream()
        .flatMap(
            pair ->
                fit(pair, curve, fromAh, toAh, endAh, pack.nominalCapacityAh(), fullV, emptyV)
                    .stream())
        .min(Comparator.comparingDouble(CurveAnchor::misfitV));
  }

  /**
   * Fits a pair over the visited part of a curve.
   *
   * @param fromAh lowest place used
   * @param toAh highest place used
   * @param endAh highest place that was seen
   * @param fullV rest voltage of a full cell
   * @param emptyV rest voltage of an empty cell
   */
  static Optional<CurveAnchor> fit(
      ElectrodePair pair,
      EvenTable curve,
      double fromAh,
      double toAh,
      double endAh,
      double nominalAh,
      double fullV,
      double emptyV) {
    Fitter fitter = new Fitter(pair, curve, fromAh, toAh, endAh, nominalAh, fullV, emptyV);
    return Stream.of(0.9, 1.0, 1.1)
        .parallel()
        .flatMap(size -> fitter.from(size).stream())
        .min(Comparator.comparingDouble(CurveAnchor::misfitV));
  }

  /** One fit. Internally all charges are shares of nominal capacity. */
  private static final class Fitter {
    private static final int POINTS = 240;

    private final ElectrodePair pair;
    private final double nominalAh;
    private final double toAh;
    private final double fullV;
    private final double emptyV;
    private final double[] place = new double[POINTS];
    private final double[] voltage = new double[POINTS];
    private final double[] sd = new double[POINTS];
    private final double end;
    private final double endV;

    /** Slope there, V per nominal capacity. */
    private final double endSlope;

    Fitter(
        ElectrodePair pair,
        EvenTable curve,
        double fromAh,
        double toAh,
        double endAh,
        double nominalAh,
        double fullV,
        double emptyV) {
      this.pair = pair;
      this.nominalAh = nominalAh;
      this.toAh = toAh;
      this.fullV = fullV;
      this.emptyV = emptyV;
      for (int i = 0; i < POINTS; i++) {
        double q = fromAh + (toAh - fromAh) * (i + 0.5) / POINTS;
        place[i] = q / nominalAh;
        voltage[i] = curve.at(q);
        double slope = Math.abs(curve.slopeAt(q));
        sd[i] = Math.hypot(0.002, slope * 0.0015 * nominalAh);
      }
      // What was seen beyond full says nothing of what is left to it.
      double lastAh = endAh;
      while (lastAh - curve.step() > fromAh && curve.at(lastAh) > fullV) {
        lastAh -= curve.step();
      }
      this.end = lastAh / nominalAh;
      this.endV = curve.at(lastAh);
      this.endSlope = Math.abs(curve.slopeAt(lastAh)) * nominalAh;
    }

    private double model(double[] p, double q) {
      return pair.positive((p[0] - q) / p[1]) - pair.negative((q - p[2]) / p[3]) + p[4];
    }

    private double[] residuals(double[] p) {
      double[] r = new double[POINTS + 3];
      for (int i = 0; i < POINTS; i++) {
        r[i] = (model(p, place[i]) - voltage[i]) / sd[i];
      }
      // Electrodes are held to about the sizes of the published cells, the offset to 6 mV.
      double positive = pair.positiveSize();
      r[POINTS] = (p[1] / positive - 1) / 0.06;
      r[POINTS + 1] = (p[3] / p[1] * positive / pair.negativeSize() - 1) / 0.08;
      r[POINTS + 2] = p[4] / 0.006;
      return r;
    }

    Optional<CurveAnchor> from(double size) {
      double top = toAh / nominalAh;
      double full = pair.chemistry() == Chemistry.LFP ? top : top + 0.04;
      double positive = pair.positiveSize() * size;
      double negative = pair.negativeSize() * size;
      double[] start = {
        full + pair.fullPositive() * positive,
        positive,
        full - size - pair.emptyNegative() * negative,
        negative,
        0
      };
      double[] difference = new double[start.length];
      Arrays.fill(difference, 1e-5);
      return NonlinearFit.of(this::residuals, start, difference).flatMap(this::of);
    }

    private Optional<CurveAnchor> of(NonlinearFit fit) {
      double[] p = fit.value();
      double squares = 0;
      double chi = 0;
      double[] r = residuals(p);
      for (int i = 0; i < POINTS; i++) {
        squares += sq(r[i] * sd[i]);
        chi += sq(r[i]);
      }
      double misfit = Math.sqrt(squares / POINTS);
      double full = carriedOn(p);
      double empty = root(p, emptyV, p[2] - 0.005, p[2] + 0.6);
      if (Double.isNaN(full) || Double.isNaN(empty) || !(full > empty)) {
        return Optional.empty();
      }
      // Neighbouring points share their misfit: about one in ten is independent.
      double inflate = Math.max(1, Math.sqrt(chi / POINTS)) * Math.sqrt(10);
      double fullSd = inflate * rootSd(fit, fullV, true);
      double emptySd = inflate * rootSd(fit, emptyV, false);
      return Optional.of(
          new CurveAnchor(
              pair,
              p[0] * nominalAh,
              p[1] * nominalAh,
              p[2] * nominalAh,
              p[3] * nominalAh,
              p[4],
              misfit,
              full * nominalAh,
              empty * nominalAh,
              fullSd * nominalAh,
              emptySd * nominalAh));
    }

    /**
     * Place of the full cell: beyond the end of the learned curve by what the functions say is left
     * from its voltage there. How far they lag behind is known the better the steeper the curve is.
     */
    private double carriedOn(double[] p) {
      double full = fullRoot(p, fullV);
      double lag = fullRoot(p, Math.min(fullV, endV)) - end;
      return Double.isNaN(lag) ? full : full - trust(endSlope) * lag;
    }

    private double rootSd(NonlinearFit fit, double volt, boolean top) {
      double[] p = fit.value();
      double[] gradient = new double[p.length];
      for (int k = 0; k < p.length; k++) {
        double h = 1e-4;
        double[] up = p.clone();
        double[] down = p.clone();
        up[k] += h;
        down[k] -= h;
        gradient[k] = (edge(up, volt, top) - edge(down, volt, top)) / (2 * h);
      }
      return fit.sd(gradient);
    }

    private double edge(double[] p, double volt, boolean top) {
      return top ? carriedOn(p) : root(p, volt, p[2] - 0.005, p[2] + 0.6);
    }

    private double fullRoot(double[] p, double volt) {
      double about = p[0] - pair.fullPositive() * p[1];
      return root(p, volt, about - 0.25, Math.min(p[0] + 0.02, about + 0.25));
    }

    /** Place at which the (rising) model passes a voltage, by bisection; NaN outside. */
    private double root(double[] p, double volt, double low, double high) {
      double a = low;
      double b = high;
      if (!(model(p, a) < volt) || !(model(p, b) > volt)) {
        return Double.NaN;
      }
      for (int i = 0; i < 60; i++) {
        double middle = (a + b) / 2;
        if (model(p, middle) < volt) {
          a = middle;
        } else {
          b = middle;
        }
      }
      return (a + b) / 2;
    }

    private static double sq(double x) {
      return x * x;
    }
  }
}
