package sagbook.simulate;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sagbook.issue.InputProblem;
import sagbook.logfile.LogFolder;
import sagbook.logfile.OpenedLogs;
import sagbook.logfile.ReadRequest;
import sagbook.model.SampleBlock;
import sagbook.model.SampleSink;
import sagbook.packfile.PackFile;

class SimulatedLogsAreReadableTest {
  /** Sums of every quantity, each row weighted by its place, so that a swap can't hide. */
  private static final class Sums implements SampleSink {
    private final double[] sums = new double[5];
    private int rows;

    @Override
    public void accept(SampleBlock block) {
      for (int r = 0; r < block.rows(); r++) {
        rows++;
        double weight = 1 + rows % 97;
        sums[0] += block.timeS()[r] / 1e6;
        sums[1] += weight * block.currentA()[r];
        for (int c = 0; c < block.voltageV().length; c++) {
          sums[2] += weight * (c + 1) * block.voltageV()[c][r];
          sums[3] += weight * (c + 1) * block.temperatureC()[c][r];
          sums[4] += weight * (c + 1) * block.bleedFraction()[c][r];
        }
      }
    }
  }

  @Test
  void withoutAMappingAndToTheLastDigit(@TempDir Path folder) throws IOException, InputProblem {
    Scenario scenario =
        Scenarios.find("loose-joint").orElseThrow().withTime(LocalDate.of(2026, 6, 28), 5, 60);
    SimulatedLogs.write(scenario, folder, true);
    Sums simulated = new Sums();
    SimulatedLogs.feed(scenario, simulated);

    Sums read = new Sums();
    OpenedLogs logs =
        LogFolder.open(
            new ReadRequest(
                PackFile.read(folder.resolve("pack.toml")),
                List.of(folder.resolve("logs").toString()),
                Optional.empty(),
                Optional.empty(),
                Optional.empty()));
    assertEquals(List.of("main"), logs.banks());
    assertTrue(logs.channels("main").hasCurrent());
    assertTrue(logs.channels("main").hasTemperature());
    assertTrue(logs.channels("main").hasBleed());
    logs.read("main", read);
    assertEquals(5 * 1440, simulated.rows);
    assertEquals(simulated.rows, read.rows);
    for (int i = 0; i < simulated.sums.length; i++) {
      assertEquals(simulated.sums[i], read.sums[i], Math.abs(simulated.sums[i]) * 1e-12);
    }
  }
}
