package sagbook.estimate.temperature;

import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import sagbook.numeric.Jackknife;
import sagbook.numeric.Ridge;
import sagbook.numeric.Robust;

/**
 * Which thermometer the bleeding of which cell warms. A board that bleeds gets warm, and cells
 * bleed at times of their own, so where bleeding is logged it tells on which cell a thermometer
 * sits. Least squares give each thermometer's departure from the string's median what every cell's
 * bleeding, the room and the load add to it.
 *
 * @param kelvin what full bleeding adds, [thermometer][bleeding cell], K
 * @param kelvinSd its standard deviation, by leaving out one stretch of the record at a time; 0 of
 *     a cell that bled too seldom to tell
 */
record BleedWarmth(double[][] kelvin, double[][] kelvinSd) {
  private static final int STRETCHES = 12;

  /** In fewer stretches than this a cell's bleeding is seen too seldom to leave one out. */
  private static final int FEWEST = 6;

  /** What is said has to stand clear by so many standard deviations. */
  private static final double CLEAR = 5;

  /** The same of the second of a pair, the first of which stands clear. */
  private static final double LIKELY = 3;

  /** What a board may add to the reading that its neighbours' don't, K. Common practice. */
  private static final double BOARD_K = 3;

  /** The same over its neighbours', as a ratio. */
  private static final double BOARD_RATIO = 3;

  /** Measures a record; empty where no bleeding was logged. */
  static Optional<BleedWarmth> of(HalfHours halfHours) {
    if (halfHours.bleed().length == 0) {
      return Optional.empty();
    }
    int cells = halfHours.bleed()[0].length;
    boolean[] often = often(halfHours, cells);
    double[][] kelvin = new double[cells][];
    double[][] sd = new double[cells][];
    for (int t = 0; t < cells; t++) {
      Ridge[] stretch = sums(halfHours, t);
      kelvin[t] = solve(stretch, -1, cells);
      double[][] left = new double[STRETCHES][];
      for (int k = 0; k < STRETCHES; k++) {
        left[k] = solve(stretch, k, cells);
      }
      sd[t] =
          IntStream.range(0, cells)
              .mapToDouble(c -> often[c] ? Jackknife.sd(left, c) : 0)
              .toArray();
      for (int c = 0; c < cells; c++) {
        kelvin[t][c] = often[c] ? kelvin[t][c] : 0;
      }
    }
    return Optional.of(new BleedWarmth(kelvin, sd));
  }

  /** Which cells bled in enough of the stretches. */
  private static boolean[] often(HalfHours halfHours, int cells) {
    int n = halfHours.bleed().length;
    boolean[][] bled = new boolean[cells][STRETCHES];
    for (int h = 0; h < n; h++) {
      for (int c = 0; c < cells; c++) {
        bled[c][(int) ((long) h * STRETCHES / n)] |= halfHours.bleed()[h][c] > 0;
      }
    }
    boolean[] often = new boolean[cells];
    for (int c = 0; c < cells; c++) {
      int stretches = 0;
      for (boolean one : bled[c]) {
        stretches += one ? 1 : 0;
      }
      often[c] = stretches >= FEWEST;
    }
    return often;
  }

  private static Ridge[] sums(HalfHours halfHours, int thermometer) {
    int n = halfHours.bleed().length;
    Ridge[] stretch = new Ridge[STRETCHES];
    Arrays.setAll(stretch, k -> new Ridge(explaining(halfHours, 0).length));
    for (int h = 0; h < n; h++) {
      double[] row = explaining(halfHours, h);
      if (halfHours.isSeen(h, thermometer) && Arrays.stream(row).allMatch(Double::isFinite)) {
        int k = (int) ((long) h * STRETCHES / n);
        stretch[k].observe(row, halfHours.departureK()[h][thermometer], 1);
      }
    }
    return stretch;
  }

  /** The bleeding of every cell, and what else moves cells. */
  private static double[] explaining(HalfHours halfHours, int halfHour) {
    double[] bleed = halfHours.bleed()[halfHour];
    double[] other = halfHours.explaining(halfHour);
    double[] row = Arrays.copyOf(bleed, bleed.length + other.length);
    System.arraycopy(other, 0, row, bleed.length, other.length);
    return row;
  }

