package sagbook.validation;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import sagbook.estimate.curve.HalfCells;
import sagbook.model.Estimate;
import sagbook.numeric.EvenTable;
import sagbook.numeric.Jackknife;
import sagbook.numeric.MonotoneCurve;
import sagbook.numeric.NonlinearFit;
import sagbook.numeric.Ridge;
import sagbook.numeric.Robust;
import sagbook.numeric.Uncertainty;
import sagbook.numeric.WanderSmoother;

/** Against SciPy; see README.md beside the tables for versions and what each answer is. */
class ScipyTest {
  private static final Path TABLES = Path.of("src/test/resources/scipy");

  private static List<String[]> rows(String table) throws IOException {
    return Files.readAllLines(TABLES.resolve(table)).stream()
        .skip(1)
        .map(line -> line.split(",", -1))
        .toList();
  }

  private static double number(String text) {
    return Double.parseDouble(text);
  }

  @ParameterizedTest
  @ValueSource(strings = {"odd", "even", "ties", "wild", "volts", "one"})
  void summaries(String series) throws IOException {
    List<String[]> rows = rows("summaries.csv").stream().filter(r -> r[0].equals(series)).toList();
    double[] y =
        rows.stream().filter(r -> r[1].equals("data")).mapToDouble(r -> number(r[3])).toArray();
    for (String[] row : rows) {
      double answer = number(row[3]);
      double tolerance = 1e-13 * Math.abs(answer) + 1e-15;
      switch (row[1]) {
        case "quantile" -> assertEquals(answer, Robust.quantile(y, number(row[2])), tolerance);
        // 1.4826 is that factor to five digits.
        case "spread" -> assertEquals(answer, Robust.spread(y), 2e-6 * answer);
        case "sd_of_mean" -> assertEquals(answer, Jackknife.sd(meansWithoutOne(y), 0), tolerance);
        default -> assertEquals("data", row[1]);
      }
    }
  }

  private static double[][] meansWithoutOne(double[] y) {
    double sum = Arrays.stream(y).sum();
    return Arrays.stream(y)
        .mapToObj(v -> new double[] {(sum - v) / (y.length - 1)})
        .toArray(double[][]::new);
  }

  /**
   * The solver adds 1e-12 of the diagonal to stay regular; it has to stay within a millionth of a
   * standard deviation, and ten where columns are nearly alike.
   */
  @ParameterizedTest
  @ValueSource(strings = {"line", "sizes", "priors", "almost alike"})
  void weightedLeastSquaresWithPriors(String name) throws IOException {
    List<String[]> rows = rows("linear.csv").stream().filter(r -> r[0].equals(name)).toList();
    Ridge fit = new Ridge((int) rows.stream().filter(r -> r[1].equals("answer")).count());
    for (String[] row : rows) {
      if (row[1].equals("observe")) {
        double[] x = Arrays.stream(row[2].split(" ")).mapToDouble(ScipyTest::number).toArray();
        fit.observe(x, number(row[3]), number(row[4]));
      } else if (row[1].equals("prior")) {
        fit.prior(Integer.parseInt(row[2]), number(row[3]), number(row[4]));
      }
    }
    Ridge.Solution solution = fit.solve();
    double share = name.equals("almost alike") ? 1e-5 : 1e-6;
    for (String[] row : rows) {
      if (row[1].equals("answer")) {
        int k = Integer.parseInt(row[2]);
        double sd = number(row[4]);
        assertEquals(number(row[3]), solution.value()[k], share * sd, name + " value " + k);
        assertEquals(sd, solution.sd(k), share * sd, name + " sd " + k);
      }
    }
  }

  @Test
  void aLineWithErrorsInBothVariables() throws IOException {
    List<double[]> points =
        rows("both_variables.csv").stream()
            .filter(r -> r[0].equals("data"))
            .map(r -> new double[] {number(r[1]), number(r[2]), number(r[3]), number(r[4])})
            .toList();
    String[] answer = rows("both_variables.csv").get(points.size());
    NonlinearFit fit =
        NonlinearFit.of(
                p ->
                    points.stream()
                        .mapToDouble(
                            d -> (d[1] - p[0] - p[1] * d[0]) / Math.hypot(d[3], p[1] * d[2]))
                        .toArray(),
                new double[] {0, 1},
                new double[] {1e-5, 1e-5})
            .orElseThrow();
    assertEquals(number(answer[1]), fit.value()[0], 1e-6);
    assertEquals(number(answer[2]), fit.value()[1], 1e-7);
  }

