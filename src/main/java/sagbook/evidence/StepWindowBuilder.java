package sagbook.evidence;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import sagbook.model.SampleBlock;

/**
 * Sums of one {@link StepWindow} after another while they are open, of all steps and of those that
 * stand alone.
 */
final class StepWindowBuilder {
  /**
   * Share of the pairs of rows that have to be around steps that stand alone. Common practice, no
   * source.
   */
  private static final double LEAST_SETTLED = 0.1;

  private final int cells;
  private double startS = Double.NaN;
  private double endS;
  private final StepSums all;
  private final StepSums settled;
  private final List<StepWindow> allClosed = new ArrayList<>();
  private final List<StepWindow> settledClosed = new ArrayList<>();
  private long seen;
  private final double[] temperature;
  private final int[] temperatureRows;
  private double current;
  private double charge;
  private double voltage;

  StepWindowBuilder(ResponseBasis basis, int cells) {
    this.cells = cells;
    all = new StepSums(basis, cells);
    settled = new StepSums(basis, cells);
    temperature = new double[cells];
    temperatureRows = new int[cells];
  }

  /** Closes the window when the time is beyond it, and opens the next. */
  void rollTo(double timeS, double lengthS) {
    double place = Math.floor(timeS / lengthS) * lengthS;
    if (place != startS) {
      close();
      startS = place;
      endS = place + lengthS;
    }
  }

  void conditions(SampleBlock block, int r, Stopwatch clock) {
    seen++;
    for (int c = 0; c < block.temperatureC().length; c++) {
      double t = block.temperatureC()[c][r];
      if (!Double.isNaN(t)) {
        temperature[c] += t;
        temperatureRows[c]++;
      }
    }
    if (block.channels().hasCurrent()) {
      current += Double.isNaN(block.currentA()[r]) ? 0 : block.currentA()[r];
    }
    charge += clock.chargeAh();
    double sum = 0;
    int valid = 0;
    for (int c = 0; c < cells; c++) {
      double v = block.voltageV()[c][r];
      if (!Double.isNaN(v)) {
        sum += v;
        valid++;
      }
    }
    voltage += valid > 0 ? sum / valid : voltage / Math.max(1, seen - 1);
  }

  /**
   * Takes the change of voltage between two rows.
   *
   * @param alone whether one step alone lies between them, the drive being level around it
   */
  void observe(double[] x, double[] y, boolean[] yValid, boolean alone) {
    all.observe(x, y, yValid);
    if (alone) {
      settled.observe(x, y, yValid);
    }
  }

  /** Closes the window. */
  void close() {
    if (all.suffice()) {
      allClosed.add(closed(all));
    }
    if (settled.suffice()) {
      settledClosed.add(closed(settled));
    }
    seen = 0;
    current = 0;
    charge = 0;
    voltage = 0;
    Arrays.fill(temperature, 0);
    Arrays.fill(temperatureRows, 0);
    all.clear();
    settled.clear();
  }

  private StepWindow closed(StepSums sums) {
    double[] meanTemperature = new double[cells];
    for (int c = 0; c < cells; c++) {
      meanTemperature[c] =
          temperatureRows[c] == 0 ? Double.NaN : temperature[c] / temperatureRows[c];
    }
    return sums.window(
        startS, endS, meanTemperature, current / seen, charge / seen, voltage / seen);
  }

  /** Windows of steps that stand alone where these are many, else of all steps. */
  List<StepWindow> finish() {
    close();
    return pairs(settledClosed) >= LEAST_SETTLED * pairs(allClosed) ? settledClosed : allClosed;
  }

  private static double pairs(List<StepWindow> windows) {
    return windows.stream().mapToInt(StepWindow::rows).sum();
  }
}
