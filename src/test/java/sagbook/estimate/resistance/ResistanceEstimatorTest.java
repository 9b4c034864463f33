package sagbook.estimate.resistance;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ResistanceEstimatorTest {
  /** The shortest time that rows so far apart show: an interval and a half from 12 s on. */
  @ParameterizedTest
  @CsvSource({"1, 10", "5, 10", "12, 10", "20, 30", "29, 44", "30, 45", "60, 90", "120, 180"})
  void pulsesAreTenSecondsOrTheShortestThatTheLogShows(double cadenceS, double pulseS) {
    assertEquals(pulseS, ResistanceEstimator.pulseS(cadenceS), 0.5);
  }
}
