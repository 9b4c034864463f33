package sagbook.account;

import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalDouble;
import sagbook.evidence.Evidence;
import sagbook.evidence.Stress;
import sagbook.evidence.ThinnedRecord;
import sagbook.model.Estimate;
import sagbook.model.Limits;
import sagbook.model.PackDescription;
import sagbook.numeric.Robust;

/**
 * What a bank went through.
 *
 * @param chargedFrozen charging while the coldest cell was below the lower charge temperature;
 *     empty without current or temperature
 * @param chargedCool the same below the temperature from which charging is to be gentle
 * @param chargedHot charging while the warmest cell was above the upper charge temperature
 * @param heldFullHours time near full, see {@link FullState}, h
 * @param daysSinceFull from the last moment near full to the end of the log, days; empty when the
 *     log holds none
 * @param fullCycles charge taken out over the capacity, equivalent full cycles; empty without
 *     current
 * @param efficiency energy an ampere-hour gave over what it took: round-trip efficiency as far as
 *     no charge was lost; empty without both charge and discharge
 * @param usualSpreadK median over time of warmest less coldest cell, K; empty without temperature
 * @param largestSpreadK its 99th percentile, K
 */
public record StressAccount(
    Optional<Exposure> chargedFrozen,
    Optional<Exposure> chargedCool,
    Optional<Exposure> chargedHot,
    double heldFullHours,
    OptionalDouble daysSinceFull,
    OptionalDouble fullCycles,
    OptionalDouble efficiency,
    OptionalDouble usualSpreadK,
    OptionalDouble largestSpreadK) {
  private static final double DAY_S = 86_400;

  /**
   * Adds up a bank's account.
   *
   * @param medianAh capacity of the median cell; nominal where it is unknown
   */
  public static StressAccount of(Evidence evidence, PackDescription pack, Estimate medianAh) {
    ThinnedRecord record = evidence.thinned();
    Stress stress = evidence.stress();
    Limits limits = pack.limits();
    boolean seen = evidence.channels().hasCurrent() && record.hasTemperature();
    double noiseA = FullState.NOISE * pack.nominalCapacityAh();
    FullState full = new FullState(record, pack);
    double[] spread = new double[record.rows()];
    Exposure frozen = Exposure.NONE;
    Exposure cool = Exposure.NONE;
    Exposure hot = Exposure.NONE;
    double heldS = 0;
    double lastFullS = Double.NaN;
    for (int r = 0; r < record.rows(); r++) {
      double seconds = record.seconds()[r];
      if (full.isNear(r)) {
        heldS += seconds;
        lastFullS = record.timeS()[r];
      }
      double coldest = record.hasTemperature() ? extreme(record.temperatureC(), r, -1) : Double.NaN;
      double warmest = record.hasTemperature() ? extreme(record.temperatureC(), r, 1) : Double.NaN;
      spread[r] = warmest - coldest;
      double ampere = record.currentA()[r];
      if (seen && ampere > noiseA) {
        double hours = seconds / 3600;
        frozen =
            coldest < limits.chargeMinTemperatureC() ? frozen.plus(hours, ampere * hours) : frozen;
        cool = coldest < limits.chargeCoolTemperatureC() ? cool.plus(hours, ampere * hours) : cool;
        hot = warmest > limits.chargeMaxTemperatureC() ? hot.plus(hours, ampere * hours) : hot;
      }
    }
    double capacity = medianAh.find().orElse(pack.nominalCapacityAh());
    return new StressAccount(
        seen ? Optional.of(frozen) : Optional.empty(),
        seen ? Optional.of(cool) : Optional.empty(),
        seen ? Optional.of(hot) : Optional.empty(),
        heldS / 3600,
        finite((evidence.lastS() - lastFullS) / DAY_S),
        finite(stress.dischargedAh() / capacity),
        finite(
            stress.dischargedKWh()
                / stress.dischargedAh()
                * (stress.chargedAh() / stress.chargedKWh())),
        finite(Robust.median(spread)),
        finite(Robust.quantile(spread, 0.99)));
  }

  private static double extreme(float[][] byCell, int row, int sign) {
    return sign
        * Arrays.stream(byCell)
            .mapToDouble(cell -> sign * cell[row])
            .filter(v -> !Double.isNaN(v))
            .max()
            .orElse(Double.NaN);
  }

  private static OptionalDouble finite(double value) {
    return Double.isFinite(value) ? OptionalDouble.of(value) : OptionalDouble.empty();
  }
}
