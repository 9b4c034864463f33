package sagbook.estimate.capacity;

import java.util.Arrays;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import sagbook.estimate.capacity.CellReading.Figure;
import sagbook.estimate.curve.ElectrodePair;
import sagbook.numeric.EvenTable;
import sagbook.numeric.NonlinearFit;

/**
 * A pair of published electrodes laid over the part of a string's curve that several cells showed,
 * to tell which of the two empties them. Charges are shares of the median cell's capacity.
 *
 * <p>{@code V(q) = Up((p - q)/P) - Un((q - n)/N) + c}, with p and n the places at which either
 * electrode holds no lithium.
 *
 * @param pair the functions
 * @param fit p, P, n, N and c
 * @param squares sum of what it leaves and what it asks for
 */
record BothElectrodes(ElectrodePair pair, NonlinearFit fit, double squares) {
  private static final int POINTS = 120;

  /** Neighbouring points that err alike. Common practice, no source. */
  private static final double POINTS_ALIKE = 5;

  /** How well published functions hold for another maker's cells, V. Common practice, no source. */
  private static final double CURVE_V = 0.002;

  /** How well the charge axis does, as a share of capacity. Common practice, no source. */
  private static final double AXIS = 0.0015;

  /** Spread of the sizes of electrodes, and of one against the other. Common practice. */
  private static final double SIZE_SD = 0.06;

  private static final double RATIO_SD = 0.08;

  /** The same of a voltage in common, V. */
  private static final double OFFSET_SD = 0.006;

  /** Lithium that a string in use has lost, as a share of a new cell's charge. Common practice. */
  private static final double LOST = 0.02;

  /** How well that is known, and how much of it a maker gives a new cell. Common practice. */
  private static final double LOST_SD = 0.02;

  /** How far full may lie from the highest place that was seen, as a share of capacity. */
  private static final double FULL_SD = 0.05;

  /**
   * Chi-square that one fit in twenty exceeds which holds: 29 residuals that err apart (the points'
   * 24 and five that are held likely) less five parameters leave 24 degrees of freedom.
   */
  private static final double MOST_SQUARES = 36.4;

  private static final double[] DIFFERENCE = {1e-5, 1e-5, 1e-5, 1e-5, 1e-6};
  private static final double[] SIZES = {0.95, 1.05};
  private static final int POSITIVE = 0;
  private static final int POSITIVE_SIZE = 1;
  private static final int NEGATIVE = 2;
  private static final int NEGATIVE_SIZE = 3;
  private static final int OFFSET = 4;

  /**
   * Lays a pair.
   *
   * @param curve V along the charge axis
   * @param from lowest place that several cells showed; none is used where it is no lower than
   *     {@code to}, and what is held likely stands alone
   * @param to highest place that was seen
   */
  static Optional<BothElectrodes> of(ElectrodePair pair, EvenTable curve, double from, double to) {
    return Arrays.stream(SIZES)
        .mapToObj(
            size ->
                NonlinearFit.of(
                    p -> residuals(pair, curve, from, to, p), start(pair, to, size), DIFFERENCE))
        .flatMap(Optional::stream)
        .map(fit -> laid(pair, fit, residuals(pair, curve, from, to, fit.value())))
        .min((a, b) -> Double.compare(a.squares, b.squares));
  }

  private static BothElectrodes laid(ElectrodePair pair, NonlinearFit fit, double[] left) {
    return new BothElectrodes(pair, fit, Arrays.stream(left).map(r -> r * r).sum());
  }

  /** Whether the curve may be that of such cells. */
  boolean mayHold() {
    return squares < MOST_SQUARES;
  }

  private static double[] start(ElectrodePair pair, double full, double size) {
    double positive = size * pair.positiveSize();
    double negative = size * pair.negativeSize();
    return new double[] {
      full + pair.fullPositive() * positive,
      positive,
      full - size * (1 - LOST) - pair.emptyNegative() * negative,
      negative,
      0
    };
  }

  private static double[] residuals(
      ElectrodePair pair, EvenTable curve, double from, double to, double[] p) {
    double[] r = new double[POINTS + 5];
    for (int i = 0; from < to && i < POINTS; i++) {
      double q = from + (to - from) * (i + 0.5) / POINTS;
      double sd = Math.hypot(CURVE_V, AXIS * curve.slopeAt(q)) * Math.sqrt(POINTS_ALIKE);
      r[i] = (volt(pair, p, q) - curve.at(q)) / sd;
    }
    double size = p[POSITIVE_SIZE] / pair.positiveSize();
    r[POINTS] = (size - 1) / SIZE_SD;
    r[POINTS + 1] = (p[NEGATIVE_SIZE] / pair.negativeSize() / size - 1) / RATIO_SD;
    r[POINTS + 2] = p[OFFSET] / OFFSET_SD;
    r[POINTS + 3] = (lost(pair, p) - LOST) / LOST_SD;
    r[POINTS + 4] = (p[POSITIVE] - pair.fullPositive() * p[POSITIVE_SIZE] - to) / FULL_SD;
    return r;
  }

  private static double volt(ElectrodePair pair, double[] p, double q) {
    return pair.positive((p[POSITIVE] - q) / p[POSITIVE_SIZE])
        - pair.negative((q - p[NEGATIVE]) / p[NEGATIVE_SIZE])
        + p[OFFSET];
  }

  /** How much less lithium both hold than those of the published cell, as a share of its charge. */
  private static double lost(ElectrodePair pair, double[] p) {
    double size = p[POSITIVE_SIZE] / pair.positiveSize();
    double unused =
        pair.fullPositive() * p[POSITIVE_SIZE] + pair.emptyNegative() * p[NEGATIVE_SIZE];
    return 1 - (p[POSITIVE] - p[NEGATIVE] - unused) / size;
  }

  /**
   * How much later a cell that lost lithium would be empty, did it hold its place at empty: what it
   * lost beyond its capacity.
   *
   * @param lost lithium that it lost beyond what the string's usual cell did
   * @param emptyV rest voltage of an empty cell
   */
  Figure excess(double lost, double emptyV) {
    ToDoubleFunction<double[]> of = p -> empty(p, 0, emptyV) - empty(p, lost, emptyV);
    double[] gradient = new double[DIFFERENCE.length];
    for (int k = 0; k < gradient.length; k++) {
      double[] up = fit.value().clone();
      double[] down = fit.value().clone();
      up[k] += DIFFERENCE[k];
      down[k] -= DIFFERENCE[k];
      gradient[k] = (of.applyAsDouble(up) - of.applyAsDouble(down)) / (2 * DIFFERENCE[k]);
    }
    return new Figure(of.applyAsDouble(fit.value()), fit.sd(gradient));
  }

  /** Where a cell is empty whose positive electrode lies so much lower, by bisection. */
  private double empty(double[] p, double lost, double emptyV) {
    double[] worn = p.clone();
    worn[POSITIVE] -= lost;
    double low = p[NEGATIVE] - 0.05;
    double high = p[NEGATIVE] + 0.5;
    for (int i = 0; i < 60; i++) {
      double middle = (low + high) / 2;
      if (volt(pair, worn, middle) < emptyV) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return (low + high) / 2;
  }
}
