package sagbook.estimate.capacity;

import java.util.List;

/**
 * One explanation of a cell that stands out.
 *
 * @param cost what it leaves
 * @param lossAh what the cell lost by it, Ah
 */
record Rival(double cost, double lossAh) {
  /**
   * The most that a cell may have lost by another explanation that leaves less than the one that
   * was taken, Ah; what that one says where none says more. A simpler explanation keeps its place
   * against one that is not clearly better, and then the cell may still be what the other says: the
   * simplest is the best guess, but the range has to hold both.
   */
  static double mostLossAh(List<Rival> all, Rival taken) {
    return all.stream()
        .filter(rival -> rival.cost < taken.cost)
        .mapToDouble(Rival::lossAh)
        .reduce(taken.lossAh, Math::max);
  }
}
