package sagbook.simulate;

import java.time.LocalDate;

/** Weather and light of each day at about 47 degrees north, and the battery room's temperature. */
final class Season {
  /** How the sky is. */
  enum Sky {
    CLEAR,
    BROKEN,
    DULL
  }

  private final long seed;
  private final double roomShiftC;
  private double weatherC;

  Season(long seed, double roomShiftC) {
    this.seed = seed;
    this.roomShiftC = roomShiftC;
  }

  /** The day's sky and mean room temperature. Days must be asked in order. */
  Day day(LocalDate date) {
    Noise noise = Noise.of(seed, 11, date.toEpochDay());
    double summer = summer(date);
    double pick = noise.even();
    double clear = 0.25 + 0.30 * summer;
    double broken = 0.35;
    Sky sky = pick < clear ? Sky.CLEAR : pick < clear + broken ? Sky.BROKEN : Sky.DULL;
    weatherC = 0.75 * weatherC + 1.1 * noise.normal();
    double meanC = 9 + 14 * lagged(date) + weatherC + roomShiftC;
    double daylightS = 3600 * (8.4 + 7.4 * summer);
    double strength = 0.42 + 0.43 * summer;
    return new Day(sky, meanC, daylightS, strength, summer);
  }

  /** 0 at the winter solstice, 1 at the summer one. */
  private static double summer(LocalDate date) {
    return 0.5 - 0.5 * StrictMath.cos(2 * Math.PI * (date.getDayOfYear() + 10) / 365.25);
  }

  /** The same, a month later: rooms follow the sun. */
  private static double lagged(LocalDate date) {
    return 0.5 - 0.5 * StrictMath.cos(2 * Math.PI * (date.getDayOfYear() - 22) / 365.25);
  }

  /**
   * One day.
   *
   * @param sky how it is
   * @param roomC mean temperature of the battery room
   * @param daylightS sunrise to sunset, s
   * @param strength noon sun as a share of the best possible
   * @param summer 0 at midwinter, 1 at midsummer
   */
  record Day(Sky sky, double roomC, double daylightS, double strength, double summer) {
    /** Share of the best possible sun at a time of day. */
    double sun(double secondOfDay) {
      double phase = (secondOfDay - 43_200 + daylightS / 2) / daylightS;
      if (phase <= 0 || phase >= 1) {
        return 0;
      }
      double s = StrictMath.sin(Math.PI * phase);
      return strength * s * StrictMath.sqrt(s);
    }

    double roomC(double secondOfDay) {
      return roomC + 1.2 * StrictMath.sin(2 * Math.PI * (secondOfDay - 32_400) / 86_400);
    }
  }
}
