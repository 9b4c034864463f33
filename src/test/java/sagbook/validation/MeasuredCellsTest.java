package sagbook.validation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sagbook.estimate.CellEstimates;
import sagbook.evidence.Edge;
import sagbook.issue.InputProblem;
import sagbook.logfile.ReadRequest;
import sagbook.model.Chemistry;
import sagbook.model.Estimate;
import sagbook.model.Finding;
import sagbook.model.PackDescription;
import sagbook.packfile.PackFile;
import sagbook.pipeline.Check;
import sagbook.record.BankResult;
import sagbook.verdict.CellVerdict;

/**
 * Single measured cells, written as logs of a string and read back: a cell alone stands in for both
 * of a string of two. Each folder of data has its source and licence.
 */
class MeasuredCellsTest {
  private static final double START_S = 1.75e9;
  private static final double DAY_S = 86_400;

  /** Rows of rest after the pulses at each charge. */
  private static final int RESTS = 12;

  @TempDir private Path temp;

  /** A log that is being written: time, volts of each cell, °C, A. */
  private final class Log {
    private final StringBuilder text = new StringBuilder("time");
    private final int cells;

    Log(int cells) {
      this.cells = cells;
      for (int c = 1; c <= cells; c++) {
        text.append(",v").append(c);
      }
      for (int c = 1; c <= cells; c++) {
        text.append(",t").append(c);
      }
      text.append(",current_a\n");
    }

    void row(double seconds, double[] volt, double celsius, double ampere) {
      text.append(START_S + seconds);
      for (double v : volt) {
        text.append(',').append(v);
      }
      text.append(("," + celsius).repeat(cells)).append(',').append(ampere).append('\n');
    }

    BankResult check(Chemistry chemistry, double ampereHours) throws IOException, InputProblem {
      Path file = temp.resolve("log.csv");
      Files.writeString(file, text);
      PackDescription pack =
          PackFile.parse(
              "pack.toml",
              """
              [pack]
              name = "cell"
              chemistry = "%s"
              series_cells = %s
              nominal_capacity_ah = %s
              current_sign = "charge positive"
              """
                  .formatted(chemistry.key(), cells, ampereHours));
      ReadRequest request =
          new ReadRequest(
              pack, List.of(file.toString()), Optional.empty(), Optional.empty(), Optional.empty());
      return Check.run(request, "test", words -> {}).banks().get(0);
    }
  }

  private static CellEstimates first(BankResult bank) {
    return bank.verdict().cells().get(0).estimates();
  }

  private static Estimate.Known resistance(BankResult bank) {
    return assertInstanceOf(Estimate.Known.class, first(bank).resistanceMilliohm());
  }

  private static void assertHolds(double truth, Estimate.Known found) {
    assertTrue(found.low() <= truth && truth <= found.high(), truth + " not in " + found);
  }

  /**
   * Oak Ridge National Laboratory, pulses of 30 A on a 33 Ah cell (MIT): at mid charge and 25 °C
   * 2.03 mΩ after 10 s, by the definition of the USABC and INL test manuals, change of voltage over
   * change of current. Logged colder it has to come out the same; the interval says how surely.
   */
  @ParameterizedTest
  @CsvSource({"25, 0.07", "10, 0.20"})
  void pulsesGiveTheResistanceAt25Degrees(int celsius, double tolerance)
      throws IOException, InputProblem {
    Log log = new Log(2);
    pulses(log, celsius, 0);
    Estimate.Known found = resistance(log.check(Chemistry.NMC, 33.1));
    assertEquals(2.03, found.value(), 2.03 * tolerance);
    assertHolds(2.03, found);
  }

  /** The same at 10, 25 and 40 °C in three days: how it depends on temperature is in the log. */
  @Test
  void threeTemperaturesTellHowResistanceDependsOnThem() throws IOException, InputProblem {
    Log log = new Log(2);
    pulses(log, 10, 0);
    pulses(log, 25, DAY_S);
    pulses(log, 40, 2 * DAY_S);
    BankResult bank = log.check(Chemistry.NMC, 33.1);
    assertHolds(2.03, resistance(bank));
    // The slope of ln(3.20, 2.03, 1.93 mΩ) against 1/T, by least squares: 12.6 kJ/mol.
    Estimate.Known energy =
        assertInstanceOf(Estimate.Known.class, bank.estimates().activationEnergyKilojoulePerMole());
    assertHolds(12.6, energy);
    assertTrue(energy.halfWidth() < 4, energy.toString());
  }

