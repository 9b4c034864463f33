package sagbook.whatif;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import sagbook.estimate.CellEstimates;
import sagbook.estimate.StringDraws;
import sagbook.estimate.UsableCharge;
import sagbook.model.Estimate;
import sagbook.numeric.Robust;

/** The string's cells as drawn from their estimates, and what a change would make of them. */
final class StringModel {
  /** What an unknown resistance may differ from the string's median by. */
  private static final double UNKNOWN_RESISTANCE = 0.2;

  private final StringDraws draws;
  private final double[][] milliohm;
  private final double[][] excess;
  private final double[] usualMilliohm;
  private final boolean resistanceKnown;
  private final Spare spare;
  private final LoadedEnd end;
  private final double eveningA;
  private final State[] now;

  /**
   * What the string is in one row of draws.
   *
   * @param usableAh charge between its first full and its first empty cell, Ah
   * @param eveningAh charge at the evening load until the first cell's loaded voltage is at its
   *     limit, Ah
   * @param totalMilliohm resistance of all cells, milliohm
   */
  record State(double usableAh, double eveningAh, double totalMilliohm) {}

  StringModel(
      List<CellEstimates> cells, StringDraws draws, Spare spare, LoadedEnd end, double eveningA) {
    this.draws = draws;
    this.spare = spare;
    this.end = end;
    this.eveningA = eveningA;
    double[] known =
        cells.stream().flatMapToDouble(c -> c.resistanceMilliohm().find().stream()).toArray();
    this.resistanceKnown = known.length > cells.size() / 2;
    double median = resistanceKnown ? Robust.median(known) : 0;
    Estimate usual = Estimate.of(median, UNKNOWN_RESISTANCE * median / 2);
    this.milliohm = new double[draws.rows()][cells.size()];
    this.excess = new double[draws.rows()][cells.size()];
    this.usualMilliohm = new double[draws.rows()];
    SplittableRandom random = new SplittableRandom(20_250_915L);
    for (int row = 0; row < draws.rows(); row++) {
      for (int c = 0; c < cells.size(); c++) {
        Estimate whole = cells.get(c).resistanceMilliohm();
        milliohm[row][c] = drawn(whole instanceof Estimate.Known ? whole : usual, row, random);
        excess[row][c] = drawn(cells.get(c).ohmicExcessMilliohm(), row, random);
      }
      usualMilliohm[row] = Robust.median(milliohm[row]);
    }
    this.now = after(Change.nothing());
  }

  private StringModel(StringModel other, StringDraws draws) {
    this.draws = draws;
    this.spare = other.spare;
    this.end = other.end;
    this.eveningA = other.eveningA;
    this.resistanceKnown = other.resistanceKnown;
    this.milliohm = other.milliohm;
    this.excess = other.excess;
    this.usualMilliohm = other.usualMilliohm;
    this.now = after(Change.nothing());
  }

  /** The same with the cells that a change is about as they were seen. */
  StringModel takingAtTheirWord(Change change) {
    return switch (change.kind()) {
      case NOTHING, MEND_JOINT -> this;
      case REBALANCE -> takingAtTheirWord(List.of(draws.smallest()));
      case REPLACE -> takingAtTheirWord(change.cells());
    };
  }

  StringModel takingAtTheirWord(List<Integer> cells) {
    return new StringModel(this, draws.takingAtTheirWord(cells));
  }

  private static double drawn(Estimate estimate, int row, SplittableRandom random) {
    double normal = StringDraws.normal(random);
    return estimate instanceof Estimate.Known k
        ? Math.max(0, k.value() + (row == 0 ? 0 : normal * k.sd()))
        : 0;
  }

  int rows() {
    return draws.rows();
  }

  boolean resistanceKnown() {
    return resistanceKnown;
  }

  /** The string as it is, one a row. */
  State[] now() {
    return now;
  }

  /** The string after a change, one a row. */
  State[] after(Change change) {
    Map<Integer, Spare> replaced =
        change.kind() == Change.Kind.REPLACE ? all(change.cells()) : Map.of();
    return byRow(
        row -> {
          double[] f = draws.roomAh()[row].clone();
          double[] r = milliohm[row].clone();
          switch (change.kind()) {
            case NOTHING, REPLACE -> {}
            case REBALANCE -> Arrays.fill(f, 0);
            case MEND_JOINT -> {
              for (int cell : change.cells()) {
                r[cell - 1] = Math.max(0, r[cell - 1] - excess[row][cell - 1]);
              }
            }
          }
          return state(replaced, draws.capacityAh()[row].clone(), f, r, usualMilliohm[row]);
        });
  }

  /** The string with spares of different kinds in its places, one a row. */
  State[] after(Map<Integer, Spare> spares) {
    return byRow(row -> after(spares, row));
  }

  /** One row of {@link #after(Map)}. */
  State after(Map<Integer, Spare> spares, int row) {
    return state(
        spares,
        draws.capacityAh()[row].clone(),
        draws.roomAh()[row].clone(),
        milliohm[row].clone(),
        usualMilliohm[row]);
  }

  private State[] byRow(IntFunction<State> state) {
    return IntStream.range(0, rows()).mapToObj(state).toArray(State[]::new);
  }

  private Map<Integer, Spare> all(List<Integer> cells) {
    Map<Integer, Spare> same = new TreeMap<>();
    cells.forEach(cell -> same.put(cell, spare));
    return same;
  }

  /** What cells of these capacities, rooms and resistances are once spares took their places. */
  private State state(
      Map<Integer, Spare> spares, double[] c, double[] f, double[] r, double usualMilliohm) {
    double fullest = Double.POSITIVE_INFINITY;
    for (int i = 0; i < f.length; i++) {
      if (!spares.containsKey(i + 1)) {
        fullest = Math.min(fullest, f[i]);
      }
    }
    double room = fullest == Double.POSITIVE_INFINITY ? 0 : fullest;
    spares.forEach(
        (cell, put) -> {
          c[cell - 1] = put.capacityAh();
          f[cell - 1] = room;
          r[cell - 1] = put.resistanceMilliohm().orElse(usualMilliohm);
        });
    return new State(UsableCharge.exact(c, f), eveningAh(c, f, r), Arrays.stream(r).sum());
  }

  private double eveningAh(double[] c, double[] f, double[] r) {
    double[] left = c.clone();
    for (int i = 0; i < left.length; i++) {
      left[i] -= left[i] * end.keptBack(eveningA * r[i] / 1000);
    }
    return UsableCharge.exact(left, f);
  }

  /** What a cell by itself takes from a string whose other cells are all like the median, Ah. */
  double aloneAh(int cell, int row) {
    double median = draws.medianAh()[row];
    double room = draws.roomAh()[row][cell - 1];
    double usable =
        Math.min(draws.capacityAh()[row][cell - 1] - Math.max(0, room), median + Math.min(0, room));
    return Math.max(0, median - usable);
  }

  /** The cell that is full first, 1 for the first. */
  int fullFirst(int row) {
    return least(draws.roomAh()[row]);
  }

  /** The cell that is empty first, 1 for the first. */
  int emptyFirst(int row) {
    double[] left = draws.capacityAh()[row].clone();
    for (int i = 0; i < left.length; i++) {
      left[i] -= draws.roomAh()[row][i];
    }
    return least(left);
  }

  private static int least(double[] values) {
    int at = 0;
    for (int i = 1; i < values.length; i++) {
      at = values[i] < values[at] ? i : at;
    }
    return at + 1;
  }
}
