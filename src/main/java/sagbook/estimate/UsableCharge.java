package sagbook.estimate;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.SplittableRandom;
import sagbook.model.Estimate;
import sagbook.numeric.Robust;

/**
 * What a string gives between its first full and its first empty cell. With capacity C and room to
 * full F of each cell at one moment, charging stops when the cell of least room is full and
 * discharging when the first cell is empty: usable charge = min over cells of (C - (F - min F)).
 * Brought to full together (all F equal) it is the smallest capacity (arithmetic; compare Jiang and
 * Zhang, Fundamentals and Applications of Lithium-ion Batteries in Electric Drive Vehicles, Wiley
 * 2015, eq. 6.10 to 6.14).
 *
 * @param nowAh as the cells stand, Ah
 * @param balancedAh once all cells are brought to full together, Ah
 * @param gainAh what replacing each cell by one like the string's median, in balance, would add to
 *     {@code nowAh}, one a cell, Ah
 */
public record UsableCharge(Estimate nowAh, Estimate balancedAh, List<Estimate> gainAh) {
  private static final int DRAWS = 400;

  public UsableCharge {
    gainAh = List.copyOf(gainAh);
  }

  /** Usable charge of cells whose capacities and rooms to full are known exactly, Ah. */
  public static double exact(double[] capacityAh, double[] roomAh) {
    double least = Double.POSITIVE_INFINITY;
    for (double f : roomAh) {
      least = Math.min(least, f);
    }
    double usable = Double.POSITIVE_INFINITY;
    for (int c = 0; c < capacityAh.length; c++) {
      usable = Math.min(usable, capacityAh[c] - (roomAh[c] - least));
    }
    return Math.max(0, usable);
  }

  /**
   * Works the string's charge out from estimates, with intervals by drawing the cells' capacities
   * and offsets from theirs (Monte Carlo, JCGM 101:2008; fixed seed).
   */
  static UsableCharge of(List<CellEstimates> cells, Estimate medianAh, double nominalAh) {
    int n = cells.size();
    double scale = medianAh.find().orElse(nominalAh);
    double[][] capacity = new double[n][2];
    double[][] room = new double[n][2];
    int unknown = 0;
    for (int c = 0; c < n; c++) {
      CellEstimates cell = cells.get(c);
      unknown += cell.capacityRelative() instanceof Estimate.Known ? 0 : 1;
      // A cell that the log can't tell is taken as usual, give or take 5 %.
      spread(cell.capacityRelative().map(r -> r * scale), scale, 0.05 * scale, capacity[c]);
      spread(reversed(cell.chargeOffsetPercent(), nominalAh), 0, 0.02 * nominalAh, room[c]);
    }
    if (unknown > n / 2) {
      Estimate none =
          Estimate.unknown("most cells' capacities are unknown, so the string's is too");
      return new UsableCharge(none, none, Collections.nCopies(n, none));
    }
    return draw(capacity, room, scale, medianAh);
  }

  private static Estimate reversed(Estimate offsetPercent, double nominalAh) {
    if (offsetPercent instanceof Estimate.Known k) {
      double f = -nominalAh / 100;
      return new Estimate.Known(k.value() * f, k.high() * f, k.low() * f);
    }
    return offsetPercent;
  }

  private static void spread(Estimate estimate, double otherwise, double otherSd, double[] into) {
    into[0] = estimate.find().orElse(otherwise);
    into[1] = estimate instanceof Estimate.Known k ? k.halfWidth() / 1.959964 : otherSd;
  }

  private static UsableCharge draw(
      double[][] capacity, double[][] room, double scale, Estimate medianAh) {
    int n = capacity.length;
    SplittableRandom random = new SplittableRandom(20_240_601L);
    double[][] gain = new double[n][DRAWS];
    double[] now = new double[DRAWS];
    double[] balanced = new double[DRAWS];
    double[] c = new double[n];
    double[] f = new double[n];
    double common = medianAh instanceof Estimate.Known k ? k.halfWidth() / 1.959964 : 0;
    for (int d = 0; d < DRAWS; d++) {
      double shared = common * normal(random);
      balanced[d] = Double.POSITIVE_INFINITY;
      for (int i = 0; i < n; i++) {
        c[i] = capacity[i][0] + capacity[i][1] * normal(random) + shared;
        f[i] = room[i][0] + room[i][1] * normal(random);
        balanced[d] = Math.min(balanced[d], c[i]);
      }
      now[d] = exact(c, f);
      for (int i = 0; i < n; i++) {
        double ci = c[i];
        double fi = f[i];
        c[i] = scale + shared;
        f[i] = 0;
        gain[i][d] = exact(c, f) - now[d];
        c[i] = ci;
        f[i] = fi;
      }
    }
    double[] best = new double[n];
    double[] bestRoom = new double[n];
    for (int i = 0; i < n; i++) {
      best[i] = capacity[i][0];
      bestRoom[i] = room[i][0];
    }
    return summary(best, bestRoom, scale, now, balanced, gain);
  }

  private static UsableCharge summary(
      double[] best,
      double[] bestRoom,
      double scale,
      double[] now,
      double[] balanced,
      double[][] gain) {
    double value = exact(best, bestRoom);
    double least = Double.POSITIVE_INFINITY;
    for (double capacityAh : best) {
      least = Math.min(least, capacityAh);
    }
    ArrayList<Estimate> gains = new ArrayList<>();
    for (int i = 0; i < best.length; i++) {
      double ci = best[i];
      double fi = bestRoom[i];
      best[i] = scale;
      bestRoom[i] = 0;
      gains.add(interval(exact(best, bestRoom) - value, gain[i]));
      best[i] = ci;
      bestRoom[i] = fi;
    }
    return new UsableCharge(interval(value, now), interval(least, balanced), gains);
  }

  private static Estimate interval(double value, double[] draws) {
    double low = Robust.quantile(draws, 0.025);
    double high = Robust.quantile(draws, 0.975);
    return new Estimate.Known(value, Math.min(low, value), Math.max(high, value));
  }

  /** A standard normal number (Box and Muller 1958). */
  private static double normal(SplittableRandom random) {
    double u = 1 - random.nextDouble();
    double v = random.nextDouble();
    return StrictMath.sqrt(-2 * StrictMath.log(u)) * StrictMath.cos(2 * Math.PI * v);
  }
}
