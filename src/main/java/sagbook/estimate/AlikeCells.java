package sagbook.estimate;

import java.util.List;
import java.util.SplittableRandom;
import sagbook.model.Estimate;
import sagbook.numeric.Robust;

/**
 * What a string's cells say about each of them: most lie about the median with a spread of their
 * own, a few stand clear of it. The smallest of many doubtful cells mostly looks smaller than it
 * is, so each is weighed against its neighbours before anything is made of the smallest (empirical
 * Bayes, compare Efron and Morris 1975; the prior a mixture of two normal distributions about the
 * median). The neighbours' spread is the likeliest, given the cells and what is usual. A cell that
 * is seen sharply, or stands clear, stays where it was seen.
 *
 * @param centre the median cell, as a share
 * @param spread standard deviation of cells that are alike, as a share
 */
record AlikeCells(double centre, double spread) {
  /** Spread of healthy cells, as a share of capacity. Common practice, no source. */
  private static final double USUAL = 0.01;

  /** A string's own spread is that within this factor, one standard deviation of its logarithm. */
  private static final double USUAL_WITHIN = 2;

  /** The same for cells that stand clear. Common practice, no source. */
  private static final double CLEAR = 0.1;

  /** How many cells are alike. Common practice, no source. */
  private static final double MOST = 0.9;

  /** Spreads tried: this many to either side of the usual one, ten to a factor of e. */
  private static final int TRIED = 20;

  /**
   * What is likely of one cell: alike to its neighbours or clear of them.
   *
   * @param alike probability of the first
   */
  record Likely(double alike, double mean, double sd, double clearMean, double clearSd) {
    double best() {
      return alike * mean + (1 - alike) * clearMean;
    }

    double draw(SplittableRandom random) {
      boolean first = random.nextDouble() < alike;
      double normal = StringDraws.normal(random);
      return first ? mean + sd * normal : clearMean + clearSd * normal;
    }
  }

  /**
   * Learns from the cells that are known.
   *
   * @param cells shares of capacity, or of charge
   */
  static AlikeCells of(List<Estimate.Known> cells) {
    double centre = Robust.median(cells.stream().mapToDouble(Estimate.Known::value).toArray());
    double likeliest = USUAL;
    double most = Double.NEGATIVE_INFINITY;
    for (int i = -TRIED; i <= TRIED; i++) {
      double spread = USUAL * Math.exp(i / 10.0);
      double log = -0.5 * sq(Math.log(spread / USUAL) / Math.log(USUAL_WITHIN));
      for (Estimate.Known cell : cells) {
        log += Math.log(asAlike(cell, centre, spread) + asClear(cell, centre));
      }
      if (log > most) {
        most = log;
        likeliest = spread;
      }
    }
    return new AlikeCells(centre, likeliest);
  }

  /**
   * Whether a cell lies further from the median than its neighbours and its own doubt explain by
   * one standard deviation. Such a cell may as well be what it looks like.
   */
  boolean standsOut(Estimate.Known cell) {
    return Math.abs(cell.value() - centre) > Math.hypot(spread, StringDraws.sd(cell));
  }

  /** A cell as it was seen, weighed against its neighbours. */
  Likely weigh(Estimate.Known cell) {
    double alike = asAlike(cell, centre, spread);
    double own = sq(StringDraws.sd(cell));
    double near = sq(spread) / (sq(spread) + own);
    double far = sq(CLEAR) / (sq(CLEAR) + own);
    return new Likely(
        alike / (alike + asClear(cell, centre)),
        centre + near * (cell.value() - centre),
        Math.sqrt(near * own),
        centre + far * (cell.value() - centre),
        Math.sqrt(far * own));
  }

  private static double asAlike(Estimate.Known cell, double centre, double spread) {
    return MOST * density(cell.value() - centre, Math.hypot(spread, StringDraws.sd(cell)));
  }

  private static double asClear(Estimate.Known cell, double centre) {
    return (1 - MOST) * density(cell.value() - centre, Math.hypot(CLEAR, StringDraws.sd(cell)));
  }

  /** Normal density but for a constant factor; never quite 0, so that its logarithm is a number. */
  private static double density(double x, double sd) {
    return Math.max(Double.MIN_NORMAL, Math.exp(-0.5 * sq(x / sd))) / sd;
  }

  private static double sq(double x) {
    return x * x;
  }
}
