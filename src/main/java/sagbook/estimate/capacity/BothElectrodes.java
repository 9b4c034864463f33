package sagbook.estimate.capacity;

import java.util.Arrays;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import sagbook.estimate.capacity.CellReading.Figure;
import sagbook.estimate.curve.ElectrodePair;
import sagbook.numeric.NonlinearFit;

/**
 * A pair of published electrodes laid over the part of a string's curve that was seen, to tell
 * which of the two empties its cells, and where.
 *
 * <p>{@code V(q) = Up((p - q)/P) - Un((q - n)/N) + c}, with p and n the places at which either
 * electrode holds no lithium. Where one worn cell alone taught the curve, what it lost moves p: it
 * shows the same graphite beside a positive electrode that lies lower.
 *
 * @param pair the functions
 * @param part what was seen; charges are shares of its unit
 * @param fit p, P, n, N and c
 * @param squares sum of what it leaves and what it asks for
 */
record BothElectrodes(ElectrodePair pair, SeenPart part, NonlinearFit fit, double squares) {
  private static final int POINTS = 120;

  /** Neighbouring points that err alike. Common practice, no source. */
  private static final double POINTS_ALIKE = 5;

  /** How well published functions hold for another maker's cells, V. Common practice, no source. */
  private static final double CURVE_V = 0.002;

  /** How well the charge axis does, as a share of capacity. Common practice, no source. */
  private static final double AXIS = 0.0015;

