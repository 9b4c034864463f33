package sagbook.estimate.resistance;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.function.Function;
import java.util.stream.IntStream;
import sagbook.estimate.response.ReducedWindow;
import sagbook.estimate.response.StringResponse;
import sagbook.numeric.Jackknife;
import sagbook.numeric.Ridge;

/**
 * Each cell's response against the string's mean response in the same rows: {@code slow} scales the
 * whole response (a worn cell), {@code ohmic} is what a joint adds, both as shares of the string's
 * resistance at the pulse time. Boards are read one after another; what a cell's response has grown
 * by when its turn comes is fitted beside them and left out. What is fitted is the cell's voltage
 * less the mean of all cells, so that whatever the string's response leaves unexplained in a window
 * (weather, charge, hysteresis) goes out. Standard deviations by leaving out one of twelve
 * stretches at a time (jackknife, Tukey 1958).
 *
 * @param held the two parts of each cell, joints being held likely small as far as the rows leave
 *     it open; to bring the whole to 25 °C by
 * @param told the same, joints being let go as soon as the rows show them; to say by whether a cell
 *     or its joint resists
 * @param stringSd standard deviation of the string's mean response, relative
 * @param size of the string's response in the windows used over that at the reference, mean
 */
record CellComparison(List<Parts> held, List<Parts> told, double stringSd, double size) {
  /**
   * The two parts of a cell's answer.
   *
   * @param slow scale of the whole response
   * @param slowSd its standard deviation
   * @param ohmic what a joint adds beyond that at the pulse time, as a share of the string's
   *     response
   * @param ohmicSd its standard deviation
   * @param wholeSd standard deviation of the whole, were the string's response at the reference as
   *     large as in the windows used
   */
  record Parts(double slow, double slowSd, double ohmic, double ohmicSd, double wholeSd) {
    /** Response at the pulse time over the string's mean. */
    double whole() {
      return slow + ohmic;
    }
  }

  private static final int STRETCHES = 12;

  /**
   * Scale of the whole response, what a joint adds (ohm), and how late the cell is read (s) or,
   * without current, what the open-circuit curve takes from its share.
   */
  private static final int PARAMETERS = 3;

  /**
   * By what share of the string's resistance joints differ where none is bad: half of them by less.
   * Common practice, no source.
   */
  static final double JOINTS_DIFFER = 0.05;

  /**
   * By what share a joint may differ before anything is held likely of it, one standard deviation.
   */
  private static final double ANY_JOINT = 0.5;

  /** Width of a prior that leaves nothing open, as a share of the string's resistance. */
  private static final double FIXED = 1e-3;

  private static final int PASSES = 5;

  /** Taken where there are too few windows to leave one out. Common practice, no source. */
  private static final double SD_OF_FEW = 0.05;

  static CellComparison of(UsedWindows used, StringResponse response, double pulseS) {
    int n = used.size();
    int stretches = Math.max(1, Math.min(STRETCHES, n));
    List<Sums> parts = new ArrayList<>();
    for (int k = 0; k < stretches; k++) {
      int stretch = k;
      parts.add(
          Sums.of(
              used,
              response,
              IntStream.range(0, n).filter(w -> (long) w * stretches / n == stretch)));
    }
    double size = Arrays.stream(used.scale()).filter(scale -> scale > 0).average().orElse(1);
    Splitting splitting =
        new Splitting(
            used.drive(),
            response.at(pulseS),
            used.drive().jointShare(response, pulseS),
            size,
            parts);
    return new CellComparison(
        splitting.ofCells(used.drive()::jointSd),
        splitting.ofCells(used.drive()::looseJointSd),
        splitting.of(Sums::string, used.drive()::jointSd).wholeSd(),
        size);
  }

  /**
   * Sums of every cell over some windows, from which its three numbers follow by least squares.
   *
   * @param cell one a cell
   * @param string the mean of all cells
   * @param drive what the cells' answers are put against
   */
  record Sums(Ridge[] cell, Ridge string, Drive drive) {
    static Sums of(UsedWindows used, StringResponse response, IntStream chosen) {
      Ridge[] sums = new Ridge[used.cells()];
      Arrays.setAll(sums, c -> new Ridge(PARAMETERS));
      Ridge string = new Ridge(PARAMETERS);
      double precision = 1 / (response.noiseV() * response.noiseV());
      chosen
          .filter(w -> used.scale()[w] > 0)
          .forEach(
              w ->
                  observe(
                      used.windows().get(w),
                      used.drive().parts(response, used.scale()[w], w),
                      used.drive().beyond(response, used.scale()[w]),
                      used.weight()[w] * precision,
                      sums,
                      string));
      return new Sums(sums, string, used.drive());
    }

    /** Slow scale, immediate part, ohm, and what stands beside them, of every cell. */
    double[][] solutions(double ohm) {
      double[][] all = new double[cell.length][];
      for (int c = 0; c < all.length; c++) {
        all[c] = solution(cell[c], drive::jointSd, drive, ohm).value();
      }
      return all;
    }

