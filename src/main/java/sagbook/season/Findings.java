package sagbook.season;

import java.time.YearMonth;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import sagbook.model.Finding;
import sagbook.record.KeptMonth;
import sagbook.wording.Words;

/** What the monthly checks found, put together: one stretch a cell and cause. */
final class Findings {
  private final List<KeptMonth> months;
  private final ZoneId zone;

  Findings(List<KeptMonth> months) {
    this.months = months;
    this.zone = months.get(0).battery().zone();
  }

  /** Stretches of months with the same fault at a place; months that can't tell don't end one. */
  List<SeasonResult.Stretch> all() {
    List<SeasonResult.Stretch> stretches = new ArrayList<>();
    int cells = months.get(months.size() - 1).cells().size();
    for (int place = 1; place <= cells; place++) {
      add(place, stretches);
    }
    return stretches;
  }

  private void add(int place, List<SeasonResult.Stretch> stretches) {
    Finding running = Finding.HEALTHY;
    YearMonth since = month(months.get(0));
    YearMonth last = since;
    for (KeptMonth month : months) {
      Finding now = month.bank().cells().get(place - 1).finding();
      if (now == Finding.INSUFFICIENT_EVIDENCE) {
        continue;
      }
      if (now != running) {
        if (running != Finding.HEALTHY) {
          stretches.add(stretch(place, running, since, last, false));
        }
        running = now;
        since = month(month);
      }
      last = month(month);
    }
    if (running != Finding.HEALTHY) {
      stretches.add(stretch(place, running, since, last, true));
    }
  }

  private static SeasonResult.Stretch stretch(
      int place, Finding finding, YearMonth since, YearMonth last, boolean lasts) {
    String key = lasts ? "stretch.lasts" : since.equals(last) ? "stretch.once" : "stretch.over";
    String words =
        SeasonWords.say(
            key,
            Integer.toString(place),
            Words.english().say("finding." + finding.words()),
            said(since),
            said(last));
    return new SeasonResult.Stretch(place, finding, since, last, lasts, words);
  }

  private YearMonth month(KeptMonth month) {
    return YearMonth.from(month.middle().atZone(zone));
  }

  private static String said(YearMonth month) {
    return Words.english().wholeMonthAndYear(month.atDay(1));
  }
}
