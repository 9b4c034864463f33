package sagbook.account;

import sagbook.evidence.ThinnedRecord;
import sagbook.model.Chemistry;
import sagbook.model.PackDescription;

/**
 * Whether the string stands near full: its mean cell voltage above the plateau's end (LFP, 0.25 V
 * below the full voltage, 3.40 V as a rule) or in the uppermost tenth or so (NMC, 0.10 V below,
 * 4.10 V as a rule). Common practice, no source.
 */
final class FullState {
  /**
   * Below this share of nominal capacity an hour a current is noise. Common practice, no source.
   */
  static final double NOISE = 0.005;

  private final ThinnedRecord record;
  private final double fromV;

  FullState(ThinnedRecord record, PackDescription pack) {
    this.record = record;
    double below = pack.chemistry() == Chemistry.LFP ? 0.25 : 0.10;
    this.fromV = pack.limits().cellFullVoltage() - below;
  }

  boolean isNear(int row) {
    double sum = 0;
    int n = 0;
    for (float[] cell : record.voltageV()) {
      if (!Float.isNaN(cell[row])) {
        sum += cell[row];
        n++;
      }
    }
    return n > 0 && sum / n >= fromV;
  }
}
