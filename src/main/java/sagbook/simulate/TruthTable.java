package sagbook.simulate;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;

/** Writes the truth as comma-separated text, one line a month and cell. */
final class TruthTable {
  private static final String HEADER =
      "month,cell,finding,capacity_ah,capacity_last_day_ah,capacity_relative,"
          + "resistance_1s_mohm,resistance_10s_mohm,resistance_30s_mohm,resistance_90s_mohm,"
          + "joint_mohm,charge_offset_percent,charge_offset_last_day_percent,self_discharge_ma,sensor_offset_mv\n";

  private TruthTable() {}

  static void write(List<TruthRow> rows, Path file) throws IOException {
    StringBuilder text = new StringBuilder(HEADER);
    for (TruthRow row : rows) {
      text.append(
          String.format(
              Locale.ROOT,
              "%s,%d,%s,%.2f,%.2f,%.4f,%.4f,%.4f,%.4f,%.4f,%.4f,%.2f,%.2f,%.1f,%.1f\n",
              row.month(),
              row.cell(),
              row.finding().words(),
              row.capacityAh(),
              row.lastCapacityAh(),
              row.capacityRelative(),
              row.resistance1sMilliohm(),
              row.resistance10sMilliohm(),
              row.resistance30sMilliohm(),
              row.resistance90sMilliohm(),
              row.jointMilliohm(),
              row.chargeOffsetPercent(),
              row.lastChargeOffsetPercent(),
              row.selfDischargeMilliamp(),
              row.sensorOffsetMillivolt()));
    }
    Files.writeString(file, text, StandardCharsets.UTF_8);
  }
}
