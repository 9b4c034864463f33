package sagbook.simulate;

import java.time.DayOfWeek;
import java.time.LocalDate;

/**
 * A watermill that is lived and worked in: a fridge, a kitchen, washing, a joiner's machines on
 * workdays, now and then a night of the drying kiln that empties the battery. In winter the owner
 * keeps half the charge back and fills up from the mains on Sundays. Invented throughout.
 */
final class Household {
  private static final int MINUTE = 60;
  private static final int HOUR = 3600;
  private static final double BEST_SUN_A = 92;

  private final long seed;

  Household(long seed) {
    this.seed = seed;
  }

  DayPlan plan(LocalDate date, Season.Day day) {
    Noise noise = Noise.of(seed, 23, date.toEpochDay());
    DayPlan plan = new DayPlan();
    boolean winter = day.summer() < 0.5;
    boolean kilnTonight = kilnStartsOn(date, winter);
    boolean kilnLastNight = kilnStartsOn(date.minusDays(1), winter);
    plan.setReserve(winter ? 0.45 : 0.12, 0, 24 * HOUR);
    basics(plan, noise, kilnLastNight);
    kitchen(plan, noise);
    if (date.getDayOfWeek() != DayOfWeek.SUNDAY) {
      workshop(plan, noise);
    }
    washing(plan, noise, date);
    sun(plan, noise, day);
    if (winter && date.getDayOfWeek() == DayOfWeek.SUNDAY) {
      plan.addSupply(50, 8 * HOUR, 9.5 * HOUR);
    }
    if (kilnLastNight) {
      plan.setReserve(0, 0, 6.5 * HOUR);
      plan.addLoad(20, 0, 6 * HOUR);
    }
    if (kilnTonight) {
      plan.setReserve(0, 19 * HOUR, 5 * HOUR);
      plan.addLoad(32, 19.5 * HOUR, 4.5 * HOUR);
    }
    return plan.closed();
  }

  /** Two nights a week in summer; in winter the first and third Sunday of the month. */
  private static boolean kilnStartsOn(LocalDate date, boolean winter) {
    DayOfWeek weekday = date.getDayOfWeek();
    if (winter) {
      int week = (date.getDayOfMonth() - 1) / 7;
      return weekday == DayOfWeek.SUNDAY && week % 2 == 0;
    }
    return weekday == DayOfWeek.TUESDAY || weekday == DayOfWeek.FRIDAY;
  }

  /** Inverter, lights, fridge; in quiet nights all but a clock sleeps. */
  private static void basics(DayPlan plan, Noise noise, boolean kilnLastNight) {
    double asleepUntil = kilnLastNight ? 0 : 4.6 * HOUR + noise.between(0, 1500);
    double bedtime = 22.7 * HOUR + noise.between(0, 3000);
    plan.addLoad(0.3, 0, asleepUntil);
    plan.addLoad(3.2, asleepUntil, bedtime - asleepUntil);
    plan.addLoad(2.4, 17.5 * HOUR, bedtime - 17.5 * HOUR);
    plan.addLoad(1.1, bedtime, 24 * HOUR - bedtime);
    double at = asleepUntil + noise.between(0, 40 * MINUTE);
    while (at < bedtime) {
      double runs = noise.between(12, 19) * MINUTE;
      plan.addLoad(2.6, at, runs);
      at += runs + noise.between(28, 50) * MINUTE;
    }
  }

  private static void kitchen(DayPlan plan, Noise noise) {
    double[] kettleHours = {6.2, 9.5, 13.0, 16.0, 19.2};
    for (double hour : kettleHours) {
      if (noise.chance(0.8)) {
        plan.addLoad(41, hour * HOUR + noise.between(0, 2400), noise.between(2.5, 5.5) * MINUTE);
      }
    }
    hob(plan, noise, 11.6 * HOUR + noise.between(0, 1800));
    hob(plan, noise, 18.2 * HOUR + noise.between(0, 2700));
  }

  private static void hob(DayPlan plan, Noise noise, double start) {
    double at = start;
    double end = start + noise.between(25, 50) * MINUTE;
    while (at < end) {
      double on = noise.between(2, 6) * MINUTE;
      plan.addLoad(34, at, on);
      at += on + noise.between(1.5, 4) * MINUTE;
    }
  }

  private static void workshop(DayPlan plan, Noise noise) {
    double at = 7.6 * HOUR + noise.between(0, 2400);
    while (at < 16.8 * HOUR) {
      double on = noise.between(3, 14) * MINUTE;
      boolean planer = noise.chance(0.4);
      if (at < 12 * HOUR || at > 13 * HOUR) {
        plan.addLoad(planer ? 62 : 27, at, on);
      }
      at += on + noise.between(15, 55) * MINUTE;
    }
  }

  private static void washing(DayPlan plan, Noise noise, LocalDate date) {
    DayOfWeek weekday = date.getDayOfWeek();
    if (weekday == DayOfWeek.MONDAY || weekday == DayOfWeek.THURSDAY) {
      double start = 8.5 * HOUR + noise.between(0, 5400);
      plan.addLoad(38, start, noise.between(18, 26) * MINUTE);
      plan.addLoad(4, start, 80 * MINUTE);
      plan.addLoad(9, start + 68 * MINUTE, 9 * MINUTE);
    }
  }

  /** The charge controller follows the sun in whole amperes, every ten minutes. */
  private static void sun(DayPlan plan, Noise noise, Season.Day day) {
    double shade = 1;
    double late = StrictMath.floor(noise.between(0, 10 * MINUTE));
    for (int at = 0; at < 24 * HOUR; at += 10 * MINUTE) {
      switch (day.sky()) {
        case CLEAR -> shade = 0.97;
        case DULL -> shade = noise.chance(0.2) ? noise.between(0.14, 0.3) : shadeOrStart(shade);
        case BROKEN -> shade = noise.chance(0.5) ? noise.between(0.3, 1.0) : shade;
      }
      double amps = StrictMath.floor(BEST_SUN_A * day.sun(at + 5 * MINUTE) * shade);
      if (amps > 0) {
        plan.addSupply(amps, at + late, 10 * MINUTE);
      }
    }
  }

  private static double shadeOrStart(double shade) {
    return Math.min(shade, 0.22);
  }
}
