package sagbook.estimate;

import java.util.Arrays;
import java.util.Optional;
import sagbook.estimate.axis.AxisBuilder;
import sagbook.estimate.axis.ChargeAxis;
import sagbook.estimate.capacity.StringSize;
import sagbook.estimate.response.ReducedWindow;
import sagbook.estimate.response.StringResponse;
import sagbook.evidence.Evidence;
import sagbook.model.CapacitySource;
import sagbook.model.PackDescription;

/**
 * What to reckon with where the keeper did not tell the nominal capacity. All likelihoods and
 * distances along the charge axis are shares of it, so a number that has nothing to do with the
 * string makes wrong results look sure.
 */
public final class UntoldCapacity {
  private UntoldCapacity() {}

  /** The pack, reckoned with its string's own size where that was not told and the log shows it. */
  public static PackDescription reckoned(Evidence evidence, PackDescription pack) {
    if (pack.isCapacityTold() || !evidence.channels().hasCurrent()) {
      return pack;
    }
    var windows = ReducedWindow.of(evidence);
    double[] all = new double[windows.size()];
    Arrays.fill(all, 1);
    double slowOhm =
        StringResponse.of(evidence.basis(), windows, all).map(StringCharge::settled).orElse(0.0);
    ChargeAxis axis =
        AxisBuilder.build(evidence.thinned(), evidence.turns(), pack.nominalCapacityAh(), slowOhm);
    Optional<StringSize> size = StringSize.of(evidence.thinned(), axis, slowOhm, pack);
    return size.filter(StringSize::isTold)
        .map(found -> pack.reckonedWith(found.ah(), CapacitySource.FOUND))
        .orElse(pack);
  }
}