  private static void pulses(Log log, int celsius, double fromS) throws IOException {
    for (CSVRecord row : rows("ornl_leaf_cell_hppc", "hppc_" + celsius + "C.csv")) {
      double volt = number(row, "voltage_V");
      log.row(
          fromS + number(row, "t_s"), new double[] {volt, volt}, celsius, number(row, "current_A"));
    }
  }

  /**
   * TU Eindhoven, J. Energy Storage 119 (2025) 116311 (BSD-3): a cell at a mean 8.9 °C and at 20.5
   * °C, whose edges differ by 35 %. Two months so far apart must not look like ageing.
   */
  @Test
  void aColdMonthIsNotAnAgedOne() throws IOException, InputProblem {
    Estimate.Known cold = resistance(ambient("validation_cold.csv"));
    Estimate.Known normal = resistance(ambient("validation_normal.csv"));
    assertTrue(cold.low() < normal.value() && normal.value() < cold.high(), cold + " " + normal);
    assertTrue(cold.value() < 1.25 * normal.value(), cold + " " + normal);
  }

  private BankResult ambient(String file) throws IOException, InputProblem {
    Log log = new Log(2);
    for (CSVRecord row : rows("nmc_pybatteryid_temperature", file)) {
      double volt = number(row, "voltage_V");
      log.row(
          number(row, "t_s"),
          new double[] {volt, volt},
          number(row, "temperature_C"),
          number(row, "current_A"));
    }
    return log.check(Chemistry.NMC, 2.87);
  }

  /**
   * TU Eindhoven, J. Energy Storage 95 (2024) 112581 (BSD-3): an LFP cell of 3.69 Ah emptied in
   * nine hours with thousands of edges, never charged. Capacity can't be had; resistance can, and
   * lies above the 22 mΩ that its edges show after one second.
   */
  @Test
  void aDischargeAloneGivesNoCapacityButAResistance() throws IOException, InputProblem {
    Log log = new Log(2);
    for (CSVRecord row : rows("lfp_pybatteryid_3p7ah", "identification_data_first.csv")) {
      double volt = number(row, "voltage_V");
      log.row(number(row, "t_s"), new double[] {volt, volt}, 22, number(row, "current_A"));
    }
    BankResult bank = log.check(Chemistry.LFP, 3.69);
    assertInstanceOf(Estimate.Unknown.class, first(bank).capacityAh());
    assertEquals(Finding.INSUFFICIENT_EVIDENCE, bank.verdict().cells().get(0).finding());
    Estimate.Known found = resistance(bank);
    assertTrue(found.high() > 22 && found.value() < 1.5 * 22, found.toString());
  }

  /**
   * Severson et al., Nature Energy 4 (2019) 383 (MIT): eight A123 cells discharged at 4C, one of
   * them (test122) at 0.949 Ah against 1.05. Far too fast for capacities, so none may be given and
   * no cell be called anything.
   */
  @Test
  void aDischargeInAQuarterOfAnHourSaysNothingOfCapacity() throws IOException, InputProblem {
    Map<String, List<double[]>> curves = new HashMap<>();
    for (CSVRecord row : rows("severson_lfp_a123", "qv_curves_8_cells.csv")) {
      if (row.get("cycle").equals("100")) {
        curves
            .computeIfAbsent(row.get("cell"), c -> new ArrayList<>())
            .add(new double[] {number(row, "discharged_Ah"), number(row, "voltage_V")});
      }
    }
    List<String> names = curves.keySet().stream().sorted().toList();
    Log log = new Log(names.size());
    for (int second = 0; 4.4 * second / 3600 < 0.94; second++) {
      double[] volt = new double[names.size()];
      for (int c = 0; c < volt.length; c++) {
        volt[c] = volt(curves.getOrDefault(names.get(c), List.of()), 4.4 * second / 3600);
      }
      log.row(second, volt, 30, second == 0 ? 0 : -4.4);
    }
    for (CellVerdict cell : log.check(Chemistry.LFP, 1.1).verdict().cells()) {
      assertEquals(Finding.INSUFFICIENT_EVIDENCE, cell.finding(), "cell " + cell.cell());
      assertInstanceOf(Estimate.Unknown.class, cell.estimates().capacityRelative());
    }
  }

