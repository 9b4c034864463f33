package sagbook.logfile;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/** When a channel that stands still is stuck: by hand, a row every ten minutes. */
class ChannelStandstillTest {
  private static final double ROW_S = 600;

  /** A temperature that stands at 22 °C for a day, its neighbours 3 K away for the last hours. */
  private static double stuckHours(double awayHours) {
    ChannelStatistics channel = new ChannelStatistics(1.5, 1e-3, 7200);
    int rows = 24 * 6;
    for (int r = 0; r <= rows; r++) {
      boolean away = r >= rows - awayHours * 6;
      channel.add(r * ROW_S, 22, away ? 25 : 22);
    }
    return channel.stuckS() / 3600;
  }

  @Test
  void aQuietNightAndAnHourBehindTheOthersIsNoStandstill() {
    assertEquals(0, stuckHours(1));
  }

  @Test
  void hoursWithoutFollowingTheOthersAre() {
    assertEquals(24, stuckHours(3));
  }
}
