package sagbook.validation;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sagbook.numeric.Jackknife;
import sagbook.numeric.NonlinearFit;

/**
 * Against NIST's Statistical Reference Datasets (https://www.itl.nist.gov/div898/strd), whose
 * certified values are in the files themselves.
 */
class CertifiedStatisticsTest {
  private static final Pattern PARAMETER =
      Pattern.compile("\\s*b\\d\\s*=\\s+(\\S+)\\s+(\\S+)\\s+(\\S+)\\s+(\\S+)\\s*");

  private interface Curve {
    double at(double[] b, double x);
  }

  private static double ratio(double[] b, double x) {
    return (b[0] + x * (b[1] + x * (b[2] + x * b[3]))) / (1 + x * (b[4] + x * (b[5] + x * b[6])));
  }

  private static double decays(double[] b, double x) {
    return b[0] * Math.exp(-b[1] * x) + b[2] * Math.exp(-b[3] * x) + b[4] * Math.exp(-b[5] * x);
  }

  private static final Map<String, Curve> CURVES =
      Map.of(
          "Misra1a", (b, x) -> b[0] * (1 - Math.exp(-b[1] * x)),
          "BoxBOD", (b, x) -> b[0] * (1 - Math.exp(-b[1] * x)),
          "DanWood", (b, x) -> b[0] * Math.pow(x, b[1]),
          "Chwirut2", (b, x) -> Math.exp(-b[0] * x) / (b[1] + b[2] * x),
          "Lanczos3", CertifiedStatisticsTest::decays,
          "MGH17", (b, x) -> b[0] + b[1] * Math.exp(-x * b[3]) + b[2] * Math.exp(-x * b[4]),
          "Rat43", (b, x) -> b[0] / Math.pow(1 + Math.exp(b[1] - b[2] * x), 1 / b[3]),
          "Thurber", CertifiedStatisticsTest::ratio);

  /** Five digits of every parameter and four of its standard deviation, from the nearer start. */
  @ParameterizedTest
  @CsvSource({"Misra1a", "BoxBOD", "DanWood", "Chwirut2", "Lanczos3", "MGH17", "Rat43", "Thurber"})
  void theCurveFitFindsTheCertifiedParameters(String name) throws IOException {
    Problem problem = problem(name);
    NonlinearFit fit = problem.from(problem.near).orElseThrow();
    problem.assertCertified(fit);
  }

  /** From the farther start it finds the same or says that it found nothing. */
  @ParameterizedTest
  @CsvSource({"Misra1a", "BoxBOD", "DanWood", "Chwirut2", "Lanczos3", "MGH17", "Rat43", "Thurber"})
  void theCurveFitNeverEndsElsewhere(String name) throws IOException {
    Problem problem = problem(name);
    Optional<NonlinearFit> fit = problem.from(problem.far);
    if (fit.isPresent()) {
      problem.assertCertified(fit.get());
    }
  }

  private record Problem(
      Curve curve,
      List<double[]> points,
      double[] far,
      double[] near,
      double[] certified,
      double[] certifiedSd) {

    double[] residuals(double[] b) {
      return points.stream().mapToDouble(p -> curve.at(b, p[1]) - p[0]).toArray();
    }

    Optional<NonlinearFit> from(double[] start) {
      double[] difference = Arrays.stream(start).map(s -> 1e-6 * Math.abs(s)).toArray();
      return NonlinearFit.of(this::residuals, start, difference);
    }

    void assertCertified(NonlinearFit fit) {
      double squares = Arrays.stream(residuals(fit.value())).map(r -> r * r).sum();
      double residualSd = Math.sqrt(squares / (points.size() - certified.length));
      for (int k = 0; k < certified.length; k++) {
        double[] gradient = new double[certified.length];
        gradient[k] = 1;
        assertEquals(certified[k], fit.value()[k], 1e-5 * Math.abs(certified[k]), "b" + (k + 1));
        assertEquals(certifiedSd[k], residualSd * fit.sd(gradient), 1e-4 * certifiedSd[k]);
      }
    }
  }

  private static Problem problem(String name) throws IOException {
    Path file = SharedData.folder("reference_stats").resolve("nist_nonlinear_" + name + ".dat");
    List<double[]> parameters = new ArrayList<>();
    List<double[]> points = new ArrayList<>();
    boolean data = false;
    for (String line : Files.readAllLines(file)) {
      Matcher parameter = PARAMETER.matcher(line);
      if (parameter.matches()) {
        parameters.add(
            Stream.of(1, 2, 3, 4).mapToDouble(i -> number(parameter.group(i))).toArray());
      } else if (data && !line.isBlank()) {
        points.add(Arrays.stream(line.strip().split("\\s+")).mapToDouble(t -> number(t)).toArray());
      }
      data |= line.matches("Data:\\s+y\\s+x\\s*");
    }
    double[][] column = new double[4][parameters.size()];
    for (int k = 0; k < parameters.size(); k++) {
      for (int i = 0; i < 4; i++) {
        column[i][k] = parameters.get(k)[i];
      }
    }
    Curve curve = Objects.requireNonNull(CURVES.get(name));
    return new Problem(curve, points, column[0], column[1], column[2], column[3]);
  }

  private static double number(String text) {
    return Double.parseDouble(text);
  }

  /**
   * Leaving one value out at a time gives the standard deviation of a mean exactly, s over the root
   * of n (Tukey 1958), so the certified s must come back, whatever the size of the values.
   *
   * @param digits of s that are left by rounding to doubles of that size
   */
  @ParameterizedTest
  @CsvSource({
    "NumAcc1, 1, 1e-8",
    "NumAcc2, 0.1, 1e-10",
    "NumAcc3, 0.1, 1e-6",
    "NumAcc4, 0.1, 1e-5",
    "Mavro, 0.000429123454003053, 1e-9",
    "Michelso, 0.0790105478190518, 1e-10",
    "Lew, 277.332168044316, 1e-11",
    "Lottery, 291.699727470969, 1e-11"
  })
  void leavingOneOutGivesTheCertifiedDeviation(String name, double s, double digits)
      throws IOException {
    Path file = SharedData.folder("reference_stats").resolve("nist_univariate_" + name + ".txt");
    double[] y =
        Files.readAllLines(file).stream()
            .dropWhile(line -> !line.matches("#? ?Data(: Y)?\\s*"))
            .map(String::strip)
            .filter(t -> t.matches("-?[0-9.]+"))
            .mapToDouble(CertifiedStatisticsTest::number)
            .toArray();
    double sum = Arrays.stream(y).sum();
    double[][] left = new double[y.length][];
    for (int k = 0; k < y.length; k++) {
      left[k] = new double[] {(sum - y[k]) / (y.length - 1)};
    }
    assertEquals(s, Jackknife.sd(left, 0) * Math.sqrt(y.length), digits * s);
  }
}
