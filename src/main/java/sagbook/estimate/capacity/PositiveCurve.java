package sagbook.estimate.capacity;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import sagbook.estimate.curve.ElectrodePair;
import sagbook.numeric.EvenTable;
import sagbook.numeric.NonlinearFit;

/**
 * Potential of a string's positive electrode along its charge axis: what the string's curve leaves
 * once the graphite is taken off, carried on by the published function that lies closest to it
 * where the string was not seen.
 *
 * @param seen open-circuit voltage of the string's cells, V over shares of nominal capacity
 * @param from lowest place that was seen
 * @param to highest place that was seen
 * @param graphite the graphite of its cells
 * @param laid the published function
 */
record PositiveCurve(EvenTable seen, double from, double to, LaidGraphite graphite, Laid laid) {
  private static final int POINTS = 60;

  /** Voltage by which published functions miss a measured electrode, V, and how many err alike. */
  private static final double MISSES_V = 0.003;

  private static final double POINTS_ALIKE = 5;

  /** Spread of electrode sizes about the published ones, and of the function's level, V. */
  private static final double SIZE_SD = 0.06;

  private static final double LEVEL_SD_V = 0.01;

  /**
   * A new cell is emptied by both electrodes at once; one in use has lost some lithium, so that its
   * positive electrode would be empty a little later than its graphite. Share of capacity and its
   * standard deviation; common practice, no source.
   */
  private static final double USUALLY_LOST = 0.02;

  private static final double LOST_SD = 0.03;

  /**
   * A published positive electrode laid along the axis.
   *
   * @param of whose it is
   * @param end place at which it is full of charge and holds no lithium
   * @param size charge it can hold
   * @param levelV what is added to its potential, V
   */
  record Laid(ElectrodePair of, double end, double size, double levelV) {
    double volt(double place) {
      return of.positive((end - place) / size) + levelV;
    }

    /** Where it holds as much lithium as that of an empty new cell. */
    double empty() {
      return end - (of.fullPositive() + 1 / of.positiveSize()) * size;
    }
  }

  /**
   * Lays the published functions over what is left of the curve; empty where none will lie.
   *
   * @param full about where the string is full
   */
  static Optional<PositiveCurve> of(
      EvenTable seen,
      double from,
      double to,
      LaidGraphite graphite,
      List<ElectrodePair> published,
      double full) {
    Laid best = null;
    double least = Double.POSITIVE_INFINITY;
    for (ElectrodePair pair : published) {
      for (double size : new double[] {0.9, 1.0, 1.1}) {
        double s = pair.positiveSize() * size;
        double[] start = {full + pair.fullPositive() * s, s, 0};
        double[] difference = {1e-5, 1e-5, 1e-5};
        Optional<NonlinearFit> fit =
            NonlinearFit.of(p -> misses(p, pair, seen, from, to, graphite), start, difference);
        if (fit.isPresent()) {
          double[] p = fit.get().value();
          double squares =
              Arrays.stream(misses(p, pair, seen, from, to, graphite)).map(r -> r * r).sum();
          if (squares < least) {
            least = squares;
            best = new Laid(pair, p[0], p[1], p[2]);
          }
        }
      }
    }
    return Optional.ofNullable(best).map(laid -> new PositiveCurve(seen, from, to, graphite, laid));
  }

  private static double[] misses(
      double[] p,
      ElectrodePair pair,
      EvenTable seen,
      double from,
      double to,
      LaidGraphite graphite) {
    Laid laid = new Laid(pair, p[0], p[1], p[2]);
    double[] r = new double[POINTS + 3];
    for (int i = 0; i < POINTS; i++) {
      double q = from + (to - from) * (i + 0.5) / POINTS;
      double off = laid.volt(q) - seen.at(q) - graphite.volt(q);
      r[i] = off / MISSES_V / Math.sqrt(POINTS_ALIKE);
    }
    r[POINTS] = (p[1] / pair.positiveSize() - 1) / SIZE_SD;
    r[POINTS + 1] = p[2] / LEVEL_SD_V;
    double lost = graphite.empty() - laid.empty();
    r[POINTS + 2] = (lost - USUALLY_LOST) / LOST_SD;
    return r;
  }

  /** The same string with its graphite laid elsewhere, which the positive electrode makes up. */
  PositiveCurve with(LaidGraphite other) {
    return of(
            seen,
            from,
            to,
            other,
            List.of(laid.of()),
            laid.end() - laid.of().fullPositive() * laid.size())
        .orElse(new PositiveCurve(seen, from, to, other, laid));
  }

  /** Potential at a place, V. */
  double volt(double place) {
    double known = Math.max(from, Math.min(to, place));
    double there = seen.at(known) + graphite.volt(known);
    return known == place ? there : there + laid.volt(place) - laid.volt(known);
  }
}
