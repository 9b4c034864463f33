package sagbook.season;

import java.time.YearMonth;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import sagbook.model.Estimate;
import sagbook.model.Finding;
import sagbook.record.KeptCheck;
import sagbook.record.KeptMonth;
import sagbook.record.Quantity;
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
    boolean told = false;
    for (KeptMonth month : months) {
      KeptCheck.Cell cell = month.bank().cells().get(place - 1);
      Finding now = cell.finding();
      if (now == Finding.INSUFFICIENT_EVIDENCE) {
        continue;
      }
      if (now != running) {
        if (running != Finding.HEALTHY) {
          stretches.add(stretch(place, running, told, since, last, false));
        }
        running = now;
        told = false;
        since = month(month);
      }
      told |= !isJointOrCell(cell);
      last = month(month);
    }
    if (running != Finding.HEALTHY) {
      stretches.add(stretch(place, running, told, since, last, true));
    }
  }

  /** Whether a month could not tell a bad joint from a cell that resists too much. */
  private static boolean isJointOrCell(KeptCheck.Cell cell) {
    return cell.finding() == Finding.CONNECTION
        && cell.estimate(Quantity.SLOW_RESPONSE_RELATIVE) instanceof Estimate.Unknown;
  }

  private static SeasonResult.Stretch stretch(
      int place, Finding finding, boolean told, YearMonth since, YearMonth last, boolean lasts) {
    String key = lasts ? "stretch.lasts" : since.equals(last) ? "stretch.once" : "stretch.over";
    String words =
        SeasonWords.say(
            key,
            Integer.toString(place),
            Words.english().say("finding." + finding.words() + (told ? "" : ".open")),
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