  private static double[] solve(Ridge[] stretch, int leftOut, int cells) {
    Ridge fit = new Ridge(stretch[0].parameters());
    for (int k = 0; k < stretch.length; k++) {
      if (k != leftOut) {
        fit.add(stretch[k]);
      }
    }
    for (int i = 0; i < fit.parameters(); i++) {
      fit.prior(i, 0, HalfHours.FREE_K);
    }
    return Arrays.copyOf(fit.solve().value(), cells);
  }

  /**
   * The cell on which a thermometer sits that does not sit on its own, if there is such a one: that
   * cell's bleeding warms this thermometer and no other as much, and its own cell's does not. Less
   * has to be seen of the second of two that changed places.
   */
  OptionalInt sitsOn(int thermometer) {
    int cell = warmedBy(thermometer);
    boolean elsewhere =
        isElsewhere(thermometer, CLEAR)
            || (isElsewhere(thermometer, LIKELY)
                && warmedBy(cell) == thermometer
                && isElsewhere(cell, CLEAR));
    return elsewhere ? OptionalInt.of(cell) : OptionalInt.empty();
  }

  private boolean isElsewhere(int thermometer, double clear) {
    int cell = warmedBy(thermometer);
    return cell != thermometer
        && kelvinSd[thermometer][thermometer] > 0
        && kelvin[thermometer][cell] > usual() / 2
        && isPair(thermometer, cell, clear)
        && isClearlyMore(thermometer, cell, thermometer, clear)
        && isClearlyMore(thermometer, cell, cell, clear);
  }

  /**
   * Whether a thermometer shows its board where others show their cell; not told where fewer than
   * half of the cells bled, for there is nothing to compare with.
   */
  boolean isBoard(int thermometer) {
    double own = kelvin[thermometer][thermometer];
    double[] all =
        IntStream.range(0, kelvin.length)
            .filter(t -> kelvinSd[t][t] > 0)
            .mapToDouble(t -> kelvin[t][t])
            .toArray();
    double least = Math.max(BOARD_K, BOARD_RATIO * Robust.median(all));
    return 2 * all.length >= kelvin.length
        && own - CLEAR * kelvinSd[thermometer][thermometer] > least;
  }

  /**
   * What the bleeding of a cell adds to the thermometer that sits on it, whichever that is: the
   * median of all that clearly belong to one cell each, K; NaN when fewer than half of them do, for
   * one of many may seem to by chance, and what happens as charging ends may seem one cell's doing.
   */
  private double usual() {
    double[] clear =
        IntStream.range(0, kelvin.length)
            .filter(t -> isPair(t, warmedBy(t), CLEAR))
            .mapToDouble(t -> kelvin[t][warmedBy(t)])
            .toArray();
    return 2 * clear.length < kelvin.length ? Double.NaN : Robust.median(clear);
  }

  /** Whether a cell's bleeding clearly warms this thermometer, and no other as much. */
  private boolean isPair(int thermometer, int cell, double clear) {
    double most = Arrays.stream(kelvin).mapToDouble(row -> row[cell]).max().orElse(Double.NaN);
    return kelvin[thermometer][cell] > clear * kelvinSd[thermometer][cell]
        && kelvin[thermometer][cell] >= most;
  }

  /** The cell whose bleeding warms a thermometer most. */
  private int warmedBy(int thermometer) {
    int most = 0;
    for (int c = 1; c < kelvin.length; c++) {
      most = kelvin[thermometer][c] > kelvin[thermometer][most] ? c : most;
    }
    return most;
  }

  /** Whether a cell's bleeding warms one thermometer more than another cell warms its own. */
  private boolean isClearlyMore(int thermometer, int cell, int own, double clear) {
    double sd = Math.hypot(kelvinSd[thermometer][cell], kelvinSd[own][own]);
    return kelvin[thermometer][cell] - kelvin[own][own] > clear * sd;
  }
}
