package sagbook.season;

import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import sagbook.model.Estimate;
import sagbook.record.DiaryEvent;
import sagbook.record.KeptMonth;

/** Reads a record as a season. */
public final class Season {
  private Season() {}

  /**
   * Judges every bank.
   *
   * @param months of one battery, each bank's oldest first; at least one. Of a bank whose number of
   *     cells changed only those with the newest number count
   * @param diary oldest day first
   */
  public static SeasonResult of(List<KeptMonth> months, List<DiaryEvent> diary) {
    Map<String, List<KeptMonth>> byBank = new LinkedHashMap<>();
    for (KeptMonth month : months) {
      byBank.computeIfAbsent(month.bank().bank(), bank -> new ArrayList<>()).add(month);
    }
    List<SeasonResult.Bank> banks = new ArrayList<>();
    byBank.forEach((name, own) -> banks.add(bank(name, likeTheNewest(own), diary)));
    SeasonResult.Bank last = banks.get(banks.size() - 1);
    return new SeasonResult(last.months().get(last.months().size() - 1).battery(), banks);
  }

  private static List<KeptMonth> likeTheNewest(List<KeptMonth> months) {
    int cells = months.get(months.size() - 1).cells().size();
    return months.stream().filter(month -> month.cells().size() == cells).toList();
  }

  private static SeasonResult.Bank bank(
      String name, List<KeptMonth> months, List<DiaryEvent> diary) {
    Places places = new Places(months, diary);
    Common common = Common.of(months);
    List<SeasonResult.Cell> cells = new CellSeasons(months, places, common).all();
    return new SeasonResult.Bank(
        name,
        months,
        SeasonWords.headline(cells, common),
        Common.rate(common.capacity()),
        Common.rate(common.resistance()),
        common.isAgeing(),
        new Findings(months).all(),
        evidence(months, common),
        StressAccount.of(months),
        new Effects(months, places).all(),
        new Changes(places, months.get(0).battery().zone(), cells.size()).all(),
        cells);
  }

  private static List<String> evidence(List<KeptMonth> months, Common common) {
    List<String> evidence = new ArrayList<>();
    if (Common.rate(common.capacity()) instanceof Estimate.Known rate) {
      evidence.add(
          SeasonWords.say(rate.value() > 0 ? "middle.gains" : "middle", SeasonWords.rate(rate)));
    }
    Warmth.sentence(months, common).ifPresent(evidence::add);
    Duration length =
        Duration.between(months.get(0).bank().from(), months.get(months.size() - 1).bank().to());
    if (length.toDays() < 365) {
      evidence.add(SeasonWords.say("year", Long.toString(length.toDays())));
    }
    if (months.stream().map(month -> month.battery().software()).distinct().count() > 1) {
      evidence.add(SeasonWords.say("versions"));
    }
    return evidence;
  }
}
