package sagbook.simulate;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import sagbook.model.Finding;

class SimulationTest {
  private static Scenario scenario(String name, int days, int cadence) {
    return Scenarios.find(name).orElseThrow().withTime(LocalDate.of(2026, 6, 1), days, cadence);
  }

  private static byte[] text(Scenario scenario) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    RowText text = new RowText(bytes, Simulation.offset(), Logged.everything());
    text.header(scenario.pack().cells());
    Simulation.run(scenario, text::row);
    text.flush();
    return bytes.toByteArray();
  }

  @Test
  void givesTheSameBytesForTheSameSeed() throws IOException {
    Scenario scenario = scenario("healthy", 2, 60);
    byte[] first = text(scenario);
    assertArrayEquals(first, text(scenario));
    assertTrue(!java.util.Arrays.equals(first, text(scenario.withSeed(2))));
  }

  @Test
  void writesOneRowACadenceWithTimeCurrentAndThreeQuantitiesACell() throws IOException {
    String text = new String(text(scenario("healthy", 1, 60)), StandardCharsets.US_ASCII);
    List<String> lines = text.lines().toList();
    assertEquals(1 + 1440, lines.size());
    assertTrue(lines.get(0).startsWith("time,current_a,cell01_mv,cell02_mv,"));
    assertTrue(lines.get(0).endsWith(",cell15_bleed_percent,cell16_bleed_percent"));
    assertTrue(lines.get(1).startsWith("2026-06-01T00:00:00+01:00,"));
    assertTrue(lines.get(1440).startsWith("2026-06-01T23:59:00+01:00,"));
    lines.forEach(line -> assertEquals(50, line.split(",", -1).length));
  }

  @ParameterizedTest
  @CsvSource({"lfp, 2500, 3650", "nmc, 3000, 4200"})
  void keepsEveryCellWithinItsChemistrysLimits(String chemistry, int lowest, int highest)
      throws IOException {
    PackPlan pack = chemistry.equals("lfp") ? PackPlan.lfp(16, 280) : PackPlan.nmc(14, 65);
    int[] seen = {Integer.MAX_VALUE, Integer.MIN_VALUE};
    Simulation.run(
        scenario("wearing-cell", 20, 60).withPack(pack),
        row -> {
          for (int millivolt : row.millivolt) {
            seen[0] = Math.min(seen[0], millivolt);
            seen[1] = Math.max(seen[1], millivolt);
          }
        });
    assertTrue(seen[0] > lowest, () -> "lowest " + seen[0]);
    assertTrue(seen[1] < highest, () -> "highest " + seen[1]);
    assertTrue(seen[1] - seen[0] > 500, "the battery is neither filled nor emptied");
  }

  /** What the sensor counts over a day is what the cell gained, but for its error and the leak. */
  @Test
  void conservesCharge() throws IOException {
    Scenario scenario = scenario("healthy", 6, 10);
    double[] countedAh = {0};
    double[] bledAh = {0};
    double[] room = new double[2];
    Simulation.run(
        scenario,
        row -> {
          countedAh[0] += row.currentTenths / 10.0 * 10 / 3600;
          bledAh[0] += row.bleedPercent[2] / 100.0 * row.millivolt[2] / 1000 / 3.3 * 10 / 3600;
        });
    Battery start = new Battery(scenario);
    room[0] = start.cells[2].roomToFullAh();
    room[1] = lastRoom(scenario);
    double leaked = 0.004 * 24 * 6;
    assertEquals(countedAh[0] - bledAh[0] - leaked, room[0] - room[1], 6);
  }

  private static double lastRoom(Scenario scenario) throws IOException {
    return Simulation.finalBattery(scenario).cells[2].roomToFullAh();
  }

  @ParameterizedTest
  @CsvSource({
    "healthy, HEALTHY",
    "wearing-cell, LOW_CAPACITY",
    "high-resistance, HIGH_RESISTANCE",
    "out-of-balance, OUT_OF_BALANCE",
    "leaking-cell, SELF_DISCHARGE",
    "loose-joint, CONNECTION",
    "lying-sensor, VOLTAGE_SENSOR",
    "stuck-thermometer, TEMPERATURE_SENSOR",
  })
  void putsTheFaultItIsNamedAfterAtCellSeven(String name, Finding finding) throws IOException {
    List<TruthRow> truth = Simulation.run(scenario(name, 12, 300), row -> {});
    assertEquals(16, truth.size());
    for (TruthRow row : truth) {
      assertEquals(row.cell() == 7 ? finding : Finding.HEALTHY, row.finding());
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"healthy", "mill-season"})
  void hasFullChargesAndDeepDischarges(String name) throws IOException {
    int[] days = {0, 0};
    boolean[] today = {false, false};
    Simulation.run(
        scenario(name, 28, 60),
        row -> {
          if (row.timeS % 86_400 == 82_800) {
            days[0] += today[0] ? 1 : 0;
            days[1] += today[1] ? 1 : 0;
            today[0] = false;
            today[1] = false;
          }
          for (int millivolt : row.millivolt) {
            today[0] |= millivolt > 3450;
            today[1] |= millivolt < 2900;
          }
        });
    assertTrue(days[0] >= 14, () -> "days with a full charge: " + days[0]);
    assertTrue(days[1] >= 4, () -> "days with a deep discharge: " + days[1]);
  }
}
