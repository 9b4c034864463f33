package sagbook.estimate.response;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import sagbook.evidence.Evidence;
import sagbook.evidence.EvidenceCollector;
import sagbook.model.Channels;
import sagbook.model.Chemistry;
import sagbook.model.Limits;
import sagbook.model.SampleBlock;

/**
 * Cells of R0 0.20 mΩ, R1 0.10 mΩ with 35 s, R2 0.15 mΩ with 400 s in rows of 10 s, whose boards
 * are read some seconds before or after the current; steps fall anywhere between rows.
 */
class ReadLagTest {
  private static final int SPACING_S = 10;
  private static final int DAYS = 16;
  private static final double NOISE_V = 1e-4;
  private static final double AT_TEN_SECONDS_MILLIOHM = 0.228556;

  @Test
  void tellsHowLongBeforeOrAfterTheCurrentEachCellIsRead() {
    ReadLag lag = read(evidence(false, -8, -5, -2, -1)).lag();
    assertEquals(-4, lag.meanS(), 2 * lag.meanSdS());
    assertArrayEquals(new double[] {-4, -1, 2, 3}, lag.beyondS(), 0.5);
  }

  @Test
  void anAnswerIsToldAtItsAgeThoughAllBoardsAreReadLateOrEarly() {
    for (int late : new int[] {-7, 7}) {
      int[] all = {late - 1, late, late + 1, late};
      double milliohm = 1000 * read(evidence(false, all)).at(10);
      assertEquals(AT_TEN_SECONDS_MILLIOHM, milliohm, 0.02 * AT_TEN_SECONDS_MILLIOHM);
    }
  }

  @Test
  void rowsThatAreMeansOfTheTimeBetweenThemAreNotTakenForLateOnes() {
    ReadLag lag = read(evidence(true, 0, 0, 0, 0)).lag();
    assertEquals(0, lag.meanS(), 0.5);
    assertArrayEquals(new double[4], lag.beyondS(), 0.2);
  }

  @Test
  void aLogThatSaysWhenEachCellIsReadIsBelieved() {
    Evidence evidence = evidence(false, new double[] {3, 7, 9, 5}, 3, 7, 9, 5);
    StringResponse response = read(evidence);
    assertEquals(6, response.lag().meanS());
    assertArrayEquals(new double[] {-3, 1, 3, -1}, response.lag().beyondS());
    double milliohm = 1000 * response.at(10);
    assertEquals(AT_TEN_SECONDS_MILLIOHM, milliohm, 0.02 * AT_TEN_SECONDS_MILLIOHM);
  }

  @Test
  void aLogThatWritesAllCellsAtOnceDoesNotSayWhenTheyAreRead() {
    ReadLag lag = read(evidence(false, new double[4], -8, -5, -2, -1)).lag();
    assertArrayEquals(new double[] {-4, -1, 2, 3}, lag.beyondS(), 0.5);
  }

  @Test
  void aCurrentIsTakenAsReadAmongTheCellsWhereTheyAreReadTogether() {
    ReadLag lag = read(evidence(false, 0, 0, 1, 1)).lag();
    assertEquals(0.5, lag.meanS(), 0.5);
    assertTrue(lag.meanSdS() < 0.5, lag.toString());
  }

  private static StringResponse read(Evidence evidence) {
    var windows = ReducedWindow.of(evidence);
    double[] all = new double[windows.size()];
    Arrays.fill(all, 1);
    StringResponse response = StringResponse.of(evidence.basis(), windows, all).orElseThrow();
    return response.read(ReadLag.of(evidence, windows, all, response));
  }

  private static Evidence evidence(boolean means, int... lateS) {
    return evidence(means, new double[0], lateS);
  }

  /**
   * @param means whether rows hold the means over the time since the row before
   * @param toldLagS what the log says of it, s; empty where it says nothing
   * @param lateS how long after the current each cell is read, s
   */
  private static Evidence evidence(boolean means, double[] toldLagS, int... lateS) {
    int seconds = DAYS * 86_400;
    double[] current = new double[seconds];
    double[] answer = new double[seconds];
    SplittableRandom random = new SplittableRandom(12);
    double[] keep = {Math.exp(-1 / 35.0), Math.exp(-1 / 400.0)};
    double[] ohm = {1.0e-4, 1.5e-4};
    double[] slow = new double[2];
    double household = 0;
    for (int s = 0; s < seconds; s++) {
      current[s] = household;
      answer[s] = 2.0e-4 * household + slow[0] + slow[1];
      for (int k = 0; k < 2; k++) {
        slow[k] = ohm[k] * household + (slow[k] - ohm[k] * household) * keep[k];
      }
      if (random.nextDouble() < 1 / 300.0) {
        household = random.nextInt(4) == 0 ? 0 : 160 * (random.nextDouble() - 0.5);
      }
    }
    Channels channels = new Channels(lateS.length, false, true, false);
    int rows = seconds / SPACING_S - 2;
    SampleBlock block = new SampleBlock(channels, rows);
    block.setRows(rows);
    for (int r = 0; r < rows; r++) {
      int at = (r + 1) * SPACING_S;
      block.timeS()[r] = 1.75e9 + at;
      block.currentA()[r] = reading(current, at, means);
      for (int c = 0; c < lateS.length; c++) {
        block.voltageV()[c][r] =
            3.3 + reading(answer, at + lateS[c], means) + NOISE_V * (random.nextDouble() - 0.5);
      }
    }
    EvidenceCollector collector =
        new EvidenceCollector(channels, Limits.of(Chemistry.LFP), 280, 3.3);
    collector.accept(block);
    return collector.finish(toldLagS);
  }

  private static double reading(double[] values, int at, boolean mean) {
    return mean ? Arrays.stream(values, at - SPACING_S, at).average().orElseThrow() : values[at];
  }
}