  /** The fit that lays two electrodes under a string's curve. */
  @Test
  void electrodesUnderACurve() throws IOException {
    List<String[]> rows = rows("curve.csv");
    List<double[]> points =
        rows.stream()
            .filter(r -> r[0].equals("data"))
            .map(r -> new double[] {number(r[1]), number(r[2])})
            .toList();
    NonlinearFit fit =
        NonlinearFit.of(
                p -> residuals(p, points),
                new double[] {1.40, 1.65, 0, 1.10, 0},
                new double[] {1e-5, 1e-5, 1e-5, 1e-5, 1e-5})
            .orElseThrow();
    for (String[] row : rows.subList(points.size(), rows.size())) {
      int k = (int) number(row[1]);
      double[] gradient = new double[5];
      gradient[k] = 1;
      double sd = number(row[3]);
      assertEquals(number(row[2]), fit.value()[k], 1e-3 * sd, "value " + k);
      assertEquals(sd, fit.sd(gradient), 1e-3 * sd, "sd " + k);
    }
  }

  private static double[] residuals(double[] p, List<double[]> points) {
    double[] r = new double[points.size() + 2];
    for (int i = 0; i < points.size(); i++) {
      double q = points.get(i)[0];
      double volt =
          HalfCells.NMC_CHEN.positive((p[0] - q) / p[1])
              - HalfCells.NMC_CHEN.negative((q - p[2]) / p[3])
              + p[4];
      r[i] = (volt - points.get(i)[1]) / 0.002;
    }
    r[points.size()] = (p[1] / 1.7 - 1) / 0.06;
    r[points.size() + 1] = p[4] / 0.006;
    return r;
  }

  @Test
  void publishedElectrodes() throws IOException {
    for (String[] row : rows("half_cells.csv")) {
      HalfCells pair = HalfCells.valueOf(row[0]);
      double share = number(row[2]);
      double volt = row[1].equals("positive") ? pair.positive(share) : pair.negative(share);
      assertEquals(number(row[3]), volt, published(pair, share), String.join(" ", row));
    }
  }

  /** Rounding; of the electrodes published as points, what leaving out most of them may cost. */
  private static double published(HalfCells pair, double share) {
    return switch (pair) {
      case LCO_AI -> share < 0.03 || share > 0.97 ? 0.005 : 0.0015;
      // Terms of 50,000 V that cancel.
      case NMC_ABOUT_ENERGY -> 1e-10;
      // Terms of 600 V that cancel.
      case NCA_KIM -> 1e-12 * 600;
      default -> 1e-12;
    };
  }

  @Test
  void tablesAreStraightBetweenAndBeyondTheirPoints() throws IOException {
    List<String[]> rows = rows("even_table.csv");
    double[] values =
        rows.stream().filter(r -> r[0].equals("data")).mapToDouble(r -> number(r[2])).toArray();
    EvenTable table = new EvenTable(0, 0.1, values);
    for (String[] row : rows) {
      assertEquals(number(row[2]), table.at(number(row[1])), 1e-12, "at " + row[1]);
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"two points", "three points", "step", "uneven", "rest voltage"})
  void curvesThatDontOvershoot(String series) throws IOException {
    List<String[]> rows = rows("pchip.csv").stream().filter(r -> r[0].equals(series)).toList();
    List<String[]> data = rows.stream().filter(r -> r[1].equals("data")).toList();
    MonotoneCurve curve =
        new MonotoneCurve(
            data.stream().mapToDouble(r -> number(r[2])).toArray(),
            data.stream().mapToDouble(r -> number(r[3])).toArray());
    for (String[] row : rows) {
      assertEquals(number(row[3]), curve.at(number(row[2])), 1e-12, "at " + row[2]);
    }
  }

  @Test
  void anIntervalHolds95Of100() throws IOException {
    for (String[] row : rows("normal.csv")) {
      Estimate.Known unit = Estimate.of(0, 1);
      double p = number(row[0]);
      double end = p < 0.5 ? unit.low() : p > 0.5 ? unit.high() : unit.value();
      assertEquals(number(row[1]), end, 1e-6);
    }
  }

  @Test
  void anIntervalFromFewValuesIsWiderByStudentsFactor() throws IOException {
    for (String[] row : rows("student.csv")) {
      boolean known = row[1].equals("inf");
      Uncertainty unit = known ? Uncertainty.known(1) : new Uncertainty(1, number(row[1]));
      double factor = number(row[2]);
      assertEquals(factor, unit.halfWidth(number(row[0])), 1e-9 * factor, String.join(" ", row));
    }
  }

  @Test
  void whatWandersIsToldByAllOfItsObservations() throws IOException {
    List<String[]> rows = rows("wander.csv");
    double[][] columns = new double[4][];
    for (int k = 0; k < 4; k++) {
      int column = k;
      columns[k] =
          rows.stream()
              .mapToDouble(r -> r[column].equals("nan") ? Double.NaN : number(r[column]))
              .toArray();
    }
    double[] noiseSd = new double[columns[0].length];
    Arrays.fill(noiseSd, 0.4);
    double[] mean =
        new WanderSmoother(1.7, 4.5).smooth(columns[0], columns[1], columns[2], noiseSd);
    assertArrayEquals(columns[3], mean, 1e-9);
  }
}
