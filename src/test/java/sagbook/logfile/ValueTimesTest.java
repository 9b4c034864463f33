package sagbook.logfile;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sagbook.issue.InputProblem;
import sagbook.packfile.PackFile;

/**
 * Four cells and a current, a minute from round to round. A log with a line for each value says
 * when each cell was read beside the current; one with a line for each round doesn't.
 */
class ValueTimesTest {
  private static final Instant START = Instant.parse("2026-05-01T00:00:00Z");
  private static final int ROUNDS = 3000;
  private static final int[] CELL_S = {2, 9, 16, 23};
  private static final int CURRENT_S = 13;
  private static final String PACK =
      """
      [pack]
      name = "made"
      chemistry = "lfp"
      series_cells = 4
      timezone = "UTC"
      nominal_capacity_ah = 100
      """;

  @TempDir Path folder;

  @Test
  void aLineForEachValueSaysHowLongAfterTheCurrentEachCellIsRead() throws Exception {
    StringBuilder log = new StringBuilder("time,channel,value\n");
    for (int k = 0; k < ROUNDS; k++) {
      line(log, k, CELL_S[0], "cell1_voltage_mv", millivolt(k, 0));
      line(log, k, CELL_S[1], "cell2_voltage_mv", millivolt(k, 1));
      line(log, k, CURRENT_S, "current_a", ampere(k));
      line(log, k, CELL_S[2], "cell3_voltage_mv", millivolt(k, 2));
      line(log, k, CELL_S[3], "cell4_voltage_mv", millivolt(k, 3));
    }
    assertArrayEquals(new double[] {-11, -4, 3, 10}, read(log).lagS(), 1e-6);
  }

  @Test
  void aLineForEachRoundDoesNotSayIt() throws Exception {
    StringBuilder log =
        new StringBuilder(
            "time,current_a,cell1_voltage_mv,cell2_voltage_mv,cell3_voltage_mv,cell4_voltage_mv\n");
    for (int k = 0; k < ROUNDS; k++) {
      log.append(START.plusSeconds(60L * k)).append(',').append(ampere(k));
      for (int c = 0; c < CELL_S.length; c++) {
        log.append(',').append(millivolt(k, c));
      }
      log.append('\n');
    }
    assertEquals(0, read(log).lagS().length);
  }

  private static int ampere(int round) {
    return round / 15 % 2 == 0 ? 12 : -18;
  }

  private static int millivolt(int round, int cell) {
    return 3290 + ampere(round) + round % 3 + cell;
  }

  private static void line(StringBuilder log, int round, int second, String channel, int value) {
    log.append(START.plusSeconds(60L * round + second))
        .append(',')
        .append(channel)
        .append(',')
        .append(value)
        .append('\n');
  }

  private ReadReport read(CharSequence log) throws IOException, InputProblem {
    Path file = folder.resolve("log.csv");
    Files.writeString(file, log);
    return LogFolder.open(
            new ReadRequest(
                PackFile.parse("pack.toml", PACK),
                List.of(file.toString()),
                Optional.empty(),
                Optional.empty(),
                Optional.empty()))
        .read("main", block -> {});
  }
}
