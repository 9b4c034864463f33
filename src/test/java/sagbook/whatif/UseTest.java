package sagbook.whatif;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.ZoneId;
import org.junit.jupiter.api.Test;
import sagbook.evidence.Evidence;
import sagbook.evidence.EvidenceCollector;
import sagbook.model.Channels;
import sagbook.model.Chemistry;
import sagbook.model.Limits;
import sagbook.model.SampleBlock;

class UseTest {
  private static final double MIDNIGHT_S = 1_767_225_600; // 2026-01-01T00:00:00Z

  /** Two cells at 3.3 V for a day; by hour the current given, A. */
  private static Evidence day(double... ampereByHour) {
    Channels channels = new Channels(2, false, true, false);
    EvidenceCollector collector =
        new EvidenceCollector(channels, Limits.of(Chemistry.LFP), 100, 3.3);
    SampleBlock block = new SampleBlock(channels, 24 * 60);
    for (int r = 0; r < 24 * 60; r++) {
      block.timeS()[r] = MIDNIGHT_S + 60 * r;
      block.currentA()[r] = ampereByHour[r / 60];
      block.voltageV()[0][r] = 3.3;
      block.voltageV()[1][r] = 3.3;
    }
    block.setRows(24 * 60);
    collector.accept(block);
    return collector.finish();
  }

  private static double[] evening(double... fromFive) {
    double[] hours = new double[24];
    hours[3] = -40;
    System.arraycopy(fromFive, 0, hours, 17, fromFive.length);
    return hours;
  }

  /** By hand: of 10, 20, 20, 60 A the median is 20 A, at 6.6 V 132 W; idle hours don't count. */
  @Test
  void theEveningLoadIsTheMedianOfEveningDischarge() {
    Use use = Use.of(day(evening(-10, -20, -20, 0, 0, -60)), ZoneId.of("Etc/UTC"), 100);
    assertEquals(132, use.eveningLoadW().orElseThrow(), 1);
    assertEquals(60, use.highestDischargeA().orElseThrow(), 1e-9);
    assertEquals(6.6, use.dischargeVoltageV().orElseThrow(), 1e-6);
  }

  /** Where it is twelve hours later, the load at three at night is an afternoon's. */
  @Test
  void theEveningIsThatOfThePacksZone() {
    double[] hours = new double[24];
    hours[6] = -30;
    assertTrue(Use.of(day(hours), ZoneId.of("Etc/UTC"), 100).eveningLoadW().isEmpty());
    // Etc/GMT-12 is twelve hours ahead.
    assertEquals(
        198, Use.of(day(hours), ZoneId.of("Etc/GMT-12"), 100).eveningLoadW().orElseThrow(), 1);
  }

  @Test
  void noiseIsNoLoad() {
    assertTrue(
        Use.of(day(evening(-0.3, -0.3)), ZoneId.of("Etc/UTC"), 100).eveningLoadW().isEmpty());
  }
}
