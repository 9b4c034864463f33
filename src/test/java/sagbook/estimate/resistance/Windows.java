package sagbook.estimate.resistance;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;
import sagbook.estimate.response.ReducedWindow;
import sagbook.estimate.response.StringResponse;
import sagbook.evidence.ResponseBasis;
import sagbook.evidence.StepWindow;

/** Windows of a string whose cells are multiples of one response, some with a joint beside them. */
final class Windows {
  static final ResponseBasis BASIS = new ResponseBasis(new double[] {20, 100, 500});
  static final double PULSE_S = 10;

  /** Immediate part, slow parts and hysteresis, ohm (and V). */
  private static final double[] RESPONSE = {2e-4, 5e-5, 5e-5, 1e-4, 0};

  private static final int PARTS = BASIS.charge();
  static final int WINDOWS = 60;
  static final int ROWS = 40;
  private static final double NOISE_V = 2e-4;

  private Windows() {}

  /** A voltage in one row beyond what the cells' responses say, V. */
  interface Disturbance {
    double volt(int window, int cell, double immediateA);
  }

  static StringResponse response() {
    return new StringResponse(BASIS, RESPONSE, NOISE_V, (long) WINDOWS * ROWS);
  }

  /** Windows of cells with these shares of the response and these joints, ohm. */
  static List<ReducedWindow> of(double[] share, double[] jointOhm, Disturbance disturbance) {
    SplittableRandom random = new SplittableRandom(3);
    List<ReducedWindow> all = new ArrayList<>();
    for (int w = 0; w < WINDOWS; w++) {
      double[][] gram = new double[PARTS][PARTS];
      double[][] cross = new double[share.length][PARTS];
      double[] mean = new double[PARTS];
      double[] squares = new double[share.length];
      for (int r = 0; r < ROWS; r++) {
        double[] x = new double[PARTS];
        x[0] = 160 * (random.nextDouble() - 0.5);
        for (int k = 1; k <= BASIS.tauS().length; k++) {
          x[k] = x[0] * random.nextDouble();
        }
        double string = 0;
        for (int i = 0; i < PARTS; i++) {
          string += x[i] * RESPONSE[i];
          for (int j = 0; j < PARTS; j++) {
            gram[i][j] += x[i] * x[j];
          }
        }
        for (int c = 0; c < share.length; c++) {
          double y =
              share[c] * string
                  + jointOhm[c] * x[0]
                  + NOISE_V * random.nextGaussian()
                  + disturbance.volt(w, c, x[0]);
          squares[c] += y * y;
          for (int i = 0; i < PARTS; i++) {
            cross[c][i] += x[i] * y;
            mean[i] += x[i] * y / share.length;
          }
        }
      }
      all.add(new ReducedWindow(window(w, share.length, 15), gram, cross, mean, squares, ROWS));
    }
    return all;
  }

  /**
   * Two-hour windows of so many days, one after another, each as warm and as large as told for the
   * hours since the start.
   */
  static List<ReducedWindow> ofDays(
      int days, DoubleUnaryOperator celsius, DoubleUnaryOperator size) {
    List<ReducedWindow> some = of(ones(4), new double[4], (w, c, a) -> 0);
    List<ReducedWindow> all = new ArrayList<>();
    for (int w = 0; w < 12 * days; w++) {
      ReducedWindow one = some.get(w % WINDOWS);
      double factor = size.applyAsDouble(2.0 * w);
      double[][] cross = new double[one.cross().length][];
      for (int c = 0; c < cross.length; c++) {
        cross[c] = scaled(one.cross()[c], factor);
      }
      all.add(
          new ReducedWindow(
              window(w, cross.length, celsius.applyAsDouble(2.0 * w)),
              one.gram(),
              cross,
              scaled(one.meanCross(), factor),
              scaled(one.squares(), factor * factor),
              ROWS));
    }
    return all;
  }

  /** The same, each cell read so many seconds after the current. */
  static List<ReducedWindow> readLate(List<ReducedWindow> windows, double... lateS) {
    double[] rate = new double[PARTS];
    for (int k = 0; k < BASIS.tauS().length; k++) {
      double perS = RESPONSE[1 + k] / BASIS.tauS()[k];
      rate[0] += perS;
      rate[1 + k] = -perS;
    }
    double[][] beyond =
        Arrays.stream(lateS).mapToObj(late -> scaled(rate, late)).toArray(double[][]::new);
    return windows.stream().map(window -> plus(window, beyond)).toList();
  }

  /**
   * The same windows of two hours, one after another, whose immediate part is larger by so many ohm
   * as told for the hours since the start.
   */
  static List<ReducedWindow> withImmediate(List<ReducedWindow> windows, DoubleUnaryOperator ohm) {
    List<ReducedWindow> all = new ArrayList<>();
    for (int w = 0; w < windows.size(); w++) {
      double[] beyond = new double[PARTS];
      beyond[0] = ohm.applyAsDouble(2.0 * w);
      double[][] alike = new double[windows.get(w).cross().length][];
      Arrays.fill(alike, beyond);
      all.add(plus(windows.get(w), alike));
    }
    return all;
  }

  /** A window whose cells answer by so much more, [cell][part]. */
  private static ReducedWindow plus(ReducedWindow window, double[][] beyond) {
    double[][] cross = new double[beyond.length][];
    double[] mean = new double[PARTS];
    double[] squares = window.squares().clone();
    for (int c = 0; c < beyond.length; c++) {
      cross[c] = window.cross()[c].clone();
      squares[c] +=
          2 * ReducedWindow.product(beyond[c], cross[c], PARTS)
              + window.product(beyond[c], beyond[c]);
      for (int i = 0; i < PARTS; i++) {
        for (int j = 0; j < PARTS; j++) {
          cross[c][i] += window.gram()[i][j] * beyond[c][j];
        }
        mean[i] += cross[c][i] / beyond.length;
      }
    }
    return new ReducedWindow(window.window(), window.gram(), cross, mean, squares, ROWS);
  }

  private static double[] scaled(double[] values, double factor) {
    return Arrays.stream(values).map(v -> factor * v).toArray();
  }

  private static StepWindow window(int w, int cells, double allCelsius) {
    double[] celsius = new double[cells];
    Arrays.fill(celsius, allCelsius);
    return new StepWindow(
        7200.0 * w,
        7200.0 * (w + 1),
        ROWS,
        celsius,
        0,
        0,
        3.3,
        new double[] {1},
        new double[cells][PARTS],
        new double[cells],
        new int[cells]);
  }

  static double[] ones(int n) {
    double[] ones = new double[n];
    Arrays.fill(ones, 1);
    return ones;
  }
}
