package sagbook.logfile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Which logs hold only what changed: four cells for a day, voltages rounded to 4 mV. */
class ChannelRhythmTest {
  private static final int CELLS = 4;
  private static final double RESOLUTION_V = 0.004;
  private static final double SIGN_OF_LIFE_S = 600;

  /** What decides whether a value gets into the log. */
  private interface Logger {
    boolean writes(int row, double value, double last);
  }

  private static boolean changeOnly(double cadenceS, Logger logger) {
    Slots slots = new Slots(CELLS);
    ChannelRhythm rhythm = new ChannelRhythm(slots);
    Random random = new Random(5);
    double[] last = new double[CELLS];
    for (int r = 0; r * cadenceS < 86_400; r++) {
      Row row = new Row(slots);
      row.timeS = r * cadenceS;
      double common = 3.3 + 0.05 * Math.sin(2 * Math.PI * row.timeS / 86_400);
      boolean any = false;
      for (int c = 0; c < CELLS; c++) {
        double noisy = common + 0.003 * random.nextGaussian();
        double value = Math.rint(noisy / RESOLUTION_V) * RESOLUTION_V;
        if (logger.writes(r, value, last[c])) {
          row.values[slots.voltage(c + 1)] = value;
          last[c] = value;
          any = true;
        }
      }
      if (any) {
        rhythm.add(row);
      }
    }
    assertEquals(CELLS, rhythm.cellsSeen());
    return rhythm.isChangeOnly();
  }

  /** A line for each cell, all written once in a minute. */
  private static ChannelRhythm sweepsOf(double sweepS) {
    Slots slots = new Slots(CELLS);
    ChannelRhythm rhythm = new ChannelRhythm(slots);
    Random random = new Random(5);
    for (int r = 0; r < 1440; r++) {
      for (int c = 0; c < CELLS; c++) {
        Row row = new Row(slots);
        row.timeS = 60 * r + sweepS * c / (CELLS - 1);
        double noisy = 3.3 + 0.003 * random.nextGaussian();
        row.values[slots.voltage(c + 1)] = Math.rint(noisy / RESOLUTION_V) * RESOLUTION_V;
        rhythm.add(row);
      }
    }
    return rhythm;
  }

  @Test
  void boardsThatTakeAlmostAllOfTheTimeInTurnMakeOneRow() {
    assertTrue(sweepsOf(54).sweepS() >= 54);
    assertTrue(sweepsOf(54).sweepS() < 60);
  }

  @Test
  void boardsThatAreReadTogetherDoNotWaitForTheRestOfTheirRound() {
    assertEquals(36, sweepsOf(2).sweepS(), 1);
  }

  @ParameterizedTest
  @ValueSource(doubles = {5, 20, 60})
  void aSignOfLifeNowAndThenDoesNotHideThatOnlyChangesAreWritten(double cadenceS) {
    int each = (int) (SIGN_OF_LIFE_S / cadenceS);
    assertTrue(changeOnly(cadenceS, (r, value, last) -> value != last || r % each == 0));
  }

  @ParameterizedTest
  @ValueSource(doubles = {5, 20, 60})
  void rowsThatGetLostAtRandomDoNotPassForValuesThatDidNotChange(double cadenceS) {
    Random radio = new Random(6);
    assertFalse(changeOnly(cadenceS, (r, value, last) -> radio.nextDouble() < 0.6));
  }

  @ParameterizedTest
  @ValueSource(doubles = {5, 60})
  void aLogThatWritesEverythingDoesNot(double cadenceS) {
    assertFalse(changeOnly(cadenceS, (r, value, last) -> true));
  }
}
