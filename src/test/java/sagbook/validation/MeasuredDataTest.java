package sagbook.validation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import sagbook.evidence.Edge;
import sagbook.evidence.Evidence;
import sagbook.evidence.EvidenceCollector;
import sagbook.issue.InputProblem;
import sagbook.logfile.ReadRequest;
import sagbook.model.Channels;
import sagbook.model.Chemistry;
import sagbook.model.Estimate;
import sagbook.model.Finding;
import sagbook.model.Limits;
import sagbook.model.PackDescription;
import sagbook.model.SampleBlock;
import sagbook.numeric.Robust;
import sagbook.pipeline.Check;
import sagbook.verdict.CellVerdict;

/** What published, measured data must show; each folder has its source and licence. */
class MeasuredDataTest {
  @TempDir private Path temp;

  /** Oak Ridge National Laboratory 2017, six cell groups in series (MIT). */
  @Test
  void cellsThatStartedLowAreOutOfBalanceNotWorn() throws InputProblem {
    Path log = SharedData.folder("ornl_leaf_6s_string").resolve("string_discharge_0.3c.csv");
    List<CellVerdict> cells = check(log, 6, 65);
    assertEquals(Finding.OUT_OF_BALANCE, cells.get(0).finding());
    assertEquals(Finding.OUT_OF_BALANCE, cells.get(3).finding());
    for (int other : new int[] {2, 3, 5, 6}) {
      assertEquals(Finding.HEALTHY, cells.get(other - 1).finding(), "cell " + other);
    }
    double[] resistance = new double[6];
    for (CellVerdict cell : cells) {
      resistance[cell.cell() - 1] = cell.estimates().resistanceRelative().find().orElseThrow();
    }
    for (int other : new int[] {1, 2, 4, 5}) {
      assertTrue(resistance[0] < resistance[other] && resistance[3] < resistance[other]);
    }
  }

  /**
   * The same string emptied in under an hour: too fast to tell capacities, so none is given. Its
   * one step of 65 A shows 1.015, 1.231, 1.169, 1.120, 1.200 and 1.246 mΩ after 10 s (computed from
   * expected_per_cell.csv), so those over their median have to lie in the intervals.
   */
  @Test
  void aFastDischargeCallsNoCellWorn() throws InputProblem {
    Path log = SharedData.folder("ornl_leaf_6s_string").resolve("string_discharge_1.0c.csv");
    double[] milliohm = {1.015, 1.231, 1.169, 1.120, 1.200, 1.246};
    for (CellVerdict cell : check(log, 6, 65)) {
      assertFalse(cell.finding() == Finding.LOW_CAPACITY, "cell " + cell.cell());
      double share = milliohm[cell.cell() - 1] / Robust.median(milliohm);
      Estimate.Known found = (Estimate.Known) cell.estimates().resistanceRelative();
      assertTrue(found.low() <= share && share <= found.high(), share + " not in " + found);
    }
  }

  /** NASA Ames PCoE battery data set (public domain): capacity is the charge down to 2.7 V. */
  @ParameterizedTest
  @ValueSource(strings = {"B0005", "B0006", "B0007"})
  void theChargeCounterReproducesEveryPublishedCapacity(String cell) throws IOException {
    Path folder = SharedData.folder("nasa_pcoe_b5_b6_b7");
    Map<String, Double> published = new HashMap<>();
    for (CSVRecord row : rows(folder.resolve("cycles_truth.csv"))) {
      if (row.get("battery").equals(cell)) {
        published.put(row.get("discharge_no"), Double.parseDouble(row.get("capacity_Ah")));
      }
    }
    Map<String, List<double[]>> discharges = new HashMap<>();
    for (CSVRecord row : rows(folder.resolve(cell + "_discharge.csv"))) {
      List<double[]> samples =
          discharges.computeIfAbsent(row.get("discharge_no"), n -> new ArrayList<>());
      // Voltages are rounded to 0.1 mV in this copy.
      boolean done = !samples.isEmpty() && samples.get(samples.size() - 1)[1] < 2.70005;
      if (!done) {
        samples.add(
            new double[] {
              Double.parseDouble(row.get("t_s")),
              Double.parseDouble(row.get("voltage_V")),
              Double.parseDouble(row.get("current_A"))
            });
      }
    }
    assertEquals(published.size(), discharges.size());
    discharges.forEach(
        (number, samples) -> {
          Evidence evidence = gather(samples);
          double counted = evidence.stress().chargedAh() - evidence.stress().dischargedAh();
          double capacity = Objects.requireNonNull(published.get(number));
          assertEquals(capacity, -counted, 0.001 * capacity, cell + " discharge " + number);
        });
  }

