package sagbook.logfile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sagbook.issue.InputProblem;
import sagbook.model.SampleBlock;
import sagbook.model.SampleSink;
import sagbook.packfile.PackFile;

/**
 * The same two days of sixteen cells, whose boards are read one after another over 19 of 20 s, as a
 * wide table, as a line a value, and as a line a value that changed: what is counted over time must
 * not depend on how it was written.
 */
class LayoutIntegralsTest {
  private static final int CELLS = 16;
  private static final int STEP_S = 20;
  private static final int STEPS = 2 * 86_400 / STEP_S;
  private static final int SIGN_OF_LIFE_STEPS = 15;
  private static final Instant START = Instant.parse("2026-03-01T00:00:00Z");
  private static final String PACK =
      """
      [pack]
      name = "layouts"
      chemistry = "nmc"
      series_cells = 16
      timezone = "UTC"
      current_sign = "charge positive"
      """;

  private final int[] tenthAmpere = new int[STEPS];
  private final int[][] millivolt = new int[CELLS][STEPS];
  private final int[][] tenthCelsius = new int[CELLS][STEPS];
  private final int[][] bleedPercent = new int[CELLS][STEPS];

  @TempDir private Path folder;

  /** Noon charges at a level that changes with the clouds; boards bleed for an hour or two then. */
  @BeforeEach
  void makeTwoDays() {
    Random random = new Random(3);
    double cloud = 0;
    for (int k = 0; k < STEPS; k++) {
      double hour = k * STEP_S / 3600.0 % 24;
      cloud = 0.98 * cloud + random.nextGaussian();
      boolean day = hour > 9 && hour < 15;
      tenthAmpere[k] = (int) Math.rint(day ? 200 + 10 * cloud : -60 + 2 * cloud);
      for (int c = 0; c < CELLS; c++) {
        double volt = 3700 + 300 * Math.sin((hour - 6) * Math.PI / 12) + 0.15 * tenthAmpere[k];
        millivolt[c][k] = 4 * (int) Math.rint((volt + 1.5 * random.nextGaussian()) / 4);
        tenthCelsius[c][k] = 10 * (int) Math.rint(20 + 5 * Math.sin((hour - 8) * Math.PI / 12));
        double sinceS = (hour - 12) * 3600 - 40 * c;
        boolean bleeds = sinceS > 0 && sinceS < 4000 + 300 * c;
        bleedPercent[c][k] = bleeds ? (int) Math.min(100, sinceS / 20) : 0;
      }
    }
  }

  /** Integrals over the log, by the rectangle from one row to the next, in hours of each unit. */
  private static final class Integrals implements SampleSink {
    private final double[] voltHours = new double[CELLS];
    private final double[] kelvinHours = new double[CELLS];
    private final double[] bleedHours = new double[CELLS];
    private final double[] lastBleed = new double[CELLS];
    private final double[] lastVolt = new double[CELLS];
    private final double[] lastKelvin = new double[CELLS];
    private double chargedAh;
    private double dischargedAh;
    private double lastA;
    private double lastS = Double.NaN;

    @Override
    public void accept(SampleBlock block) {
      for (int r = 0; r < block.rows(); r++) {
        double hours = Double.isNaN(lastS) ? 0 : (block.timeS()[r] - lastS) / 3600;
        lastS = block.timeS()[r];
        chargedAh += Math.max(0, lastA) * hours;
        dischargedAh += Math.max(0, -lastA) * hours;
        lastA = or(block.currentA()[r], lastA);
        for (int c = 0; c < CELLS; c++) {
          voltHours[c] += lastVolt[c] * hours;
          kelvinHours[c] += lastKelvin[c] * hours;
          bleedHours[c] += lastBleed[c] * hours;
          lastVolt[c] = or(block.voltageV()[c][r], lastVolt[c]);
          lastKelvin[c] = or(block.temperatureC()[c][r], lastKelvin[c]);
          lastBleed[c] = or(block.bleedFraction()[c][r], lastBleed[c]);
        }
      }
    }

    private static double or(double value, double otherwise) {
      return Double.isNaN(value) ? otherwise : value;
    }
  }

  private Counted read(String log) throws IOException, InputProblem {
    Path file = folder.resolve("log.csv");
    Files.writeString(file, log);
    Integrals integrals = new Integrals();
    ReadReport report =
        LogFolder.open(
                new ReadRequest(
                    PackFile.parse("pack.toml", PACK),
                    List.of(file.toString()),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty()))
            .read("main", integrals);
    return new Counted(integrals, String.join("\n", report.sentences()));
  }

  /** What was counted, and what was said about the reading. */
  private record Counted(Integrals integrals, String said) {}

