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
   * How much more a cell has lost by another explanation that leaves less than the one that was
   * taken, Ah, 0 where none says more. A simpler explanation keeps its place against one that is
   * not clearly better, and then the cell may still be what the other says: the simplest is the
   * best guess, but the range has to hold both.
   */
  static double furtherLossAh(List<Rival> all, Rival taken) {
    return all.stream()
        .filter(rival -> rival.cost < taken.cost)
        .mapToDouble(rival -> rival.lossAh - taken.lossAh)
        .reduce(0, Math::max);
  }
}
