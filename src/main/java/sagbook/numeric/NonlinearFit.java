package sagbook.numeric;

import java.util.Optional;
import java.util.function.UnaryOperator;
import org.hipparchus.exception.MathRuntimeException;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresBuilder;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresOptimizer.Optimum;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresProblem;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LevenbergMarquardtOptimizer;
import org.hipparchus.optim.nonlinear.vector.leastsquares.MultivariateJacobianFunction;
import org.hipparchus.util.Pair;

/**
 * Nonlinear least squares by the method of Levenberg and Marquardt (Moré 1978), derivatives by
 * central differences. Divide each residual by its standard deviation; where that depends on the
 * parameters, as when both variables err, the minimum is that of York (1966).
 *
 * @param value parameters at the minimum
 * @param covariance inverse of J'J there: their covariance, given residuals of unit variance
 */
public record NonlinearFit(double[] value, double[][] covariance) {
  private static final int MOST_STEPS = 200;

  /**
   * Minimises the sum of squared residuals; empty where that leads nowhere or leaves a parameter
   * undetermined.
   *
   * @param residuals of a set of parameters, always as many
   * @param start where to begin
   * @param difference how far each parameter is moved to either side for a derivative, above 0
   */
  public static Optional<NonlinearFit> of(
      UnaryOperator<double[]> residuals, double[] start, double[] difference) {
    MultivariateJacobianFunction model =
        point -> {
          double[] p = point.toArray();
          double[] r = residuals.apply(p);
          return new Pair<>(
              new ArrayRealVector(r, false),
              MatrixUtils.createRealMatrix(jacobian(residuals, p, difference, r.length)));
        };
    LeastSquaresProblem problem =
        new LeastSquaresBuilder()
            .start(start)
            .model(model)
            .target(new double[residuals.apply(start).length])
            .maxEvaluations(MOST_STEPS)
            .maxIterations(MOST_STEPS)
            .build();
    try {
      Optimum optimum = new LevenbergMarquardtOptimizer().optimize(problem);
      return Optional.of(
          new NonlinearFit(optimum.getPoint().toArray(), optimum.getCovariances(1e-14).getData()));
    } catch (MathRuntimeException stuck) {
      return Optional.empty();
    }
  }

  private static double[][] jacobian(
      UnaryOperator<double[]> residuals, double[] p, double[] difference, int count) {
    double[][] jacobian = new double[count][p.length];
    for (int k = 0; k < p.length; k++) {
      double[] up = p.clone();
      double[] down = p.clone();
      up[k] += difference[k];
      down[k] -= difference[k];
      double[] a = residuals.apply(up);
      double[] b = residuals.apply(down);
      for (int i = 0; i < count; i++) {
        jacobian[i][k] = (a[i] - b[i]) / (2 * difference[k]);
      }
    }
    return jacobian;
  }

  /** Standard deviation of a function of the parameters with this gradient. */
  public double sd(double[] gradient) {
    double variance = 0;
    for (int i = 0; i < gradient.length; i++) {
      for (int j = 0; j < gradient.length; j++) {
        variance += gradient[i] * covariance[i][j] * gradient[j];
      }
    }
    return Math.sqrt(Math.max(0, variance));
  }
}
