package sagbook.logfile;

import java.time.Instant;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import sagbook.wording.Words;

/** Counts the gaps in a bank's rows: anything longer than five usual steps and than a minute. */
final class GapCounter {
  private static final Words WORDS = Words.english();
  private static final double USUAL_STEPS = 5;
  private static final double LEAST_GAP_S = 60;

  private final double cadenceS;
  private final double leastS;
  private double firstS = Double.NaN;
  private double lastS = Double.NaN;
  private long gaps;
  private double totalS;
  private double longestS;
  private double longestFromS = Double.NaN;

  /** {@code usualS} is the usual time between rows; NaN when there is none. */
  GapCounter(double usualS) {
    this.cadenceS = usualS;
    this.leastS = Math.max(LEAST_GAP_S, USUAL_STEPS * (Double.isNaN(usualS) ? 0 : usualS));
  }

  void add(double timeS) {
    double step = timeS - lastS;
    if (step > leastS) {
      gaps++;
      totalS += step;
      if (step > longestS) {
        longestS = step;
        longestFromS = lastS;
      }
    }
    firstS = Double.isNaN(firstS) ? timeS : firstS;
    lastS = timeS;
  }

  double cadenceS() {
    return cadenceS;
  }

  Instant first() {
    return instant(firstS);
  }

  Instant last() {
    return instant(lastS);
  }

  /** The usual time between rows as people say it. */
  String cadence() {
    return Double.isNaN(cadenceS) ? WORDS.say("reading.cadence.unknown") : WORDS.span(cadenceS);
  }

  /** The gaps in one sentence, moments by the clock of a zone. */
  String sentence(ZoneId zone) {
    if (gaps == 0) {
      return WORDS.say("reading.gaps.none", WORDS.span(leastS));
    }
    return WORDS.say(
        gaps == 1 ? "reading.gaps.one" : "reading.gaps",
        Words.whole(gaps),
        WORDS.span(leastS),
        WORDS.span(totalS),
        WORDS.span(longestS),
        WORDS.time(instant(longestFromS), zone));
  }

  private static Instant instant(double timeS) {
    return Instant.ofEpochSecond(Math.round(timeS)).truncatedTo(ChronoUnit.SECONDS);
  }
}
