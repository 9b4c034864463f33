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
 * <p>Weighing is right for any cell, and wrong for the one that truly differs a little: what was
 * seen of it is drawn to its neighbours. So a cell that stands out is drawn a second time, as it
 * was seen; what is asked of just this cell has to hold for both ({@link #takingAtTheirWord};
 * compare the sensitivity of a posterior to its prior, Berger 1985, section 4.7).
 *
 * @param capacityAh [row][cell], Ah
 * @param roomAh [row][cell], charge that fits in until full when the string's median cell is full,
 *     Ah; below 0 for a cell that is fuller than the median
 * @param seenCapacityAh [row][cell], the same of cells taken at their word, Ah
 * @param seenRoomAh [row][cell], likewise, Ah
 * @param medianAh one a row: capacity of the string's median cell, Ah
 */
public record StringDraws(
    double[][] capacityAh,
    double[][] roomAh,
    double[][] seenCapacityAh,
    double[][] seenRoomAh,
    double[] medianAh) {
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
    List<Weighed> sizes =
        weighed(cells.stream().map(CellEstimates::capacityRelative).toList(), 1, UNKNOWN_CAPACITY);
    List<Weighed> charges =
        weighed(
            cells.stream().map(c -> c.chargeOffsetPercent().map(p -> p / 100)).toList(),
            0,
            UNKNOWN_ROOM);
    double[][] capacity = new double[DRAWS + 1][n];
    double[][] room = new double[DRAWS + 1][n];
    double[][] seenCapacity = new double[DRAWS + 1][n];
    double[][] seenRoom = new double[DRAWS + 1][n];
    double[] median = new double[DRAWS + 1];
    SplittableRandom second = new SplittableRandom(20_251_127L);
    SplittableRandom random = new SplittableRandom(20_240_601L);
    for (int row = 0; row <= DRAWS; row++) {
      boolean best = row == 0;
      double shared = best ? 0 : common * normal(random);
      median[row] = scale + shared;
      for (int i = 0; i < n; i++) {
        Weighed size = sizes.get(i);
        Weighed charge = charges.get(i);
        double share = best ? size.likely().best() : size.likely().draw(random);
        double ahead = best ? charge.likely().best() : charge.likely().draw(random);
        double seenShare = best ? share : size.atItsWord(share, second);
        double seenAhead = best ? ahead : charge.atItsWord(ahead, second);
        capacity[row][i] = scale * share + shared;
        room[row][i] = -nominalAh * ahead;
        seenCapacity[row][i] = scale * seenShare + shared;
        seenRoom[row][i] = -nominalAh * seenAhead;
      }
    }
    return Optional.of(new StringDraws(capacity, room, seenCapacity, seenRoom, median));
  }

  /** The same with these cells, 1 for the first, as they were seen. */
  public StringDraws takingAtTheirWord(List<Integer> cells) {
    return new StringDraws(
        replaced(capacityAh, seenCapacityAh, cells),
        replaced(roomAh, seenRoomAh, cells),
        seenCapacityAh,
        seenRoomAh,
        medianAh);
  }

  private static double[][] replaced(double[][] all, double[][] seen, List<Integer> cells) {
    double[][] replaced = new double[all.length][];
    for (int row = 0; row < all.length; row++) {
      replaced[row] = all[row].clone();
      for (int cell : cells) {
        replaced[row][cell - 1] = seen[row][cell - 1];
      }
    }
    return replaced;
  }

  /** The best value, the same of both, with a range that spans both ranges. */
  public static Estimate.Known spanning(double[] byRow, double[] takenAtItsWord) {
    Estimate.Known one = estimate(byRow);
    Estimate.Known other = estimate(takenAtItsWord);
    return new Estimate.Known(
        one.value(), Math.min(one.low(), other.low()), Math.max(one.high(), other.high()));
  }

  /** The cell that looks smallest, 1 for the first. */
  public int smallest() {
    int at = 0;
    for (int i = 1; i < cells(); i++) {
      at = capacityAh[0][i] < capacityAh[0][at] ? i : at;
    }
    return at + 1;
  }

  /**
   * One quantity of a cell.
   *
   * @param likely weighed against its neighbours
   * @param seen as it was seen, where it stands out
   */
  private record Weighed(AlikeCells.Likely likely, Optional<Estimate.Known> seen) {
    double atItsWord(double weighed, SplittableRandom random) {
      return seen.map(known -> drawn(known, normal(random))).orElse(weighed);
    }

    private static double drawn(Estimate.Known known, double normal) {
      return known.value()
          + normal * (normal < 0 ? Math.max(sd(known), sdBelow(known)) : sd(known));
    }
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
  private static List<Weighed> weighed(List<Estimate> seen, double usual, double sd) {
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
                    ? new Weighed(
                        alike.weigh(known),
                        alike.standsOut(known) ? Optional.of(known) : Optional.empty())
                    : new Weighed(new AlikeCells.Likely(1, usual, sd, usual, sd), Optional.empty()))
        .toList();
  }

  /**
   * One standard deviation towards larger values, where a small cell's neighbours lie; its range
   * may reach further down.
   */
  static double sd(Estimate.Known estimate) {
    return Math.min(estimate.halfWidth(), estimate.high() - estimate.value()) / TWO_SIDED_95;
  }

  private static double sdBelow(Estimate.Known estimate) {
    return (estimate.value() - estimate.low()) / TWO_SIDED_95;
  }

  /** A standard normal number (Box and Muller 1958). */
  public static double normal(SplittableRandom random) {
    double u = 1 - random.nextDouble();
    double v = random.nextDouble();
    return StrictMath.sqrt(-2 * StrictMath.log(u)) * StrictMath.cos(2 * Math.PI * v);
  }
}
