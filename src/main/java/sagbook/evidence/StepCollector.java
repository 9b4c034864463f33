package sagbook.evidence;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import sagbook.model.Channels;
import sagbook.model.SampleBlock;
import sagbook.numeric.Robust;

/**
 * Gathers {@link StepWindow}s. The drive is the current; without one, the string's mean voltage.
 *
 * <p>When a step falls between two rows its exact time is unknown; it is taken as equally likely
 * anywhere between them, so each regressor is the mean over that interval. The same holds for logs
 * that average over the interval, because averaging and a linear response commute.
 */
final class StepCollector {
  private static final double WINDOW_S = 7200;
  private static final int ROWS_AFTER_STEP = 8;

  private final Channels channels;
  private final int cells;
  private ResponseBasis basis = ResponseBasis.forCadence(10);
  private double threshold = Double.POSITIVE_INFINITY;

  private double lastDrive = Double.NaN;
  private final double[] lastVoltage;
  private double[] faded = new double[0];
  private int rowsSinceStep = Integer.MAX_VALUE;
  private int rowsSinceGap;

  private boolean pending;
  private double[] x = new double[0];
  private final double[] y;
  private final boolean[] yValid;
  private double pendingStep;
  private boolean pendingNear;
  private final double[] usualDeviation;

  private final List<StepWindow> windows = new ArrayList<>();
  private StepWindowBuilder window;

  StepCollector(Channels channels) {
    this.channels = channels;
    this.cells = channels.seriesCells();
    lastVoltage = new double[cells];
    y = new double[cells];
    yValid = new boolean[cells];
    usualDeviation = new double[cells];
    Arrays.fill(usualDeviation, 0.005);
    window = new StepWindowBuilder(basis, cells);
  }

  void start(double cadenceS) {
    basis = ResponseBasis.forCadence(cadenceS);
    faded = new double[basis.tauS().length];
    x = new double[basis.size()];
    window = new StepWindowBuilder(basis, cells);
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
      double quiet = 4 * Robust.quantileOfSorted(size, n, 0.4);
      double large = 0.1 * Robust.quantileOfSorted(size, n, 0.995);
      double least = channels.hasCurrent() ? 0.05 : 0.002;
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
    if (!clock.follows() || Double.isNaN(now) || Double.isNaN(lastDrive)) {
      restart(block, r, now);
      return;
    }
    double dt = clock.elapsedS();
    double step = now - lastDrive;
    if (pending) {
      commit(step);
    }
    rowsSinceStep = Math.abs(step) > threshold ? 0 : Math.min(rowsSinceStep, 1 << 20) + 1;
    x[1] = step;
    for (int k = 0; k < faded.length; k++) {
      double tau = basis.tauS()[k];
      double keep = Math.exp(-dt / tau);
      double next = faded[k] * keep + step * tau / dt * (1 - keep);
      x[2 + k] = step - (next - faded[k]);
      faded[k] = next;
    }
    x[basis.charge()] = channels.hasCurrent() ? (now + lastDrive) / 2 * dt / 3600 : dt / 3600;
    differences(block, r, dt);
    window.rollTo(block.timeS()[r], WINDOW_S, windows);
    window.conditions(block, r, clock);
    lastDrive = now;
    rowsSinceGap++;
  }

  private void differences(SampleBlock block, int r, double dt) {
    double mean = 0;
    int valid = 0;
    for (int c = 0; c < cells; c++) {
      double v = block.voltageV()[c][r];
      y[c] = v - lastVoltage[c];
      yValid[c] = !Double.isNaN(y[c]);
      if (yValid[c]) {
        mean += y[c];
        valid++;
      }
      lastVoltage[c] = v;
    }
    pending = valid > 0 && dt > 0 && rowsSinceGap > 2;
    mean = valid > 0 ? mean / valid : 0;
    for (int c = 0; c < cells; c++) {
      double deviation = Math.abs(y[c] - mean);
      // A reading far off its neighbours is a glitch of one board, not an answer to the load.
      if (!(deviation <= 10 * usualDeviation[c] + 2 * Math.abs(mean) + 0.002)) {
        yValid[c] = false;
        y[c] = mean;
      } else {
        usualDeviation[c] += 0.01 * (deviation - usualDeviation[c]);
      }
    }
    pendingStep = x[1];
    pendingNear = rowsSinceStep <= ROWS_AFTER_STEP;
  }

  private void commit(double nextStep) {
    boolean beforeStep = Math.abs(nextStep) > threshold;
    if (pendingNear || beforeStep) {
      x[0] = nextStep - pendingStep;
      window.observe(x, y, yValid);
    }
    pending = false;
  }

  private void restart(SampleBlock block, int r, double now) {
    pending = false;
    rowsSinceGap = 0;
    rowsSinceStep = Integer.MAX_VALUE;
    Arrays.fill(faded, 0);
    for (int c = 0; c < cells; c++) {
      lastVoltage[c] = block.voltageV()[c][r];
    }
    lastDrive = now;
  }

  List<StepWindow> finish() {
    window.close(windows);
    return windows;
  }
}
