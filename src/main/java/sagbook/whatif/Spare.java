package sagbook.whatif;

import java.util.OptionalDouble;
import sagbook.model.PackDescription;

/**
 * A cell that could be put in.
 *
 * @param capacityAh between full and empty, Ah
 * @param resistanceMilliohm as the string's are stated, mΩ; empty means like the string's median
 * @param told whether the capacity was told, or is the nominal one
 */
public record Spare(double capacityAh, OptionalDouble resistanceMilliohm, boolean told) {
  public Spare {
    if (!(capacityAh > 0)) {
      throw new IllegalArgumentException("a spare's capacity must be above 0");
    }
  }

  /** The pack description's spare, or one of nominal capacity. */
  public static Spare of(PackDescription pack) {
    return new Spare(
        pack.spareCapacityAh().orElse(pack.nominalCapacityAh()),
        pack.spareResistanceMilliohm().stream().mapToDouble(d -> d).findFirst(),
        pack.spareCapacityAh().isPresent());
  }
}