    /**
     * Each cell's response at the pulse time over the string's mean, as these windows alone tell
     * it; empty where they tell a cell no better than {@code toldSd}.
     */
    double[] whole(double ohm, double jointShare, double toldSd) {
      double[] whole = new double[cell.length];
      double[] asked = {1, jointShare, 0};
      for (int c = 0; c < whole.length; c++) {
        Ridge.Solution solution = unheld(cell[c], drive, ohm);
        if (!(solution.combinedSd(asked) < toldSd)) {
          return new double[0];
        }
        whole[c] = solution.combined(asked);
      }
      return whole;
    }

    private static void observe(
        ReducedWindow window,
        double[][] map,
        double[][] beyond,
        double precision,
        Ridge[] sums,
        Ridge string) {
      Ridge common = new Ridge(PARAMETERS);
      for (int a = 0; a < PARAMETERS; a++) {
        for (int b = 0; b <= a; b++) {
          common.addNormal(a, b, precision * window.product(map[a], map[b]));
        }
      }
      double[] mean = window.meanCross();
      string.addNormalOf(common);
      for (int a = 0; a < PARAMETERS; a++) {
        string.addRight(a, precision * ReducedWindow.product(map[a], mean, mean.length));
      }
      for (int c = 0; c < sums.length; c++) {
        sums[c].addNormalOf(common);
        double[] cross = window.cross()[c];
        for (int a = 0; a < PARAMETERS; a++) {
          double lessMean =
              ReducedWindow.product(map[a], cross, cross.length)
                  - ReducedWindow.product(map[a], mean, mean.length);
          if (beyond.length > 0) {
            lessMean -= window.product(map[a], beyond[c]);
          }
          sums[c].addRight(a, precision * (window.product(map[a], map[0]) + lessMean));
        }
      }
    }
  }

  /**
   * The numbers of a cell. Rows tell little of what its joint adds, so most joints are held alike
   * and few are bad: the prior's width follows what was found, so that one seen plainly is let go
   * (reweighting for heavy tails; Lange, Little and Taylor, J. Am. Stat. Assoc. 84 (1989) 881).
   */
  private static Ridge.Solution solution(
      Ridge sums, DoubleUnaryOperator jointSd, Drive drive, double ohm) {
    Ridge.Solution solution = unheld(sums, drive, ohm);
    for (int pass = 0; pass < PASSES; pass++) {
      double joint = solution.value()[1] / ohm;
      solution = solution(sums, 0, jointSd.applyAsDouble(joint) * ohm, drive);
    }
    double least = drive.leastJoint(solution.value()[0]);
    return solution.value()[1] < least * ohm
        ? solution(sums, least * ohm, FIXED * ohm, drive)
        : solution;
  }

  /** The same where nothing is held likely of joints. */
  private static Ridge.Solution unheld(Ridge sums, Drive drive, double ohm) {
    return solution(sums, 0, ANY_JOINT * ohm, drive);
  }

  private static Ridge.Solution solution(Ridge sums, double joint, double jointSd, Drive drive) {
    Ridge fit = new Ridge(PARAMETERS);
    fit.add(sums);
    fit.prior(0, 1, 0.5);
    fit.prior(1, joint, jointSd);
    fit.prior(2, 0, drive.asideSd());
    return fit.solve();
  }

  /**
   * Splits answers into their parts, with what leaving out a stretch at a time says of them.
   *
   * @param ohm the string's response at the pulse time
   * @param jointShare what one unit of a joint adds there
   * @param size of the string's response where the log was
   * @param stretches sums of each stretch
   */
  private record Splitting(
      Drive drive, double ohm, double jointShare, double size, List<Sums> stretches) {
    private static final int SLOW = 0;
    private static final int OHMIC = 1;
    private static final int WHOLE_AS_USED = 2;

    List<Parts> ofCells(DoubleUnaryOperator jointSd) {
      return IntStream.range(0, stretches.get(0).cell().length)
          .mapToObj(c -> of(sums -> sums.cell()[c], jointSd))
          .toList();
    }

    Parts of(Function<Sums, Ridge> whose, DoubleUnaryOperator jointSd) {
      double[] all = numbers(whose, -1, jointSd);
      double[][] left = new double[stretches.size()][];
      Arrays.setAll(left, k -> numbers(whose, k, jointSd));
      return new Parts(
          all[SLOW], sd(left, SLOW), all[OHMIC], sd(left, OHMIC), sd(left, WHOLE_AS_USED));
    }

    private double[] numbers(
        Function<Sums, Ridge> whose, int leftOut, DoubleUnaryOperator jointSd) {
      Ridge sums = new Ridge(PARAMETERS);
      for (int k = 0; k < stretches.size(); k++) {
        if (k != leftOut) {
          sums.add(whose.apply(stretches.get(k)));
        }
      }
      double[] b = solution(sums, jointSd, drive, ohm).value();
      double ohmic = b[1] * jointShare;
      return new double[] {b[0], ohmic, b[0] + ohmic / size};
    }

    private static double sd(double[][] left, int column) {
      return left.length > 2 ? Jackknife.sd(left, column) : SD_OF_FEW;
    }
  }
}