  /** Three cells of that set ran the same discharges at the same times: a string of three. */
  @Test
  void theWeakestOfThreeCellsIsNamedFromTheLastTwentyDischarges() throws IOException, InputProblem {
    Path folder = SharedData.folder("nasa_pcoe_b5_b6_b7");
    List<CSVRecord> all = rows(folder.resolve("b5_b6_b7_simultaneous_discharge.csv"));
    int last = all.stream().mapToInt(r -> Integer.parseInt(r.get("discharge_no"))).max().orElse(0);
    StringBuilder log = new StringBuilder("time,v01,v02,v03,t01,t02,t03,current_a\n");
    String current = "";
    double start = 1.3e9;
    double end = start;
    boolean stopped = false;
    for (CSVRecord row : all) {
      if (Integer.parseInt(row.get("discharge_no")) <= last - 20) {
        continue;
      }
      if (!row.get("discharge_no").equals(current)) {
        current = row.get("discharge_no");
        start = end + 4 * 3600;
        stopped = false;
      }
      if (stopped) {
        continue;
      }
      end = start + Double.parseDouble(row.get("t_s"));
      double[] volt = numbers(row, "b5_V", "b6_V", "b7_V");
      double[] ampere = numbers(row, "b5_A", "b6_A", "b7_A");
      log.append(end).append(',').append(volt[0]).append(',').append(volt[1]).append(',');
      log.append(volt[2]).append(',').append(row.get("b5_C")).append(',');
      log.append(row.get("b6_C")).append(',').append(row.get("b7_C")).append(',');
      log.append((ampere[0] + ampere[1] + ampere[2]) / 3).append('\n');
      stopped = Math.min(volt[0], Math.min(volt[1], volt[2])) < 2.7;
    }
    Path file = temp.resolve("three.csv");
    Files.writeString(file, log);
    CellVerdict weakest =
        check(file, 3, 2).stream().filter(c -> c.rank() == 1).findFirst().orElseThrow();
    assertEquals(2, weakest.cell(), "B0006 is the second");
  }

  /**
   * TU Eindhoven, J. Energy Storage 119 (2025) 116311 (BSD-3): one cell at two ambients, edge
   * resistance over one second, medians over the 24 and 23 edges above 0.8 A of each run.
   */
  @ParameterizedTest
  @CsvSource({"validation_cold.csv, 48.40", "validation_normal.csv, 35.85"})
  void edgeResistanceOfTheNmcCellAgrees(String file, double expectedMilliohm) throws IOException {
    Path folder = SharedData.folder("nmc_pybatteryid_temperature");
    assertEquals(
        expectedMilliohm, edgeMilliohm(folder.resolve(file)), 0.02 * expectedMilliohm, file);
  }

  /**
   * A 3.7 Ah LFP cell, J. Energy Storage 95 (2024) 112581 (BSD-3). Expected: the mean of the
   * medians by charge, weighted by their edges (computed from expected_edge_resistance.csv).
   */
  @ParameterizedTest
  @CsvSource({
    "validation_data.csv, 23.11",
    "identification_data_first.csv, 22.39",
    "identification_data_second.csv, 22.10"
  })
  void edgeResistanceOfTheLfpCellAgrees(String file, double expectedMilliohm) throws IOException {
    Path folder = SharedData.folder("lfp_pybatteryid_3p7ah");
    assertEquals(
        expectedMilliohm, edgeMilliohm(folder.resolve(file)), 0.05 * expectedMilliohm, file);
  }

  /** Median over the two dozen largest steps that Sagbook keeps of a log. */
  private static double edgeMilliohm(Path file) throws IOException {
    double[] milliohm =
        gather(samples(rows(file))).edges().stream()
            .sorted(Comparator.comparingDouble(e -> -Math.abs(e.stepA())))
            .limit(24)
            .mapToDouble(MeasuredDataTest::milliohm)
            .toArray();
    assertEquals(24, milliohm.length, "steps kept");
    return Robust.median(milliohm);
  }

  private static List<double[]> samples(List<CSVRecord> rows) {
    List<double[]> samples = new ArrayList<>();
    for (CSVRecord row : rows) {
      samples.add(numbers(row, "t_s", "voltage_V", "current_A"));
    }
    return samples;
  }

  /** Change of voltage over change of current from the row before the step to the one after. */
  private static double milliohm(Edge edge) {
    int at = 0;
    while (edge.offsetS()[at] < 0) {
      at++;
    }
    return 1000 * (edge.voltageV()[0][at] - edge.voltageV()[0][at - 1]) / edge.stepA();
  }

  private static Evidence gather(List<double[]> samples) {
    Channels channels = new Channels(2, false, true, false);
    EvidenceCollector collector = new EvidenceCollector(channels, Limits.of(Chemistry.NMC), 2, 3.3);
    SampleBlock block = new SampleBlock(channels, samples.size());
    for (int r = 0; r < samples.size(); r++) {
      block.timeS()[r] = samples.get(r)[0];
      block.voltageV()[0][r] = samples.get(r)[1];
      block.voltageV()[1][r] = samples.get(r)[1];
      block.currentA()[r] = samples.get(r)[2];
    }
    block.setRows(samples.size());
    collector.accept(block);
    return collector.finish();
  }

  private static List<CellVerdict> check(Path log, int cells, double ampereHours)
      throws InputProblem {
    PackDescription pack =
        PackDescription.of("measured", Chemistry.NMC, cells, ampereHours, ZoneId.of("Etc/UTC"));
    ReadRequest request =
        new ReadRequest(
            pack, List.of(log.toString()), Optional.empty(), Optional.empty(), Optional.empty());
    return Check.run(request, "test", words -> {}).banks().get(0).verdict().cells();
  }

  private static double[] numbers(CSVRecord row, String... names) {
    double[] values = new double[names.length];
    for (int i = 0; i < names.length; i++) {
      values[i] = Double.parseDouble(row.get(names[i]));
    }
    return values;
  }

  private static List<CSVRecord> rows(Path file) throws IOException {
    CSVFormat format = CSVFormat.DEFAULT.builder().setHeader().setSkipHeaderRecord(true).get();
    try (CSVParser parser = CSVParser.parse(Files.newBufferedReader(file), format)) {
      return parser.getRecords();
    }
  }
}
