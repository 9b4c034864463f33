package sagbook.estimate.resistance;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import sagbook.estimate.response.ReducedWindow;
import sagbook.estimate.response.StringResponse;
import sagbook.numeric.Ridge;

/**
 * Brings the string's resistance to 25 °C and mid charge: the logarithm of its size in every window
 * against inverse temperature (Arrhenius) and charge.
 *
 * <p>{@code ln A = c0 + x + b/2 x² + c1 (z - 1/2) + c2 (z - 1/2)² + p + h}, with {@code x = Ea/Rg
 * (1/T - 1/T0)} and {@code T0} the log's own mean temperature, so that what a month tells, level
 * and slope where it was, is fitted apart from what it doesn't: {@code b}, which is held, and comes
 * in on the way to 25 °C alone. Before the data speak, Ea after ten seconds is 16 ± 5 kJ/mol:
 * whole-cell values of a measured 3 Ah LFP cell run from 11 to 22 (M. Naumann, doctoral thesis, TU
 * Munich 2018, open table). {@code h} is what windows of one time of day have in common: loads of
 * another kind come in the evening, when the cells are warm, and would pass for warmth; {@code p}
 * is what windows of one charge have in common beyond the parabola. How large {@code h}, {@code p}
 * and the parabola are is learned from the log, so that none takes away from warmth what it does
 * not show. Huber weights (Huber 1964) keep odd windows from mattering. Ea is that of a window's
 * size; the answer at the pulse time, which is younger, has one of its own ({@link SlowParts}), by
 * which it is brought to 25 °C.
 *
 * @param scale size of the string's response in each window over that at 25 °C and mid charge; 0
 *     where the window is not used
 * @param logLevel logarithm of the response at 25 °C and mid charge over the pooled one it was
 *     fitted with
 * @param logSd standard deviation of that logarithm as far as the windows tell it, charge counting
 *     at least as much as before the log was asked
 * @param squaredWay square of the logarithm's way from the log's own temperature to 25 °C, by half
 *     of which the bend counts
 * @param activationEnergy of the answer at the pulse time, at the log's own temperature, kJ/mol
 * @param activationEnergySd kJ/mol
 * @param chargeSlope by how much the parabola rises with charge 0 to 1, mean over the windows used
 */