  private static double volt(List<double[]> curve, double ampereHours) {
    int i = 1;
    while (i < curve.size() - 1 && curve.get(i)[0] < ampereHours) {
      i++;
    }
    double[] a = curve.get(i - 1);
    double[] b = curve.get(i);
    double share = b[0] > a[0] ? (ampereHours - a[0]) / (b[0] - a[0]) : 1;
    return a[1] + (b[1] - a[1]) * Math.max(0, Math.min(1, share));
  }

  /**
   * PulseBat (Tao et al., Nature Communications 2024, MIT): fourteen retired LFP cells from 26.0 to
   * 33.7 Ah, pulses of 5 s. The step of 35 A gives the published resistance of each cell; but since
   * a worn cell's resistance says hardly anything about its capacity (rank correlation -0.26 over
   * all 56), no cell may be called worn by it.
   */
  @Test
  void pulsesOnRetiredCellsTellResistanceNotCapacity() throws IOException, InputProblem {
    Map<String, CSVRecord> pulses = new HashMap<>();
    for (CSVRecord row : rows("pulsebat_lfp_35ah", "pulses.csv")) {
      pulses.put(row.get("cell_no") + " at " + row.get("soc_pct"), row);
    }
    int cells = 14;
    String[] phase = {
      "U1", "U1", "U1", "U2", "U3", "U4", "U5", "U6", "U7", "U8", "U9", "U10", "U11", "U12", "U13",
      "U14", "U15", "U16", "U17", "U18", "U19", "U20", "U21"
    };
    double[] ampere = {
      0, 0, 0, 17.5, 17.5, 0, 0, -17.5, -17.5, 0, 0, 35, 35, 0, 0, -35, -35, 0, 0, 52.5, 52.5, 0, 0
    };
    Log log = new Log(cells);
    for (int soc = 20; soc <= 50; soc += 5) {
      for (int i = 0; i < phase.length + RESTS; i++) {
        int k = Math.min(i, phase.length - 1);
        double[] volt = new double[cells];
        for (int c = 0; c < cells; c++) {
          volt[c] = number(pulse(pulses, c, soc), phase[k]);
        }
        log.row(soc * DAY_S + 5 * i, volt, 25, ampere[k]);
      }
    }
    BankResult bank = log.check(Chemistry.LFP, 35);
    for (CellVerdict cell : bank.verdict().cells()) {
      assertInstanceOf(Estimate.Unknown.class, cell.estimates().capacityRelative());
      assertEquals(Finding.INSUFFICIENT_EVIDENCE, cell.finding(), "cell " + cell.cell());
    }
    int compared = 0;
    for (Edge edge : bank.evidence().edges()) {
      int soc = (int) Math.round((edge.timeS() - START_S) / DAY_S);
      if (Math.abs(edge.stepA() + 35) < 0.1 && edge.currentA()[before(edge)] == 0) {
        for (int c = 0; c < cells; c++) {
          double[] v = edge.voltageV()[c];
          double milliohm = 1000 * (v[before(edge) + 1] - v[before(edge)]) / edge.stepA();
          double published = number(pulse(pulses, c, soc), "R0_dis_1C_mohm");
          assertEquals(published, milliohm, 0.001 * published, "cell " + (c + 1) + " at " + soc);
          compared++;
        }
      }
    }
    assertTrue(compared >= cells, "steps kept: " + compared);
  }

  private static CSVRecord pulse(Map<String, CSVRecord> pulses, int cell, int soc) {
    return Optional.ofNullable(pulses.get(cell + 1 + " at " + soc)).orElseThrow();
  }

  /** Place of the last sample before the step. */
  private static int before(Edge edge) {
    int at = 0;
    while (edge.offsetS()[at + 1] < 0) {
      at++;
    }
    return at;
  }

  private static double number(CSVRecord row, String name) {
    return Double.parseDouble(row.get(name));
  }

  private static List<CSVRecord> rows(String folder, String file) throws IOException {
    Path path = SharedData.folder(folder).resolve(file);
    CSVFormat format = CSVFormat.DEFAULT.builder().setHeader().setSkipHeaderRecord(true).get();
    try (CSVParser parser = CSVParser.parse(Files.newBufferedReader(path), format)) {
      return parser.getRecords();
    }
  }
}
