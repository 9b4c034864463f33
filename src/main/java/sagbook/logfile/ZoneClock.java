package sagbook.logfile;

import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.zone.ZoneOffsetTransition;
import java.time.zone.ZoneRules;

/**
 * Turns local times of a log into moments. In the hour that comes twice when summer time ends, a
 * time that would run backwards is taken as the second one; a time in the hour that is left out
 * when summer time starts is taken as if the clock had not been put forward.
 */
final class ZoneClock {
  /** A longer step may hide the hour that came twice. */
  private static final double MOST_STEP_S = 900;

  private final ZoneRules rules;
  private double cachedFrom = Double.POSITIVE_INFINITY;
  private double cachedTo = Double.NEGATIVE_INFINITY;
  private double cachedOffsetS;
  private double lastLocalS = Double.NaN;
  private boolean inRepeatedHour;
  private boolean steppedBack;
  private int missedChanges;

  ZoneClock(ZoneId zone) {
    this.rules = zone.getRules();
  }

  /**
   * Seconds since 1970.
   *
   * @param localS seconds since 1970 as if the clock showed UTC
   * @param previousS moment of the row before; NaN for the first
   */
  double moment(double localS, double previousS) {
    if (inRepeatedHour || localS < lastLocalS) {
      watchRepeatedHour(localS);
    }
    lastLocalS = localS;
    if (localS >= cachedFrom && localS < cachedTo) {
      return localS - cachedOffsetS;
    }
    LocalDateTime local = LocalDateTime.ofEpochSecond((long) Math.floor(localS), 0, ZoneOffset.UTC);
    ZoneOffsetTransition transition = rules.getTransition(local);
    if (transition == null) {
      ZoneOffset offset = rules.getOffset(local);
      remember(local, offset);
      return localS - offset.getTotalSeconds();
    }
    missedChanges += transition.isGap() ? 1 : 0;
    inRepeatedHour |= transition.isOverlap();
    double first = localS - transition.getOffsetBefore().getTotalSeconds();
    if (transition.isGap() || !(first < previousS)) {
      return first;
    }
    return localS - transition.getOffsetAfter().getTotalSeconds();
  }

  /**
   * How often the clock was seen not to follow summer time: it showed a time in the hour that is
   * left out, or went once through the hour that comes twice.
   */
  int missedChanges() {
    return missedChanges;
  }

  private void watchRepeatedHour(double localS) {
    steppedBack |= localS < lastLocalS;
    LocalDateTime local = LocalDateTime.ofEpochSecond((long) localS, 0, ZoneOffset.UTC);
    if (inRepeatedHour && rules.getTransition(local) == null) {
      boolean walkedThrough = localS - lastLocalS < MOST_STEP_S && !steppedBack;
      missedChanges += walkedThrough ? 1 : 0;
      inRepeatedHour = false;
      steppedBack = false;
    }
  }

  private void remember(LocalDateTime local, ZoneOffset offset) {
    ZoneOffsetTransition next = rules.nextTransition(local.toInstant(offset));
    ZoneOffsetTransition previous = rules.previousTransition(local.toInstant(offset).plusNanos(1));
    cachedOffsetS = offset.getTotalSeconds();
    cachedFrom =
        previous == null
            ? Double.NEGATIVE_INFINITY
            : previous.toEpochSecond()
                + Math.max(
                    previous.getOffsetBefore().getTotalSeconds(),
                    previous.getOffsetAfter().getTotalSeconds());
    cachedTo =
        next == null
            ? Double.POSITIVE_INFINITY
            : next.toEpochSecond()
                + Math.min(
                    next.getOffsetBefore().getTotalSeconds(),
                    next.getOffsetAfter().getTotalSeconds());
  }
}
