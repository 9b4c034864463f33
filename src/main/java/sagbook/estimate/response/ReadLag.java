package sagbook.estimate.response;

import java.util.Arrays;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.function.Function;
import java.util.stream.IntStream;
import sagbook.evidence.Evidence;
import sagbook.evidence.Onset;
import sagbook.evidence.ResponseBasis;
import sagbook.numeric.Jackknife;

/**
 * How long after the current each cell is read, told from the two rows around steps that stand
 * alone. A step lies anywhere between two rows, so a cell that is read L later (before: L is
 * negative) shows a share {@code L / spacing} of it in the row before, or lacks as much of it in
 * the row after; the answer R of both rows together is {@code 1/spacing} times the integral of R(a)
 * from age 0 to {@code spacing + L}. Where rows tell little, boards are taken as read within a
 * second or so. A log that has a time for each value says it itself.
 *
 * @param meanS of all cells, s
 * @param meanSdS its standard deviation, s
 * @param beyondS of each cell beyond the mean, s; empty where rows don't tell
 * @param beyondSdS standard deviation of one of these, s
 * @param curveOhmPerS what the charge moved in a second adds to an answer: the slope of the
 *     open-circuit curve
 */
public record ReadLag(
    double meanS, double meanSdS, double[] beyondS, double beyondSdS, double curveOhmPerS) {
  /**
   * How much later or earlier than the others a cell is read, s: a sweep over all boards takes a
   * second or two. Common practice, no source.
   */
  public static final double USUAL_S = 0.5;

  /**
   * Values that carry nearly one time may have been written at once, whenever they were read, s.
   * Common practice, no source.
   */
  private static final double TOLD_APART_S = 2 * USUAL_S;

  /** Fewer steps, or fewer days, tell nothing. Common practice, no source. */
  private static final int FEWEST_STEPS = 30;

  private static final int FEWEST_PARTS = 4;

  /**
   * Share of the spacing by which the mean may be off: how large an answer younger than the rows
   * show is, follows from older ones only. Set on invented packs of a generator that shares no code
   * with this project, where it seemed up to 0.35 of it off.
   */
  private static final double YOUNG_SD = 0.2;

  /**
   * A current that another device logs may be off by more than the cells are; of that counts what
   * goes beyond so many standard deviations. Common practice, no source.
   */
  private static final double CLEAR = 2;

  /**
   * The same between cells, which differ in that shape only if a joint resists. Common practice, no
   * source.
   */
  private static final double CELLS_SD = 0.02;

  private static final int PASSES = 6;
  private static final int HALVINGS = 20;

  /** Before the rows have spoken, or where they don't. */
  public static ReadLag usual() {
    return new ReadLag(0, 0, new double[0], USUAL_S, 0);
  }

  /** The same, all cells being read so much later. */
  ReadLag later(double byS) {
    return new ReadLag(meanS + byS, meanSdS, beyondS, beyondSdS, curveOhmPerS);
  }

  /**
   * From a log with current.
   *
   * @param scale size of the response in each window; 0 leaves a window out
   * @param response of the string as its cells are read
   */
  public static ReadLag of(
      Evidence evidence, List<ReducedWindow> windows, double[] scale, StringResponse response) {
    if (apart(evidence.toldLagS()) > TOLD_APART_S) {
      return told(evidence.toldLagS(), slope(windows, scale, response) / 3600);
    }
    int cells = evidence.channels().seriesCells();
    List<Onset> parts = evidence.onsets();
    int steps = parts.stream().mapToInt(Onset::steps).sum();
    if (!evidence.channels().hasCurrent()
        || steps < FEWEST_STEPS
        || parts.size() < FEWEST_PARTS
        || evidence.cadenceS() >= ResponseBasis.SLOW_CADENCE_S) {
      return usual();
    }
    double voltPerAh = slope(windows, scale, response);
    Shape seen = Shape.of(response, voltPerAh);
    double spacingS = evidence.cadenceS();
    double[] lag = lags(parts, -1, seen, spacingS, cells);
    double[][] left = new double[parts.size()][];
    Arrays.setAll(left, k -> lags(parts, k, seen, spacingS, cells));
    return shrunk(lag, left, spacingS, voltPerAh / 3600);
  }

  /** From the first to the last, s; 0 of none. */
  private static double apart(double[] lagS) {
    DoubleSummaryStatistics all = Arrays.stream(lagS).summaryStatistics();
    return all.getCount() == 0 ? 0 : all.getMax() - all.getMin();
  }

  /** From the log's own times, which are as good as boards that are read within a second. */
  private static ReadLag told(double[] lagS, double curveOhmPerS) {
    double mean = Arrays.stream(lagS).average().orElseThrow();
    double[] beyond = Arrays.stream(lagS).map(s -> s - mean).toArray();
    return new ReadLag(mean, USUAL_S, beyond, USUAL_S, curveOhmPerS);
  }

  /** Rows tell so much, and that boards are usually read within a second the rest. */
  private static ReadLag shrunk(
      double[] lag, double[][] left, double spacingS, double curveOhmPerS) {
    int cells = lag.length - 1;
    double[] sd = new double[lag.length];
    Arrays.setAll(
        sd, c -> Math.hypot(Jackknife.sd(left, c), (c < cells ? CELLS_SD : YOUNG_SD) * spacingS));
    double spread = 0;
    for (int c = 0; c < cells; c++) {
      spread += (lag[c] * lag[c] - sd[c] * sd[c]) / cells;
    }
    double apart = Math.max(USUAL_S * USUAL_S, spread);
    // The current is read within the same sweep, so it is as far from the mean as any cell.
    double doubt = CLEAR * sd[cells];
    double away = Math.max(apart, lag[cells] * lag[cells] - doubt * doubt);
    double[] beyond = new double[cells];
    double variance = 0;
    for (int c = 0; c < cells; c++) {
      double told = apart / (apart + sd[c] * sd[c]);
      beyond[c] = told * lag[c];
      variance += told * sd[c] * sd[c] / cells;
    }
    double told = away / (away + sd[cells] * sd[cells]);
    return new ReadLag(
        told * lag[cells], Math.sqrt(told) * sd[cells], beyond, Math.sqrt(variance), curveOhmPerS);
  }

  /** Lag of each cell beyond the mean, and last the mean, s. */
  private static double[] lags(
      List<Onset> parts, int leftOut, Shape seen, double spacingS, int cells) {
    List<Onset> used =
        IntStream.range(0, parts.size()).filter(k -> k != leftOut).mapToObj(parts::get).toList();
    double[] early = sum(used, cells, Onset::early);
    double[] later = sum(used, cells, Onset::later);
    int size = used.get(0).earlyState().length;
    double[] earlyState = sum(used, size, Onset::earlyState);
    double[] laterState = sum(used, size, Onset::laterState);
    double squares = used.stream().mapToDouble(Onset::squares).sum();
    double mean = 0;
    double[] lag = new double[cells + 1];
    for (int pass = 0; pass < PASSES; pass++) {
      Shape shape = seen.later(-mean);
      double fixed = shape.of(earlyState);
      DoubleUnaryOperator share =
          late ->
              (fixed + squares / spacingS * shape.between(spacingS, spacingS + late))
                  / shape.later(late).of(laterState);
      for (int c = 0; c < cells; c++) {
        lag[c] = root(share, early[c] / later[c], spacingS);
      }
      mean = Arrays.stream(lag, 0, cells).average().orElse(0);
    }
    for (int c = 0; c < cells; c++) {
      lag[c] -= mean;
    }
    lag[cells] = mean;
    return lag;
  }

  private static double[] sum(List<Onset> parts, int size, Function<Onset, double[]> of) {
    double[] sums = new double[size];
    for (Onset part : parts) {
      double[] some = of.apply(part);
      for (int i = 0; i < size; i++) {
        sums[i] += some[i];
      }
    }
    return sums;
  }

  /** Where a rising function takes a value, within a spacing of 0. */
  private static double root(DoubleUnaryOperator rising, double value, double spacingS) {
    double low = -spacingS;
    double high = spacingS;
    for (int k = 0; k < HALVINGS; k++) {
      double middle = (low + high) / 2;
      if (rising.applyAsDouble(middle) < value) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return (low + high) / 2;
  }

  /** Slope of the open-circuit curve over the windows used, V/Ah: what the response leaves. */
  private static double slope(
      List<ReducedWindow> windows, double[] scale, StringResponse response) {
    int charge = response.basis().charge();
    double along = 0;
    double squares = 0;
    for (int w = 0; w < scale.length; w++) {
      if (scale[w] > 0) {
        double[] gram = windows.get(w).window().gram();
        int row = charge * (charge + 1) / 2;
        for (double[] cross : windows.get(w).window().cross()) {
          along += cross[charge] / windows.get(w).window().cross().length;
        }
        for (int i = 0; i < charge; i++) {
          along -= scale[w] * gram[row + i] * response.coefficients()[i];
        }
        squares += gram[row + charge];
      }
    }
    return squares > 0 ? along / squares : 0;
  }

  /**
   * A response whose parts, hysteresis and charge among them, are put against the basis.
   *
   * @param value one a regressor
   */
  private record Shape(ResponseBasis basis, double[] value) {
    static Shape of(StringResponse response, double voltPerAh) {
      double[] value = Arrays.copyOf(response.coefficients(), response.basis().size());
      value[response.basis().charge()] = voltPerAh;
      return new Shape(response.basis(), value);
    }

    /** What a board shows that is read so much later: slow parts have built up, charge moved on. */
    Shape later(double byS) {
      double[] then = value.clone();
      for (int k = 0; k < basis.tauS().length; k++) {
        double keep = Math.exp(-byS / basis.tauS()[k]);
        then[0] += value[1 + k] * (1 - keep);
        then[1 + k] = value[1 + k] * keep;
      }
      then[0] += value[basis.charge()] * byS / 3600;
      return new Shape(basis, then);
    }

    double of(double[] state) {
      double sum = 0;
      for (int i = 0; i < state.length; i++) {
        sum += state[i] * value[i];
      }
      return sum;
    }

    /** Integral of the response over the time since a step, ohm s. */
    double between(double fromS, double toS) {
      double sum = value[0] * (toS - fromS);
      for (int k = 0; k < basis.tauS().length; k++) {
        double tau = basis.tauS()[k];
        sum += value[1 + k] * (toS - fromS + tau * (Math.exp(-toS / tau) - Math.exp(-fromS / tau)));
      }
      return sum;
    }
  }
}
