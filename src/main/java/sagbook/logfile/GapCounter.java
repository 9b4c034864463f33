package sagbook.logfile;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Locale;

/** Counts the gaps in a bank's rows: anything longer than five usual steps and than a minute. */
final class GapCounter {
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
      return "Gaps: none longer than " + plain(leastS) + " s.";
    }
    return String.format(
        Locale.ROOT,
        "Gaps: %,d longer than %s s, %.1f h in all; the longest is %.1f h from %s.",
        gaps,
        plain(leastS),
        totalS / 3600,
        longestS / 3600,
        instant(longestFromS));
  }

  private static Instant instant(double timeS) {
    return Instant.ofEpochSecond(Math.round(timeS)).truncatedTo(ChronoUnit.SECONDS);
  }

  /** A number without needless decimals. */
  static String plain(double value) {
    if (Double.isNaN(value)) {
      return "an unknown number of";
    }
    double rounded = Math.rint(value * 100) / 100;
    return rounded == Math.rint(rounded)
        ? String.format(Locale.ROOT, "%,d", (long) rounded)
        : Double.toString(rounded);
  }
}
