package sagbook.estimate;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import sagbook.model.Estimate;
import sagbook.wording.Words;

/**
 * What a string gives between its first full and its first empty cell. With capacity C and room to
 * full F of each cell at one moment, charging stops when the cell of least room is full and
 * discharging when the first cell is empty: usable charge = min over cells of (C - (F - min F)).
 * Brought to full together (all F equal) it is the smallest capacity (arithmetic; compare Jiang and
 * Zhang, Fundamentals and Applications of Lithium-ion Batteries in Electric Drive Vehicles, Wiley
 * 2015, eq. 6.10 to 6.14).
 *
 * @param nowAh as the cells stand, Ah; unknown where the median cell's capacity is
 * @param balancedAh once all cells are brought to full together, Ah; unknown likewise
 * @param gainAh what replacing each cell by one like the string's median, in balance, would add to
 *     {@code nowAh}, one a cell, Ah
 */
public record UsableCharge(Estimate nowAh, Estimate balancedAh, List<Estimate> gainAh) {
  private static final Words WORDS = Words.english();

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

  /** Works the string's charge out from estimates, with intervals from {@link StringDraws}. */
  static UsableCharge of(List<CellEstimates> cells, Estimate medianAh, double nominalAh) {
    Optional<StringDraws> drawn = StringDraws.of(cells, medianAh, nominalAh);
    int n = cells.size();
    if (drawn.isEmpty()) {
      Estimate none = Estimate.unknown(WORDS.say("unknown.string"));
      return new UsableCharge(none, none, Collections.nCopies(n, none));
    }
    StringDraws draws = drawn.get();
    double[] now = new double[draws.rows()];
    double[] balanced = new double[draws.rows()];
    double[][] gain = new double[n][draws.rows()];
    double[][] seenGain = new double[n][draws.rows()];
    for (int row = 0; row < draws.rows(); row++) {
      double[] c = draws.capacityAh()[row];
      double[] f = draws.roomAh()[row];
      now[row] = exact(c, f);
      balanced[row] = Arrays.stream(c).min().orElseThrow();
      for (int i = 0; i < n; i++) {
        double[] other = c.clone();
        double[] room = f.clone();
        other[i] = draws.medianAh()[row];
        room[i] = 0;
        double then = exact(other, room);
        gain[i][row] = then - now[row];
        other[i] = draws.seenCapacityAh()[row][i];
        room[i] = draws.seenRoomAh()[row][i];
        seenGain[i][row] = then - exact(other, room);
      }
    }
    List<Estimate> gains = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      gains.add(StringDraws.spanning(gain[i], seenGain[i]));
    }
    if (medianAh instanceof Estimate.Unknown unknown) {
      return new UsableCharge(unknown, unknown, gains);
    }
    return new UsableCharge(StringDraws.estimate(now), StringDraws.estimate(balanced), gains);
  }
}
