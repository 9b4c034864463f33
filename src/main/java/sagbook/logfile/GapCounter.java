package sagbook.logfile;

import java.time.Instant;
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

  String sentence() {
    if (gaps == 0) {
      return WORDS.say("reading.gaps.none", plain(leastS));
    }
    return WORDS.say(
        "reading.gaps",
        Words.whole(gaps),
        plain(leastS),
        Words.fixed(totalS / 3600, 1),
        Words.fixed(longestS / 3600, 1),
        instant(longestFromS).toString());
  }

  private static Instant instant(double timeS) {
    return Instant.ofEpochSecond(Math.round(timeS)).truncatedTo(ChronoUnit.SECONDS);
  }

  /** A number without needless decimals. */
  static String plain(double value) {
    if (Double.isNaN(value)) {
      return WORDS.say("reading.number.unknown");
    }
    double rounded = Math.rint(value * 100) / 100;
    return rounded == Math.rint(rounded) ? Words.whole((long) rounded) : Double.toString(rounded);
  }
}