  /** The same where one cell alone showed the curve, whose place is known less well. */
  private static final double AXIS_ALONE = 0.003;

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
   * Degrees of freedom: 29 residuals that err apart (the points' 24 and five that are held likely)
   * less five parameters.
   */
  static final double FREE = 24;

  /** Chi-square that one fit in twenty exceeds which holds. */
  private static final double MOST_SQUARES = 36.4;

  private static final double[] DIFFERENCE = {1e-5, 1e-5, 1e-5, 1e-5, 1e-6};

  /** The rise before its end over which a knee is compared with another, V. Common practice. */
  private static final double RISE_V = 0.05;

  /**
   * The same of a knee that was hardly climbed, as a share of what it rises above the flat part,
   * which tells nothing of how steep it is. Common practice, no source.
   */
  private static final double RISE_SHARE = 0.5;

  /** Furthest that a curve is taken to lag behind or to run ahead. Common practice, no source. */
  private static final double MOST_LAG = 0.05;

  private static final int POSITIVE = 0;
  private static final int POSITIVE_SIZE = 1;
  private static final int NEGATIVE = 2;
  private static final int NEGATIVE_SIZE = 3;
  private static final int OFFSET = 4;

  /**
   * Lays a pair.
   *
   * @param sizes of the electrodes over those of a cell that holds the unit of charge, from which
   *     the fit starts
   */
  static Optional<BothElectrodes> of(ElectrodePair pair, SeenPart part, double... sizes) {
    return Arrays.stream(sizes)
        .mapToObj(
            size ->
                NonlinearFit.of(
                    p -> residuals(pair, part, p), start(pair, part.to(), size), DIFFERENCE))
        .flatMap(Optional::stream)
        .map(fit -> laid(pair, part, fit))
        .min((a, b) -> Double.compare(a.squares, b.squares));
  }

  private static BothElectrodes laid(ElectrodePair pair, SeenPart part, NonlinearFit fit) {
    double squares = Arrays.stream(residuals(pair, part, fit.value())).map(r -> r * r).sum();
    return new BothElectrodes(pair, part, fit, squares);
  }

  /** Size of the positive electrode over that of a usual new cell that holds the unit of charge. */
  double size() {
    return fit.value()[POSITIVE_SIZE] / pair.positiveSize();
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

  private static double[] residuals(ElectrodePair pair, SeenPart part, double[] p) {
    double[] r = new double[POINTS + 5];
    double from = part.from();
    double to = part.to();
    for (int i = 0; from < to && i < POINTS; i++) {
      double q = from + (to - from) * (i + 0.5) / POINTS;
      double axis = q < part.shared() ? AXIS_ALONE : AXIS;
      double sd = Math.hypot(CURVE_V, axis * part.curve().slopeAt(q)) * Math.sqrt(POINTS_ALIKE);
      r[i] = (volt(pair, p, part.lostAt(q), q) - part.curve().at(q)) / sd;
    }
    double size = p[POSITIVE_SIZE] / pair.positiveSize();
    r[POINTS] = (size - 1) / SIZE_SD;
    r[POINTS + 1] = (p[NEGATIVE_SIZE] / pair.negativeSize() / size - 1) / RATIO_SD;
    r[POINTS + 2] = p[OFFSET] / OFFSET_SD;
    r[POINTS + 3] = (lost(pair, p) - LOST) / LOST_SD;
    r[POINTS + 4] = (p[POSITIVE] - pair.fullPositive() * p[POSITIVE_SIZE] - to) / FULL_SD;
    return r;
  }

  private static double volt(ElectrodePair pair, double[] p, double lost, double q) {
    return pair.positive((p[POSITIVE] - lost - q) / p[POSITIVE_SIZE])
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
    return figure(p -> empty(p, 0, emptyV) - empty(p, lost, emptyV));
  }

  /** What follows from the fit, and how well the fit knows it. */
  private Figure figure(ToDoubleFunction<double[]> of) {
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

  /** Where a cell is empty whose positive electrode lies so much lower. */
  private double empty(double[] p, double lost, double emptyV) {
    return passed(p, lost, emptyV, p[NEGATIVE] - 0.05, p[NEGATIVE] + 0.5);
  }

  /**
   * Where a cell passes a voltage whose positive electrode lies so much lower, by bisection; NaN
   * where it does not between two places.
   */
  private double passed(double[] p, double lost, double passedV, double from, double to) {
    if (!(volt(pair, p, lost, from) < passedV) || !(volt(pair, p, lost, to) > passedV)) {
      return Double.NaN;
    }
    double low = from;
    double high = to;
    for (int i = 0; i < 60; i++) {
      double middle = (low + high) / 2;
      if (volt(pair, p, lost, middle) < passedV) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return (low + high) / 2;
  }

  /**
   * Where the usual cell is empty: by the functions, less what they lag behind the curve at the
   * lowest place that several cells showed. That is seen the better the steeper the curve is there.
   * NaN where they don't say.
   */
  double empty(double emptyV) {
    return usuallyEmpty(fit.value(), emptyV);
  }

  private double usuallyEmpty(double[] p, double emptyV) {
    double lowest = part.shared();
    double lag = empty(p, 0, part.curve().at(lowest)) - lowest;
    if (Double.isNaN(lag)) {
      return empty(p, 0, emptyV);
    }
    double trust = CurveAnchor.trust(part.curve().slopeAt(lowest));
    return empty(p, 0, emptyV) - trust * Math.max(-MOST_LAG, Math.min(lag, MOST_LAG));
  }

  /**
   * Where the usual cell is full: beyond the highest place seen by what the functions say is left
   * from its voltage there. A knee that was seen to be steeper than theirs is left the sooner (for
   * one that rises exponentially in proportion); one that seems gentler, or of which too little was
   * seen, is taken for theirs. NaN where they don't say.
   */
  double full(double fullV) {
    return full(fit.value(), fullV);
  }

  private double full(double[] p, double fullV) {
    double end = part.end(fullV);
    double endV = Math.min(fullV, part.curve().at(end));
    double riseV = Math.min(RISE_V, RISE_SHARE * (endV - part.flatV(end)));
    double steeper = part.width(end, riseV) / knee(p, endV - riseV, endV);
    return end + (steeper < 1 ? steeper : 1) * knee(p, endV, fullV);
  }

  /** Charge between full and empty, and how well the fit knows it. */
  Figure capacity(double fullV, double emptyV) {
    return figure(p -> full(p, fullV) - usuallyEmpty(p, emptyV));
  }

  /** Charge between two voltages on the knee at the end of charge. */
  private double knee(double[] p, double fromV, double toV) {
    double about = p[POSITIVE] - pair.fullPositive() * p[POSITIVE_SIZE];
    double to = Math.min(p[POSITIVE] + 0.02, about + 0.25);
    return passed(p, 0, toV, about - 0.3, to) - passed(p, 0, fromV, about - 0.3, to);
  }

  /** Root mean square of what is left where several cells showed the curve, V. */
  double misfitV() {
    double sum = 0;
    for (int i = 0; i < POINTS; i++) {
      double q = part.shared() + (part.to() - part.shared()) * (i + 0.5) / POINTS;
      sum += sq(volt(pair, fit.value(), 0, q) - part.curve().at(q));
    }
    return Math.sqrt(sum / POINTS);
  }

  private static double sq(double x) {
    return x * x;
  }
}
