package sagbook.estimate;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import sagbook.model.Estimate;
import sagbook.numeric.Robust;

/**
 * The cells of a string as they may be: capacities and rooms to full drawn from their estimates,
 * each weighed against its neighbours ({@link AlikeCells}; Monte Carlo, JCGM 101:2008; fixed seed,
 * so the same estimates give the same draws). Row 0 holds the best values, the rows behind it the
 * draws.
 *
 * @param capacityAh [row][cell], Ah
 * @param roomAh [row][cell], charge that fits in until full when the string's median cell is full,
 *     Ah; below 0 for a cell that is fuller than the median
 * @param medianAh one a row: capacity of the string's median cell, Ah
 */
public record StringDraws(double[][] capacityAh, double[][] roomAh, double[] medianAh) {
  private static final int DRAWS = 400;
  private static final double TWO_SIDED_95 = 1.959964;

  /** A cell that the log can't tell is taken as usual, give or take this share of capacity. */
  private static final double UNKNOWN_CAPACITY = 0.05;

  private static final double UNKNOWN_ROOM = 0.02;

  /**
   * Draws the cells.
   *
   * @param medianAh capacity of the median cell; where it is unknown, ampere-hours are reckoned as
   *     if it were nominal
   * @return empty when the capacities of more than half of the cells are unknown
   */
  public static Optional<StringDraws> of(
      List<CellEstimates> cells, Estimate medianAh, double nominalAh) {
    long unknown =
        cells.stream().filter(c -> c.capacityRelative() instanceof Estimate.Unknown).count();
    if (unknown > cells.size() / 2) {
      return Optional.empty();
    }
    double scale = medianAh.find().orElse(nominalAh);
    double common = medianAh instanceof Estimate.Known k ? sd(k) : 0;
    int n = cells.size();
    List<AlikeCells.Likely> sizes =
        likely(cells.stream().map(CellEstimates::capacityRelative).toList(), 1, UNKNOWN_CAPACITY);
    List<AlikeCells.Likely> charges =
        likely(
            cells.stream().map(c -> c.chargeOffsetPercent().map(p -> p / 100)).toList(),
            0,
            UNKNOWN_ROOM);
    double[][] capacity = new double[DRAWS + 1][n];
    double[][] room = new double[DRAWS + 1][n];
    double[] median = new double[DRAWS + 1];
    SplittableRandom random = new SplittableRandom(20_240_601L);
    for (int row = 0; row <= DRAWS; row++) {
      boolean best = row == 0;
      double shared = best ? 0 : common * normal(random);
      median[row] = scale + shared;
      for (int i = 0; i < n; i++) {
        AlikeCells.Likely size = sizes.get(i);
        AlikeCells.Likely charge = charges.get(i);
        capacity[row][i] = scale * (best ? size.best() : size.draw(random)) + shared;
        room[row][i] = -nominalAh * (best ? charge.best() : charge.draw(random));
      }
    }
    return Optional.of(new StringDraws(capacity, room, median));
  }

  public int rows() {
    return medianAh.length;
  }

  public int cells() {
    return capacityAh[0].length;
  }

  /**
   * What came out row by row as an estimate: the best value, and the middle 95 % of the draws.
   *
   * @param byRow best value first, then one a draw
   */
  public static Estimate.Known estimate(double[] byRow) {
    double[] draws = Arrays.copyOfRange(byRow, 1, byRow.length);
    Arrays.sort(draws);
    double value = byRow[0];
    double low = Robust.quantileOfSorted(draws, draws.length, 0.025);
    double high = Robust.quantileOfSorted(draws, draws.length, 0.975);
    return new Estimate.Known(value, Math.min(low, value), Math.max(high, value));
  }

  /**
   * Each cell weighed against its neighbours.
   *
   * @param usual where a cell is put that the log can't tell
   * @param sd give or take that, one standard deviation
   */
  private static List<AlikeCells.Likely> likely(List<Estimate> seen, double usual, double sd) {
    AlikeCells alike =
        AlikeCells.of(
            seen.stream()
                .filter(Estimate.Known.class::isInstance)
                .map(Estimate.Known.class::cast)
                .toList());
    return seen.stream()
        .map(
            estimate ->
                estimate instanceof Estimate.Known known
                    ? alike.weigh(known)
                    : new AlikeCells.Likely(1, usual, sd, usual, sd))
        .toList();
  }

  static double sd(Estimate.Known estimate) {
    return estimate.halfWidth() / TWO_SIDED_95;
  }

  /** A standard normal number (Box and Muller 1958). */
  public static double normal(SplittableRandom random) {
    double u = 1 - random.nextDouble();
    double v = random.nextDouble();
    return StrictMath.sqrt(-2 * StrictMath.log(u)) * StrictMath.cos(2 * Math.PI * v);
  }
}
