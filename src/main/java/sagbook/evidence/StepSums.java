package sagbook.evidence;

import java.util.Arrays;

/** Sums over pairs of rows around steps, from which the cells' response follows. */
final class StepSums {
  private static final int FEWEST_ROWS = 3;

  private final int size;
  private final double[] gram;
  private final double[][] cross;
  private final double[] sumSquares;
  private final int[] cellRows;
  private int rows;

  StepSums(ResponseBasis basis, int cells) {
    size = basis.size();
    gram = new double[size * (size + 1) / 2];
    cross = new double[cells][size];
    sumSquares = new double[cells];
    cellRows = new int[cells];
  }

  void observe(double[] x, double[] y, boolean[] yValid) {
    rows++;
    int at = 0;
    for (int i = 0; i < size; i++) {
      for (int j = 0; j <= i; j++) {
        gram[at++] += x[i] * x[j];
      }
    }
    for (int c = 0; c < cross.length; c++) {
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

  boolean suffice() {
    return rows >= FEWEST_ROWS;
  }

  /** The sums so far as a window under these conditions. */
  StepWindow window(
      double startS,
      double endS,
      double[] meanTemperatureC,
      double meanCurrentA,
      double meanChargeAh,
      double meanVoltageV) {
    return new StepWindow(
        startS,
        endS,
        rows,
        meanTemperatureC,
        meanCurrentA,
        meanChargeAh,
        meanVoltageV,
        gram.clone(),
        Arrays.stream(cross).map(double[]::clone).toArray(double[][]::new),
        sumSquares.clone(),
        cellRows.clone());
  }

  void clear() {
    rows = 0;
    Arrays.fill(gram, 0);
    Arrays.fill(sumSquares, 0);
    Arrays.fill(cellRows, 0);
    for (double[] sums : cross) {
      Arrays.fill(sums, 0);
    }
  }
}
