package sagbook.verdict;

import sagbook.estimate.CellEstimates;
import sagbook.model.Estimate;

/** Where a resistance that is too large sits. */
enum Seat {
  CELL,
  JOINT,
  EITHER;

  /**
   * A worn cell scales its whole response, so its slow part stands as far above the string's as the
   * whole; a joint leaves the slow part alone. Whichever lies nearer by a standard deviation at
   * least.
   */
  static Seat of(CellEstimates cell) {
    if (cell.slowResponseRelative() instanceof Estimate.Known slow
        && cell.resistanceRelative() instanceof Estimate.Known whole) {
      double asCell = Math.abs(slow.value() - whole.value());
      double asJoint = Math.abs(slow.value() - 1);
      if (Math.abs(asCell - asJoint) > slow.sd()) {
        return asCell < asJoint ? CELL : JOINT;
      }
    }
    return EITHER;
  }
}
