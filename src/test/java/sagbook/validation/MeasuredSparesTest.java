package sagbook.validation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sagbook.bench.BenchTest;
import sagbook.issue.InputProblem;
import sagbook.logfile.BenchFile;
import sagbook.model.BenchLog;

/** Bench tests of single measured cells against their published values. */
class MeasuredSparesTest {
  @TempDir private Path temp;

  /** NASA Ames PCoE, first discharges at 2 A down to 2.7 V. */
  @ParameterizedTest
  @CsvSource({"B0005, 1.8565", "B0006, 2.0353", "B0007, 1.8911"})
  void capacityIsThePublishedOne(String cell, double published) throws IOException, InputProblem {
    Path all = SharedData.folder("nasa_pcoe_b5_b6_b7").resolve(cell + "_discharge.csv");
    List<String> lines = new ArrayList<>();
    for (String line : Files.readAllLines(all)) {
      if (lines.isEmpty() || line.startsWith("1,")) {
        lines.add(line);
      }
    }
    Path one = Files.write(temp.resolve(cell + ".csv"), lines);
    BenchTest test = BenchTest.of(BenchFile.read(one), 2, 2.70005);
    assertEquals(published, test.capacityAh().find().orElseThrow(), 0.001 * published);
  }

  /** Oak Ridge National Laboratory, a single pulse from rest at 25 °C: 2.6 mΩ after 10 s. */
  @Test
  void resistanceOfAPulseFromRest() throws InputProblem {
    Path file = SharedData.folder("ornl_leaf_cell_hppc").resolve("hppc_25C.csv");
    BenchTest test = BenchTest.of(BenchFile.read(file), 30, 2.5);
    assertEquals(2.6, test.milliohm().find().orElseThrow(), 0.1);
  }

  /**
   * PulseBat, retired 35 Ah LFP cells: voltages before, at the start and after 5 s of a discharge
   * pulse at 1 It from rest (columns U13 to U15), against the resistance published beside them.
   */
  @Test
  void resistanceOfRetiredCellsAfterFiveSeconds() throws IOException {
    List<String> lines =
        Files.readAllLines(SharedData.folder("pulsebat_lfp_35ah").resolve("pulses.csv"));
    List<String> names = List.of(lines.get(0).split(","));
    int compared = 0;
    for (String line : lines.subList(1, lines.size())) {
      String[] row = line.split(",");
      double[] volt = {
        at(row, names, "U13"), at(row, names, "U13"), at(row, names, "U14"), at(row, names, "U15")
      };
      BenchLog log =
          new BenchLog("cell", new double[] {0, 10, 10.1, 15}, volt, new double[] {0, 0, -35, -35});
      BenchTest test = BenchTest.of(log, 35, 2.5);
      double published = at(row, names, "R5s_dis_1C_mohm");
      assertEquals(published, test.milliohm().find().orElseThrow(), 0.001 * published);
      assertEquals(5, test.pulseS(), 0.01);
      assertEquals(BenchTest.Form.FROM_REST, test.form());
      compared++;
    }
    assertTrue(compared > 100, "" + compared);
  }

  private static double at(String[] row, List<String> names, String name) {
    return Double.parseDouble(row[names.indexOf(name)]);
  }
}
