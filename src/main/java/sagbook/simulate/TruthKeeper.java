package sagbook.simulate;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import sagbook.model.Finding;

/** Notes the battery's true state at every midnight and sums it up by month. */
final class TruthKeeper {
  private static final int QUANTITIES = 9;

  private final Battery battery;
  private final double nominalAh;
  private final double[][] sums;
  private final double[] lastCapacity;
  private final double[] lastOffset;
  private final Finding[] findings;
  private final List<TruthRow> rows = new ArrayList<>();
  private @Nullable YearMonth month;
  private int nights;

  TruthKeeper(Battery battery, double nominalAh) {
    this.battery = battery;
    this.nominalAh = nominalAh;
    this.sums = new double[battery.size()][QUANTITIES];
    this.lastCapacity = new double[battery.size()];
    this.lastOffset = new double[battery.size()];
    this.findings = new Finding[battery.size()];
  }

  /** Takes down the state at the start of a day. */
  void note(LocalDate date) {
    YearMonth current = YearMonth.from(date);
    if (!current.equals(month)) {
      close();
      month = current;
    }
    nights++;
    int n = battery.size();
    double[] room = new double[n];
    double[] resistance = new double[n];
    double[] capacity = new double[n];
    for (int i = 0; i < n; i++) {
      room[i] = battery.cells[i].roomToFullAh();
      capacity[i] = battery.cells[i].capacityAh();
      resistance[i] = battery.cells[i].stepResistanceMilliohm(10);
    }
    double middleRoom = median(room);
    double middleCapacity = median(capacity);
    double middleResistance = median(resistance);
    for (int i = 0; i < n; i++) {
      Cell cell = battery.cells[i];
      double joint = battery.jointMilliohm(i);
      double offset = (middleRoom - room[i]) / nominalAh * 100;
      double[] now = {
        capacity[i],
        cell.stepResistanceMilliohm(1) + joint,
        resistance[i] + joint,
        cell.stepResistanceMilliohm(30) + joint,
        cell.stepResistanceMilliohm(90) + joint,
        joint,
        offset,
        cell.leakA() * 1000,
        battery.boards[i].errorMillivolt(battery.conditions[i])
      };
      for (int q = 0; q < QUANTITIES; q++) {
        sums[i][q] += now[q];
      }
      lastCapacity[i] = capacity[i];
      lastOffset[i] = offset;
      findings[i] =
          finding(battery.conditions[i], offset, capacity[i] / middleCapacity, middleResistance);
    }
  }

  /** The cause put in, worst for the owner first; the thresholds are the project's own. */
  private static Finding finding(
      Condition condition, double offset, double capacityRelative, double resistance) {
    if (condition.looseMilliohm > 0.2 * resistance) {
      return Finding.CONNECTION;
    }
    if (Math.abs(condition.sensorOffsetMillivolt) > 5) {
      return Finding.VOLTAGE_SENSOR;
    }
    if (capacityRelative < 0.95) {
      return Finding.LOW_CAPACITY;
    }
    if (condition.leakMilliamp > 30) {
      return Finding.SELF_DISCHARGE;
    }
    if (condition.resistanceFactor > 1.25) {
      return Finding.HIGH_RESISTANCE;
    }
    if (Math.abs(offset) > 2) {
      return Finding.OUT_OF_BALANCE;
    }
    return Double.isNaN(condition.stuckC) ? Finding.HEALTHY : Finding.TEMPERATURE_SENSOR;
  }

  List<TruthRow> rows() {
    close();
    return List.copyOf(rows);
  }

  private void close() {
    YearMonth closing = month;
    if (closing == null || nights == 0) {
      return;
    }
    double[] capacity = Arrays.stream(sums).mapToDouble(s -> s[0] / nights).toArray();
    double middle = median(capacity);
    for (int i = 0; i < sums.length; i++) {
      double[] s = sums[i];
      rows.add(
          new TruthRow(
              closing,
              i + 1,
              capacity[i],
              lastCapacity[i],
              capacity[i] / middle,
              s[1] / nights,
              s[2] / nights,
              s[3] / nights,
              s[4] / nights,
              s[5] / nights,
              s[6] / nights,
              lastOffset[i],
              s[7] / nights,
              s[8] / nights,
              findings[i]));
      Arrays.fill(s, 0);
    }
    nights = 0;
  }

  private static double median(double[] values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    int half = sorted.length / 2;
    return sorted.length % 2 == 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
  }
}