  private String wide() {
    StringBuilder log = new StringBuilder("time,current_a");
    for (String name : List.of("_voltage_mv", "_temperature_c", "_bleed_percent")) {
      for (int c = 1; c <= CELLS; c++) {
        log.append(",cell").append(c).append(name);
      }
    }
    for (int k = 0; k < STEPS; k++) {
      log.append('\n').append(START.plusSeconds((long) STEP_S * k));
      log.append(',').append(tenth(tenthAmpere[k]));
      for (int[] cell : millivolt) {
        log.append(',').append(cell[k]);
      }
      for (int[] cell : tenthCelsius) {
        log.append(',').append(tenth(cell[k]));
      }
      for (int[] cell : bleedPercent) {
        log.append(',').append(cell[k]);
      }
    }
    return log.append('\n').toString();
  }

  /** Writes a value or not. */
  private interface Logger {
    boolean writes(int step, int[] values);
  }

  private static final Logger EVERYTHING = (k, values) -> true;

  private static final Logger CHANGES =
      (k, values) -> k % SIGN_OF_LIFE_STEPS == 0 || values[k] != values[k - 1];

  private String tall(Logger logger) {
    StringBuilder log = new StringBuilder("time,cell,quantity,value\n");
    for (int k = 0; k < STEPS; k++) {
      for (int c = 0; c < CELLS; c++) {
        Instant time = START.plusMillis(1000L * STEP_S * k + 1266L * c);
        if (c == 5 && logger.writes(k, tenthAmpere)) {
          line(log, time.minusMillis(500), "pack,current_a", tenth(tenthAmpere[k]));
        }
        String cell = Integer.toString(c + 1);
        if (logger.writes(k, millivolt[c])) {
          line(log, time, cell + ",voltage_mv", Integer.toString(millivolt[c][k]));
        }
        if (logger.writes(k, tenthCelsius[c])) {
          line(log, time.plusMillis(1), cell + ",temperature_c", tenth(tenthCelsius[c][k]));
        }
        if (logger.writes(k, bleedPercent[c])) {
          String percent = Integer.toString(bleedPercent[c][k]);
          line(log, time.plusMillis(2), cell + ",bleed_percent", percent);
        }
      }
    }
    return log.toString();
  }

  private static void line(StringBuilder log, Instant time, String channel, String value) {
    log.append(time).append(',').append(channel).append(',').append(value).append('\n');
  }

  private static String tenth(int value) {
    return String.format(Locale.ROOT, "%.1f", value / 10.0);
  }

  private static void assertSame(Integrals wide, Integrals other) {
    assertClose(wide.chargedAh, other.chargedAh);
    assertClose(wide.dischargedAh, other.dischargedAh);
    for (int c = 0; c < CELLS; c++) {
      assertClose(wide.voltHours[c], other.voltHours[c]);
      assertClose(wide.kelvinHours[c], other.kelvinHours[c]);
      assertClose(wide.bleedHours[c], other.bleedHours[c]);
    }
  }

  private static void assertClose(double expected, double counted) {
    assertEquals(expected, counted, 0.01 * expected);
  }

  @Test
  void aWideTableCountsWhatHappened() throws IOException, InputProblem {
    Integrals wide = read(wide()).integrals();
    for (int c = 0; c < CELLS; c++) {
      double hours = 0;
      for (int percent : bleedPercent[c]) {
        hours += percent / 100.0 * STEP_S / 3600;
      }
      assertClose(hours, wide.bleedHours[c]);
    }
  }

  @Test
  void aLineForEachValueCountsTheSame() throws IOException, InputProblem {
    Counted tall = read(tall(EVERYTHING));
    assertTrue(!tall.said().contains("only what changed"), tall.said());
    assertSame(read(wide()).integrals(), tall.integrals());
  }

  @Test
  void aLineForEachChangeCountsTheSame() throws IOException, InputProblem {
    Counted changes = read(tall(CHANGES));
    assertTrue(changes.said().contains("only what changed"), changes.said());
    assertSame(read(wide()).integrals(), changes.integrals());
  }

  @Test
  void bleedingThatIsNoLongerWrittenIsNotHeldForEver() throws IOException, InputProblem {
    int lost = (int) (12.5 * 3600 / STEP_S);
    String log =
        tall((k, values) -> CHANGES.writes(k, values) && (k < lost || values != bleedPercent[0]));
    double[] seen = new double[1];
    double[] lastSeenS = new double[1];
    Path file = folder.resolve("log.csv");
    Files.writeString(file, log);
    LogFolder.open(
            new ReadRequest(
                PackFile.parse("pack.toml", PACK),
                List.of(file.toString()),
                Optional.empty(),
                Optional.empty(),
                Optional.empty()))
        .read(
            "main",
            block -> {
              for (int r = 0; r < block.rows(); r++) {
                if (block.bleedFraction()[0][r] > 0) {
                  seen[0]++;
                  lastSeenS[0] = block.timeS()[r];
                }
              }
            });
    assertTrue(seen[0] > 0);
    double sinceLostS = lastSeenS[0] - START.getEpochSecond() - (double) lost * STEP_S;
    assertTrue(sinceLostS < 3600 + STEP_S, "held for " + sinceLostS + " s");
  }
}
