package sagbook.evidence;

import java.util.Arrays;
import java.util.List;
import sagbook.model.Channels;
import sagbook.model.SampleBlock;
import sagbook.numeric.Robust;

/**
 * Gathers {@link StepWindow}s: changes of voltage between two rows that stand around a step of the
 * drive (the current; without one, the string's mean voltage), with the drive quiet at both ends.
 * Quiet ends make it indifferent whether a board was read a little before or after the current.
 *
 * <p>When a step falls between two rows its exact time is unknown; it is taken as equally likely
 * anywhere between them. The same holds for logs that average over the interval, because averaging
 * and a linear response commute.
 */
final class StepCollector {
  private static final double WINDOW_S = 7200;

  /**
   * How quiet the ends must be, as a share of the step between them. Common practice, no source.
   */
  private static final double QUIET = 0.12;

  /**
   * How long the drive is level before and after a step that stands alone, s, and at least so many
   * rows. Common practice, no source.
   */
  private static final double LEVEL_S = 30;

  private static final int LEVEL_ROWS = 2;

  /**
   * Rows this close see loads come and go, s: hobs, ovens and washing machines take ten seconds to
   * a minute. Common practice, no source.
   */
  private static final double SEES_LOADS_S = 7.5;

  /**
   * How long after the step the answer is taken, s. The row right after it is passed over: the step
   * lies anywhere between two rows, and what an answer younger than that shows is its moment.
   */
  private static final double[] ANSWER_S = {10, 30, 60, 120, 240, 480};

  /**
   * Answers older than this, s, and than so many rows add little and drift with the charge. Common
   * practice, no source.
   */
  private static final double OLDEST_S = 120;

  private static final int OLDEST_ROWS = 12;

  /** Share of capacity over which hysteresis turns round; published curves take a few per cent. */
  private static final double HYSTERESIS_SHARE = 0.04;

  /**
   * Capacity at which hysteresis counts one; of a larger string it counts more, as currents do, so
   * that strings of all sizes are fitted alike.
   */
  private static final double USUAL_AH = 280;

  private final Channels channels;
  private final double nominalAh;
  private final int cells;
  private ResponseBasis basis = ResponseBasis.forCadence(10);
  private StepHistory history;
  private int guardRows = 1;
  private int levelRows = LEVEL_ROWS;

  /** Whether all steps count, so that none need be told from the others. */
  private boolean anyStep = true;

  private int[] spans = new int[0];
  private double threshold = Double.POSITIVE_INFINITY;
  private double lastDrive = Double.NaN;
  private double[] faded = new double[0];
  private double[] state = new double[0];

  private double[] x = new double[0];
  private final double[] y;
  private final boolean[] valid;
  private StepWindowBuilder window;
  private OnsetSums onsets;

  StepCollector(Channels channels, double nominalAh) {
    this.channels = channels;
    this.nominalAh = nominalAh;
    this.cells = channels.seriesCells();
    y = new double[cells];
    valid = new boolean[cells];
    history = new StepHistory(2, cells, basis.size());
    window = new StepWindowBuilder(basis, cells);
    onsets = new OnsetSums(cells, basis.size());
  }

  void start(double cadenceS) {
    basis = ResponseBasis.forCadence(cadenceS);
    faded = new double[basis.tauS().length];
    state = new double[basis.size()];
    x = new double[basis.size()];
    window = new StepWindowBuilder(basis, cells);
    onsets = new OnsetSums(cells, basis.size());
    // A sweep over all boards takes a second or two: of no account beside half a minute.
    guardRows = cadenceS < ResponseBasis.SLOW_CADENCE_S ? 1 : 0;
    spans =
        Arrays.stream(ANSWER_S)
            .filter(s -> s <= Math.max(OLDEST_S, OLDEST_ROWS * cadenceS))
            .mapToInt(s -> guardRows + 1 + Math.max(1, (int) Math.round(s / cadenceS - 0.5)))
            .distinct()
            .filter(rows -> rows <= 40)
            .toArray();
    int longest = spans.length == 0 ? 2 : spans[spans.length - 1];
    levelRows = Math.max(LEVEL_ROWS, (int) Math.rint(LEVEL_S / cadenceS));
    // A slow log holds too few steps that stand alone; what it loses by that outweighs the gain.
    anyStep = !channels.hasCurrent() || cadenceS <= SEES_LOADS_S || guardRows == 0;
    history = new StepHistory(longest + 2 + 2 * levelRows, cells, basis.size());
  }

  ResponseBasis basis() {
    return basis;
  }

  /**
   * Decides what counts as a step in this block: well above the quiet changes from row to row, and
   * not tiny beside the largest ones. Common practice, no source.
   */
  void prepare(SampleBlock block) {
    double[] size = new double[block.rows()];
    double before = lastDrive;
    int n = 0;
    for (int r = 0; r < block.rows(); r++) {
      double now = drive(block, r);
      if (!Double.isNaN(now) && !Double.isNaN(before)) {
        size[n++] = Math.abs(now - before);
      }
      before = now;
    }
    Arrays.sort(size, 0, n);
    if (n > 10) {
      double quiet = 5 * Robust.quantileOfSorted(size, n, 0.4);
      double large = 0.1 * Robust.quantileOfSorted(size, n, 0.995);
      double least = channels.hasCurrent() ? 0.05 : 0.003;
      threshold = Math.max(least, Math.max(quiet, large));
    } else if (n > 0 && Double.isInfinite(threshold)) {
      threshold = 0.3 * size[n - 1];
    }
  }

