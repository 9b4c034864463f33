package sagbook.estimate.resistance;

/**
 * How far windows' logarithms scatter: a share of what their own misfit says, and what all of them
 * have beside it, found together as the likeliest where the scatter is Student's t with four
 * degrees of freedom (Lange, Little and Taylor, J. Am. Stat. Assoc. 84 (1989) 881). Windows differ
 * tenfold in what their misfit says, so neither shows in the scatter of all taken together: with
 * the median window's, those that seem to fit best passed for far surer than they scatter.
 *
 * @param share of what its misfit says
 * @param beside standard deviation of the rest, logarithm
 */
record WindowScatter(double share, double beside) {
  /** Before the windows are asked, and where they are few. */
  static final WindowScatter AT_FIRST = new WindowScatter(1, 0.01);

  /** Fewer windows tell nothing of it. Common practice, no source. */
  private static final int FEWEST = 9;

  private static final double DEGREES_OF_FREEDOM = 4;

  /** Variance that a mean of such a scatter goes by, over the square of its scale. */
  private static final double OF_A_MEAN = (DEGREES_OF_FREEDOM + 3) / (DEGREES_OF_FREEDOM + 1);

  /** What is tried: from the least on in steps of a quarter of an octave. */
  private static final double LEAST_SHARE = 0.25;

  private static final int SHARES = 13;
  private static final double LEAST_BESIDE = 0.005;
  private static final int BESIDES = 21;

  /**
   * The likeliest.
   *
   * @param departure of each window's logarithm from what it should be
   * @param sd what its own misfit says of it
   * @param unlike what it has to itself for its charge, one standard deviation
   */
  static WindowScatter of(double[] departure, double[] sd, double[] unlike) {
    if (departure.length < FEWEST) {
      return AT_FIRST;
    }
    WindowScatter likeliest = AT_FIRST;
    double least = Double.POSITIVE_INFINITY;
    for (int s = 0; s < SHARES; s++) {
      for (int b = 0; b < BESIDES; b++) {
        WindowScatter tried =
            new WindowScatter(
                LEAST_SHARE * Math.pow(2, s / 4.0), LEAST_BESIDE * Math.pow(2, b / 4.0));
        double unlikely = tried.unlikely(departure, sd, unlike);
        if (unlikely < least) {
          least = unlikely;
          likeliest = tried;
        }
      }
    }
    return likeliest;
  }

  /** Twice the negative logarithm of the likelihood but for a constant. */
  private double unlikely(double[] departure, double[] sd, double[] unlike) {
    double sum = 0;
    for (int i = 0; i < departure.length; i++) {
      double square = variance(sd[i], unlike[i]) / OF_A_MEAN;
      sum +=
          Math.log(square)
              + (DEGREES_OF_FREEDOM + 1)
                  * Math.log1p(departure[i] * departure[i] / (DEGREES_OF_FREEDOM * square));
    }
    return sum;
  }

  /** Of one window, as it counts for what all of them say. */
  double variance(double sd, double unlike) {
    return share * share * sd * sd + beside * beside + unlike * unlike;
  }
}
