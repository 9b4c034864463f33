package sagbook.whatif;

import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import sagbook.evidence.Evidence;
import sagbook.evidence.ThinnedRecord;

/**
 * How the household uses a bank, as far as the log shows it.
 *
 * @param eveningLoadW median power while the bank discharges between 17:00 and 23:00 local time, W;
 *     empty when the log holds no such time
 * @param dischargeVoltageV the string's mean voltage while charge was taken out, V: energy over
 *     charge; empty without current
 * @param highestDischargeA highest discharge current that lasted two rows, A, a positive number;
 *     empty when none was seen
 */
public record Use(
    OptionalDouble eveningLoadW,
    OptionalDouble dischargeVoltageV,
    OptionalDouble highestDischargeA) {
  private static final int EVENING_FROM = 17;
  private static final int EVENING_TO = 23;

  /**
   * Below this share of nominal capacity an hour a current is noise. Common practice, no source.
   */
  private static final double NOISE = 0.005;

  private record Moment(double watt, double seconds) {}

  /** Reads a bank's use off its evidence. */
  public static Use of(Evidence evidence, ZoneId zone, double nominalAh) {
    double volt = 1000 * evidence.stress().dischargedKWh() / evidence.stress().dischargedAh();
    return new Use(
        evening(evidence.thinned(), zone, NOISE * nominalAh),
        positive(volt),
        positive(evidence.stress().highestDischargeA()));
  }

  /** Typical current of an evening, A. */
  OptionalDouble eveningA() {
    return eveningLoadW.isPresent() && dischargeVoltageV.isPresent()
        ? OptionalDouble.of(eveningLoadW.getAsDouble() / dischargeVoltageV.getAsDouble())
        : OptionalDouble.empty();
  }

  private static OptionalDouble positive(double value) {
    return value > 0 && Double.isFinite(value) ? OptionalDouble.of(value) : OptionalDouble.empty();
  }

  private static OptionalDouble evening(ThinnedRecord record, ZoneId zone, double noiseA) {
    List<Moment> moments = new ArrayList<>();
    double all = 0;
    for (int r = 0; r < record.rows(); r++) {
      double watt = -record.currentA()[r] * stringVoltage(record, r);
      if (record.currentA()[r] < -noiseA && watt > 0 && isEvening(record.timeS()[r], zone)) {
        moments.add(new Moment(watt, record.seconds()[r]));
        all += record.seconds()[r];
      }
    }
    moments.sort(Comparator.comparingDouble(Moment::watt));
    double passed = 0;
    for (Moment moment : moments) {
      passed += moment.seconds();
      if (passed >= all / 2) {
        return OptionalDouble.of(moment.watt());
      }
    }
    return OptionalDouble.empty();
  }

  private static boolean isEvening(double timeS, ZoneId zone) {
    int hour = Instant.ofEpochSecond((long) Math.floor(timeS)).atZone(zone).getHour();
    return hour >= EVENING_FROM && hour < EVENING_TO;
  }

  private static double stringVoltage(ThinnedRecord record, int row) {
    double sum = 0;
    for (float[] cell : record.voltageV()) {
      sum += cell[row];
    }
    return sum;
  }
}