  private double drive(SampleBlock block, int r) {
    if (channels.hasCurrent()) {
      return block.currentA()[r];
    }
    double sum = 0;
    for (int c = 0; c < cells; c++) {
      sum += block.voltageV()[c][r];
    }
    return sum / cells;
  }

  void take(SampleBlock block, int r, Stopwatch clock) {
    double now = drive(block, r);
    boolean follows = clock.follows() && !Double.isNaN(now) && !Double.isNaN(lastDrive);
    if (follows) {
      advance(now, clock.elapsedS());
    } else {
      history.clear();
      Arrays.fill(faded, 0);
      Arrays.fill(state, 0);
      state[basis.immediate()] = Double.isNaN(now) ? 0 : now;
    }
    lastDrive = now;
    window.rollTo(block.timeS()[r], WINDOW_S);
    window.conditions(block, r, clock);
    if (Double.isNaN(now)) {
      return;
    }
    history.push(now, state, block, r);
    for (int span : spans) {
      around(span);
    }
    if (channels.hasCurrent()) {
      onset(block.timeS()[r]);
    }
  }

  /** Observes how soon the cells follow a step that stands alone, some level rows back. */
  private void onset(double timeS) {
    int after = levelRows;
    if (history.rows() < after + levelRows + 2) {
      return;
    }
    double step = Math.abs(history.step(after));
    double quiet = QUIET * step;
    if (step > threshold
        && history.changes(0, after - 1, quiet) == 0
        && history.changes(after + 1, after + levelRows, quiet) == 0) {
      onsets.take(history, after + 1, timeS);
    }
  }

  private void advance(double now, double dt) {
    double step = now - lastDrive;
    state[basis.immediate()] = now;
    for (int k = 0; k < faded.length; k++) {
      double tau = basis.tauS()[k];
      double keep = Math.exp(-dt / tau);
      faded[k] = faded[k] * keep + step * tau / dt * (1 - keep);
      state[1 + k] = now - faded[k];
    }
    double moved = channels.hasCurrent() ? (now + lastDrive) / 2 * dt / 3600 : dt / 3600;
    state[basis.charge()] += moved;
    if (channels.hasCurrent()) {
      double before = state[basis.hysteresis()];
      double turned = 1 - Math.exp(-Math.abs(moved) / (HYSTERESIS_SHARE * nominalAh));
      double whole = Math.signum(moved) * nominalAh / USUAL_AH;
      state[basis.hysteresis()] += (whole - before) * turned;
    }
  }

  /** Observes the pair of rows {@code span} apart that ends some level rows before the latest. */
  private void around(int span) {
    int to = levelRows;
    int from = to + span;
    if (history.rows() < from + 2) {
      return;
    }
    double range = history.rangeBetween(from, to);
    if (!(range > threshold)) {
      return;
    }
    double quiet = QUIET * range;
    boolean still =
        history.changes(to - 1, to - 1, quiet) == 0
            && history.changes(to, to, quiet) == 0
            && history.changes(from, from, quiet) == 0
            && (guardRows == 0 || history.changes(from - 1, from - 1, quiet) == 0);
    if (!still) {
      return;
    }
    boolean alone = !anyStep && isAlone(from, to, quiet);
    history.stateChange(from, to, x, basis.size());
    double mean = 0;
    int heard = 0;
    for (int c = 0; c < cells; c++) {
      y[c] = history.voltageChange(c, from, to);
      valid[c] = !Double.isNaN(y[c]);
      if (valid[c]) {
        mean += y[c];
        heard++;
      }
    }
    if (heard < Math.max(2, cells / 2)) {
      return;
    }
    mean /= heard;
    for (int c = 0; c < cells; c++) {
      if (!valid[c] || !likeTheMean(y[c], mean)) {
        valid[c] = false;
        y[c] = mean;
      }
    }
    window.observe(x, y, valid, alone);
  }

  /** A reading far off its neighbours is a glitch of one board, not an answer to the load. */
  static boolean likeTheMean(double answer, double mean) {
    return Math.abs(answer - mean) <= 3 * Math.abs(mean) + 0.012;
  }

  /**
   * Whether one step alone lies between two rows and the drive is level before and after. Where
   * loads come and go, what a row reads says little of what the cell went through since the last.
   */
  private boolean isAlone(int from, int to, double quiet) {
    return history.rows() > from + levelRows
        && history.changes(0, to - 1, quiet) == 0
        && history.changes(to, from - 1, quiet) == 1
        && history.changes(from, from + levelRows - 1, quiet) == 0;
  }

  /** Windows of all steps, or of those that stand alone; call once, at the end. */
  List<StepWindow> finish() {
    return window.finish();
  }

  /** How soon the cells follow steps that stand alone; empty without a current. */
  List<Onset> onsets() {
    return onsets.finish();
  }
}
