package sagbook.estimate.capacity;

import java.util.List;
import java.util.function.ToDoubleFunction;
import sagbook.model.Estimate;

/**
 * One explanation of a cell that stands out.
 *
 * @param cost what it leaves
 * @param state of the cell by it
 */
record Rival(double cost, CellState state) {
  /**
   * Those that leave less than the explanation that was taken. A simpler one keeps its place
   * against one that is not clearly better, and one that was seen to be unlikely otherwise is
   * passed over; then the cell may still be what the other says: what was taken is the best guess,
   * but ranges have to hold both.
   */
  static List<Rival> betterThan(double taken, List<Rival> all) {
    return all.stream().filter(rival -> rival.cost < taken).toList();
  }

  /**
   * A value whose range reaches from where it is as far as rivals would move it.
   *
   * @param of what the value follows from, in the state that was taken and in a rival's
   * @param unit of the value over that of what it follows from
   */
  static Estimate reach(
      Estimate value,
      List<Rival> rivals,
      CellState taken,
      ToDoubleFunction<CellState> of,
      double unit) {
    if (!(value instanceof Estimate.Known k)) {
      return value;
    }
    double low = k.low();
    double high = k.high();
    for (Rival rival : rivals) {
      double by = unit * (of.applyAsDouble(rival.state) - of.applyAsDouble(taken));
      low = Math.min(low, k.low() + by);
      high = Math.max(high, k.high() + by);
    }
    return new Estimate.Known(k.value(), low, high);
  }
}
