package sagbook.evidence;

import java.util.Arrays;
import java.util.List;
import sagbook.model.SampleBlock;

/** Sums of one {@link StepWindow} while it is open. */
final class StepWindowBuilder {
  private final int cells;
  private final int size;
  private double startS = Double.NaN;
  private double endS;
  private int rows;
  private final double[] gram;
  private final double[][] cross;
  private final double[] sumSquares;
  private final int[] cellRows;
  private long seen;
  private final double[] temperature;
  private final int[] temperatureRows;
  private double current;
  private double charge;
  private double voltage;

  StepWindowBuilder(ResponseBasis basis, int cells) {
    this.cells = cells;
    this.size = basis.size();
    gram = new double[size * (size + 1) / 2];
    cross = new double[cells][size];
    sumSquares = new double[cells];
    cellRows = new int[cells];
    temperature = new double[cells];
    temperatureRows = new int[cells];
  }

  /** Closes the window when the time is beyond it, and opens the next. */
  void rollTo(double timeS, double lengthS, List<StepWindow> closed) {
    double place = Math.floor(timeS / lengthS) * lengthS;
    if (place != startS) {
      close(closed);
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

  void observe(double[] x, double[] y, boolean[] yValid) {
    rows++;
    int at = 0;
    for (int i = 0; i < size; i++) {
      for (int j = 0; j <= i; j++) {
        gram[at++] += x[i] * x[j];
      }
    }
    for (int c = 0; c < cells; c++) {
      double yc = y[c];
      double[] sums = cross[c];
      for (int i = 0; i < size; i++) {
        sums[i] += x[i] * yc;
      }
      sumSquares[c] += yc * yc;
      if (yValid[c]) {
        cellRows[c]++;
      }
    }
  }

  void close(List<StepWindow> closed) {
    if (rows >= 3) {
      double[] meanTemperature = new double[cells];
      for (int c = 0; c < cells; c++) {
        meanTemperature[c] =
            temperatureRows[c] == 0 ? Double.NaN : temperature[c] / temperatureRows[c];
      }
      double[][] crossCopy = new double[cells][];
      for (int c = 0; c < cells; c++) {
        crossCopy[c] = cross[c].clone();
      }
      closed.add(
          new StepWindow(
              startS,
              endS,
              rows,
              meanTemperature,
              current / seen,
              charge / seen,
              voltage / seen,
              gram.clone(),
              crossCopy,
              sumSquares.clone(),
              cellRows.clone()));
    }
    rows = 0;
    seen = 0;
    current = 0;
    charge = 0;
    voltage = 0;
    Arrays.fill(gram, 0);
    Arrays.fill(sumSquares, 0);
    Arrays.fill(cellRows, 0);
    Arrays.fill(temperature, 0);
    Arrays.fill(temperatureRows, 0);
    for (double[] sums : cross) {
      Arrays.fill(sums, 0);
    }
  }
}
