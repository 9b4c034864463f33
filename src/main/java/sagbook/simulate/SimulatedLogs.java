package sagbook.simulate;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.IntConsumer;
import sagbook.model.Channels;
import sagbook.model.SampleBlock;
import sagbook.model.SampleSink;

/** What can be made of a scenario: a folder of logs with their truth, or blocks of samples. */
public final class SimulatedLogs {
  private static final int BLOCK_ROWS = 4_096;

  private SimulatedLogs() {}

  /**
   * Writes monthly logs into {@code logs}, and pack.toml and truth.csv beside that.
   *
   * @param folder is made when it isn't there
   * @param compressed gzip the logs
   */
  public static List<TruthRow> write(Scenario scenario, Path folder, boolean compressed)
      throws IOException {
    return write(scenario, folder, Logged.everything(), compressed, daysDone -> {});
  }

  /**
   * The same with a choice of columns.
   *
   * @param daysDone told after every day how many are done
   */
  public static List<TruthRow> write(
      Scenario scenario, Path folder, Logged logged, boolean compressed, IntConsumer daysDone)
      throws IOException {
    Path logs = Files.createDirectories(folder.resolve("logs"));
    List<TruthRow> truth;
    int rowsADay = 86_400 / scenario.cadenceS();
    long[] rows = {0};
    try (MonthlyFiles files = new MonthlyFiles(logs, logged, compressed)) {
      truth =
          Simulation.run(
              scenario,
              row -> {
                files.accept(row);
                if (++rows[0] % rowsADay == 0) {
                  daysDone.accept((int) (rows[0] / rowsADay));
                }
              });
      files.finish();
    }
    Files.writeString(folder.resolve("pack.toml"), PackText.of(scenario), StandardCharsets.UTF_8);
    TruthTable.write(truth, folder.resolve("truth.csv"));
    return truth;
  }

  /** Hands the rows on as blocks, without a file between; for tests of what comes after reading. */
  public static List<TruthRow> feed(Scenario scenario, SampleSink sink) throws IOException {
    SampleBlock block =
        new SampleBlock(new Channels(scenario.pack().cells(), true, true, true), BLOCK_ROWS);
    List<TruthRow> truth =
        Simulation.run(
            scenario,
            row -> {
              fill(block, row);
              if (block.rows() == block.capacity()) {
                sink.accept(block);
                block.setRows(0);
              }
            });
    if (block.rows() > 0) {
      sink.accept(block);
    }
    return truth;
  }

  private static void fill(SampleBlock block, LogRow row) {
    int r = block.rows();
    block.setRows(r + 1);
    block.timeS()[r] = row.timeS;
    block.currentA()[r] = row.currentTenths / 10.0;
    for (int i = 0; i < row.millivolt.length; i++) {
      block.voltageV()[i][r] = row.millivolt[i] / 1000.0;
      block.temperatureC()[i][r] = row.halfDegrees[i] / 2.0;
      block.bleedFraction()[i][r] = row.bleedPercent[i] / 100.0;
    }
  }
}