record ReferenceConditions(
    double[] scale,
    double logLevel,
    double logSd,
    double squaredWay,
    double activationEnergy,
    double activationEnergySd,
    double chargeSlope) {
  /** Of the logarithm of the level before the data speak: as good as nothing is known. */
  private static final double LEVEL_SD = 3;

  private static final double GAS_CONSTANT = 8.314462618;
  private static final double REFERENCE_KELVIN = 298.15;
  static final double PRIOR_KILOJOULE = 16;
  static final double PRIOR_SD_KILOJOULE = 5;

  /** Up to this age of an answer it is so, s. Common practice, no source. */
  private static final double YOUNG_S = 10;

  /**
   * From this age on an answer is a third slow parts, s: the immediate part is about two thirds of
   * what a cell answers after a minute or two (common practice, no source).
   */
  private static final double OLD_S = 60;

  /**
   * What an old answer has more, kJ/mol: immediate parts with the 11 of the least whole cell and a
   * third of charge transfer, which alone has 34 to 41, make 20; with a fifth, as after ten
   * seconds, 16. Chosen when slow logs of a generator that shares no code with this project had
   * shown that 16 is too little.
   */
  private static final double OLD_MORE_KILOJOULE = 4;

  /**
   * How far that is off, one standard deviation, kJ/mol: cells differ in their share of slow parts
   * by a fifth (common practice, no source), which is that of the 26 between both.
   */
  private static final double OLD_MORE_SD_KILOJOULE = 5;

  /**
   * How the logarithm bends. What does not follow the law, such as joints, makes up for less of the
   * whole in the cold: a share s of it bends it by s/(1 - s), and joints are about a tenth (common
   * practice, no source).
   */
  private static final double BEND = 0.1;

  /**
   * How much more it may bend, one standard deviation: measured cells do so up to ten times as much
   * (Naumann 2018: 1.2).
   */
  private static final double BEND_SD_ABOVE = 0.4;

  /**
   * How much less. Parts that each follow a law of their own bend their sum this way only, for the
   * logarithm of a sum of exponentials is convex; but a part that builds up more slowly in the cold
   * counts for less there. Common practice, no source.
   */
  private static final double BEND_SD_BELOW = 0.1;

  /**
   * What windows of one time of day have in common, one standard deviation, before the log is
   * asked. Common practice, no source.
   */
  private static final double HOUR_SD = 0.02;

  /**
   * How the logarithm rises with charge 0 to 1, and its curvature, one standard deviation, before
   * the log is asked how large both are. Common practice, no source.
   */
  private static final double CHARGE_SD = 0.3;

  private static final double CHARGE_SQUARED_SD = 1;

  /**
   * What a parabola leaves of the charge dependence, as a share over the square of the charge from
   * the middle: cells of published parameters (Prada and co-authors, J. Electrochem. Soc. 159
   * (2012) A1508, as simulated for the tests) rise by a third at a fifth of charge and stay level
   * in between.
   */
  private static final double UNLIKE_MID_CHARGE = 0.5;

  /** Share of that which a window has to itself. Common practice, no source. */
  private static final double UNLIKE_ITS_CHARGE = 0.5;

  private static final int LEVEL = 0;
  private static final int ENERGY = 1;
  private static final int CHARGE = 2;
  private static final int CHARGE_SQUARED = 3;
  private static final int STRETCH = 4;
  private static final int PLACE = STRETCH + WindowSizes.STRETCHES_A_DAY;
  private static final int PARAMETERS = PLACE + WindowSizes.PLACES_OF_CHARGE;
  private static final int PASSES = 12;

  /** Temperature factor relative to 25 °C for an activation energy in kJ/mol. */
  static double arrhenius(double kilojoule, double celsius) {
    return Math.exp(kilojoule * perKilojoule(celsius));
  }

  /** By how much the logarithm grows with 1/T, K, for an activation energy in kJ/mol. */
  static double perInverseKelvin(double kilojoule) {
    return 1000 * kilojoule / GAS_CONSTANT;
  }

  /** By how much the logarithm at a temperature lies above that at 25 °C for each kJ/mol. */
  static double perKilojoule(double celsius) {
    return perInverseKelvin(1) * (1 / (celsius + 273.15) - 1 / REFERENCE_KELVIN);
  }

  /**
   * Fits the temperature and charge dependence.
   *
   * @param response a first pooled response, whose shape the windows share
   * @param charge charge 0 to 1 in each window, NaN when unknown
   * @param pulseS pulse time, s
   */
  static Optional<ReferenceConditions> fit(
      List<ReducedWindow> windows, StringResponse response, double[] charge, double pulseS) {
    WindowSizes sizes = WindowSizes.of(windows, response, charge);
    int n = sizes.count();
    if (n < 1) {
      return Optional.empty();
    }
    double[] huber = new double[n];
    Arrays.fill(huber, 1);
    double[] unlike =
        Arrays.stream(sizes.fromMid()).map(u -> UNLIKE_ITS_CHARGE * unlikeParabola(u)).toArray();
    WindowScatter scatter = WindowScatter.AT_FIRST;
    Likely likely = Likely.atFirst(pulseS);
    Ridge rows = new Ridge(PARAMETERS);
    Ridge.Solution solution = likely.solve(rows);
    double own =
        Arrays.stream(sizes.celsius())
            .map(ReferenceConditions::perKilojoule)
            .average()
            .orElseThrow();
    for (int pass = 0; pass < PASSES; pass++) {
      rows = new Ridge(PARAMETERS);
      for (int i = 0; i < n; i++) {
        double variance = scatter.variance(sizes.sd()[i], unlike[i]);
        double[] row = row(sizes, i, own, solution);
        double departure = sizes.log()[i] - log(sizes, i, own, solution);
        rows.observe(row, departure + solution.combined(row), huber[i] / variance);
      }
      solution = likely.solve(rows);
      likely = likely.learned(sizes, solution);
      double[] raw = new double[n];
      for (int i = 0; i < n; i++) {
        raw[i] = sizes.log()[i] - log(sizes, i, own, solution);
        double z = Math.abs(raw[i]) / Math.sqrt(scatter.variance(sizes.sd()[i], unlike[i]));
        huber[i] = z <= 1.5 ? 1 : 1.5 / z;
      }
      scatter = WindowScatter.of(raw, sizes.sd(), unlike);
    }
    double[] b = solution.value();
    SlowParts slow = SlowParts.of(windows, response, sizes, own);
    double beyond = slow.shareBeyondSize(response, pulseS);
    double energy = b[ENERGY] + beyond * slow.moreKilojoule();
    double beyondSd = beyond * slow.moreKilojouleSd();
    double way = -energy * own;
    double level = b[LEVEL] + way + BEND / 2 * way * way;
    double[] levelBy = new double[b.length];
    levelBy[LEVEL] = 1;
    levelBy[ENERGY] = -own * (1 + BEND * way);
    double[] scale = new double[windows.size()];
    double slope = 0;
    for (int i = 0; i < n; i++) {
      slope += (b[CHARGE] + 2 * b[CHARGE_SQUARED] * sizes.fromMid()[i]) / n;
      scale[sizes.window()[i]] =
          Math.exp(log(sizes, i, own, solution) - level - b[STRETCH + sizes.stretchOfDay()[i]]);
    }
    return Optional.of(
        new ReferenceConditions(
            scale,
            level,
            Math.hypot(
                likely.chargeNoLess().solve(rows).combinedSd(levelBy), levelBy[ENERGY] * beyondSd),
            way * way,
            energy,
            Math.hypot(solution.sd(ENERGY), beyondSd),
            slope));
  }

  /** Standard deviation of the logarithm of the response at 25 °C towards less. */
  double sdBelow() {
    return Math.hypot(logSd, BEND_SD_BELOW / 2 * squaredWay);
  }

  /** The same towards more. */
  double sdAbove() {
    return Math.hypot(logSd, BEND_SD_ABOVE / 2 * squaredWay);
  }

  /**
   * How large some parameters are beside what is held likely of each, or 1 before the log is asked.
   * Learned from their mean square as far as it is known by now (expectation and maximisation in
   * turns; Dempster, Laird and Rubin, J. R. Stat. Soc. B 39 (1977) 1).
   *
   * @param older from 0 to 1, of what an answer has more that is older than ten seconds
   * @param hour of what windows of one time of day have in common
   * @param charge of the parabola. Within a month full and warm may come together, and what charge
   *     is free to explain is lost to warmth
   * @param place of what windows of one charge have in common beyond it
   */
  private record Likely(double older, double hour, double charge, double place) {
    static Likely atFirst(double pulseS) {
      double older = Math.log(pulseS / YOUNG_S) / Math.log(OLD_S / YOUNG_S);
      return new Likely(Math.max(0, Math.min(1, older)), 1, 1, 1);
    }

    Likely learned(WindowSizes sizes, Ridge.Solution solution) {
      IntStream hours = Arrays.stream(sizes.stretchOfDay()).distinct();
      IntStream places = IntStream.range(0, sizes.count()).map(sizes::placeOfCharge).distinct();
      return new Likely(
          older,
          size(solution, hours.map(h -> STRETCH + h)),
          size(solution, IntStream.of(CHARGE, CHARGE_SQUARED)),
          size(solution, places.map(p -> PLACE + p)));
    }

    private double size(Ridge.Solution solution, IntStream parameters) {
      Likely atFirst = new Likely(older, 1, 1, 1);
      return Math.sqrt(
          parameters
              .mapToDouble(
                  q -> Math.hypot(solution.value()[q], solution.sd(q)) / atFirst.priorSd(q))
              .map(beside -> beside * beside)
              .average()
              .orElseThrow());
    }

    /**
     * Charge is no less free than before the log was asked: a log that keeps to one end of it shows
     * how level the charge dependence is there, and nothing of the way to the middle.
     */
    Likely chargeNoLess() {
      return new Likely(older, hour, Math.max(1, charge), Math.max(1, place));
    }

    /** One standard deviation of a parameter before the data speak. */
    double priorSd(int parameter) {
      if (parameter >= PLACE) {
        return place * unlikeParabola(WindowSizes.fromMid(parameter - PLACE));
      }
      if (parameter >= STRETCH) {
        return hour * HOUR_SD;
      }
      return switch (parameter) {
        case LEVEL -> LEVEL_SD;
        case ENERGY -> Math.hypot(PRIOR_SD_KILOJOULE, older * OLD_MORE_SD_KILOJOULE);
        case CHARGE -> charge * CHARGE_SD;
        default -> charge * CHARGE_SQUARED_SD;
      };
    }

    /** The fit of some rows with that. */
    Ridge.Solution solve(Ridge rows) {
      Ridge fit = new Ridge(PARAMETERS);
      fit.add(rows);
      for (int q = 0; q < PARAMETERS; q++) {
        double likeliest = q == ENERGY ? PRIOR_KILOJOULE + older * OLD_MORE_KILOJOULE : 0;
        fit.prior(q, likeliest, priorSd(q));
      }
      return fit.solve();
    }
  }

  private static double unlikeParabola(double fromMid) {
    return UNLIKE_MID_CHARGE * fromMid * fromMid;
  }

  /** Logarithm of the size that a window should have. */
  private static double log(WindowSizes sizes, int i, double own, Ridge.Solution solution) {
    double[] b = solution.value();
    double x = b[ENERGY] * (perKilojoule(sizes.celsius()[i]) - own);
    double u = sizes.fromMid()[i];
    return b[LEVEL]
        + x
        + BEND / 2 * x * x
        + b[CHARGE] * u
        + b[CHARGE_SQUARED] * u * u
        + b[STRETCH + sizes.stretchOfDay()[i]]
        + b[PLACE + sizes.placeOfCharge(i)];
  }

  /** By how much that rises with each parameter. */
  private static double[] row(WindowSizes sizes, int i, double own, Ridge.Solution solution) {
    double[] b = solution.value();
    double perKilojoule = perKilojoule(sizes.celsius()[i]) - own;
    double x = b[ENERGY] * perKilojoule;
    double u = sizes.fromMid()[i];
    double[] row = new double[b.length];
    row[LEVEL] = 1;
    row[ENERGY] = perKilojoule * (1 + BEND * x);
    row[CHARGE] = u;
    row[CHARGE_SQUARED] = u * u;
    row[STRETCH + sizes.stretchOfDay()[i]] = 1;
    row[PLACE + sizes.placeOfCharge(i)] = 1;
    return row;
  }
}
