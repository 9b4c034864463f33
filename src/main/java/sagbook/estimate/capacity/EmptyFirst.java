package sagbook.estimate.capacity;

import java.util.OptionalInt;
import sagbook.evidence.ThinnedRecord;
import sagbook.model.Chemistry;
import sagbook.numeric.Robust;

/**
 * The cell that ended the discharge before the others had come down: nearly empty at the deepest
 * point of the log, while the middle cell still stood well above it.
 */
final class EmptyFirst {
  /** About a tenth of charge left under an ordinary load, V. Common practice, no source. */
  private static final double LOW_LFP_V = 3.1;

  private static final double LOW_SLOPING_V = 3.4;

  /** Healthy cells of a level string lie closer together than this at 3.0 V. Same source. */
  private static final double CLEAR_V = 0.15;

  private EmptyFirst() {}

  /** Its number, 1 for the first; empty where the cells came down together or not at all. */
  static OptionalInt cell(ThinnedRecord record, Chemistry chemistry) {
    double low = chemistry == Chemistry.LFP ? LOW_LFP_V : LOW_SLOPING_V;
    double deepest = low;
    OptionalInt first = OptionalInt.empty();
    double[] row = new double[record.cells()];
    for (int r = 0; r < record.rows(); r++) {
      int lowest = 0;
      for (int c = 0; c < row.length; c++) {
        row[c] = record.voltageV()[c][r];
        lowest = row[c] < row[lowest] ? c : lowest;
      }
      if (row[lowest] < deepest) {
        deepest = row[lowest];
        boolean clear = Robust.median(row) - deepest > CLEAR_V;
        first = clear ? OptionalInt.of(lowest + 1) : OptionalInt.empty();
      }
    }
    return first;
  }
}
