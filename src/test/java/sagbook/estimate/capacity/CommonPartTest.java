package sagbook.estimate.capacity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;

/** What of a string's common departure is taken for an error of its charge axis. */
class CommonPartTest {
  private static final double AXIS_SD_AH = 2;
  private static final double KNEE_V_PER_AH = 0.01;
  private static final double FLAT_V_PER_AH = 1e-4;

  /** Five cells that depart alike in every minute of a day. */
  private static CommonPart day(IntToDoubleFunction departure, IntToDoubleFunction slope) {
    double[] day = new double[1440];
    for (int r = 0; r < day.length; r++) {
      day[r] = r / 1440.0;
    }
    CommonPart common = new CommonPart(day, one(day.length), 5, AXIS_SD_AH, 10);
    for (int r = 0; r < day.length; r++) {
      CommonPart.Row row = common.row(r);
      for (int c = 0; c < 5; c++) {
        row.gather(departure.applyAsDouble(r), slope.applyAsDouble(r));
      }
      row.settle();
    }
    common.share();
    return common;
  }

  /** Each row stands for itself. */
  private static int[] one(int rows) {
    int[] one = new int[rows];
    Arrays.fill(one, 1);
    return one;
  }

  private static double kneeInTheLastHour(int row) {
    return row < 1380 ? FLAT_V_PER_AH : KNEE_V_PER_AH;
  }

  @Test
  void aDepartureThatStaysWhileTheKneeIsClimbedIsTheAxis() {
    CommonPart common =
        day(r -> 1.5 * CommonPartTest.kneeInTheLastHour(r), CommonPartTest::kneeInTheLastHour);
    assertEquals(1.5, common.axisErrorAh(1430), 0.1);
    assertEquals(0, common.volt(1430), 0.001);
  }

  @Test
  void itIsTheAxisForHoursBeforeToo() {
    CommonPart common =
        day(r -> 1.5 * CommonPartTest.kneeInTheLastHour(r), CommonPartTest::kneeInTheLastHour);
    assertEquals(1.5, common.axisErrorAh(1200), 0.2);
  }

  @Test
  void aDepartureThatGrowsWithinTheHourIsNotTheAxis() {
    // What a knee taken for too flat by half leaves: 0 at its foot, 30 mV at its top.
    CommonPart common =
        day(r -> r < 1380 ? 0 : 0.03 * (r - 1380) / 60, CommonPartTest::kneeInTheLastHour);
    double wholeAh = 0.03 / KNEE_V_PER_AH;
    double riseAh = common.axisErrorAh(1439) - common.axisErrorAh(1380);
    assertTrue(riseAh < wholeAh / 3, "the axis would have moved by " + riseAh + " Ah in an hour");
    assertTrue(common.volt(1439) > 0.01);
  }

  @Test
  void aDepartureOnTheFlatPartIsAVoltage() {
    CommonPart common = day(r -> 0.004, r -> FLAT_V_PER_AH);
    double mostOfTheAxisV = 3 * AXIS_SD_AH * FLAT_V_PER_AH;
    assertEquals(0.004, common.volt(700), mostOfTheAxisV + 1e-9);
  }

  @Test
  void aQuarterOfTheRowsEachTheMeanOfFourShowsTheSameAxis() {
    double[] day = new double[360];
    int[] four = new int[360];
    Arrays.fill(four, 4);
    for (int r = 0; r < day.length; r++) {
      day[r] = r / 360.0;
    }
    CommonPart common = new CommonPart(day, four, 5, AXIS_SD_AH, 10);
    for (int r = 0; r < day.length; r++) {
      CommonPart.Row row = common.row(r);
      for (int c = 0; c < 5; c++) {
        row.gather(1.5 * kneeInTheLastHour(4 * r), kneeInTheLastHour(4 * r));
      }
      row.settle();
    }
    common.share();
    assertEquals(1.5, common.axisErrorAh(358), 0.1);
  }

  @Test
  void bothPartsMakeUpTheWhole() {
    CommonPart common = day(r -> 0.01 * Math.sin(r / 50.0), CommonPartTest::kneeInTheLastHour);
    for (int r = 0; r < 1440; r += 10) {
      assertEquals(0.01 * Math.sin(r / 50.0), common.ofMost(r), 1e-12);
      assertEquals(common.ofMost(r), common.at(r, kneeInTheLastHour(r)), 1e-12);
    }
  }

  @Test
  void ofARowWithOneCellNothingIsKnown() {
    CommonPart common = new CommonPart(new double[] {0, 0.1}, one(2), 5, AXIS_SD_AH, 10);
    CommonPart.Row alone = common.row(0);
    alone.gather(0.01, KNEE_V_PER_AH);
    alone.settle();
    CommonPart.Row two = common.row(1);
    two.gather(0.01, KNEE_V_PER_AH);
    two.gather(0.01, KNEE_V_PER_AH);
    two.settle();
    common.share();
    assertFalse(common.known(0));
    assertTrue(common.known(1));
  }
}
