package sagbook.season;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import sagbook.model.Estimate;
import sagbook.record.DiaryEvent;
import sagbook.wording.Words;

/** The season's sentences. */
final class SeasonWords {
  private static final Words WORDS = Words.english();
  private static final String MINUS = "\u2212";

  private SeasonWords() {}

  static String say(String key, String... filled) {
    return WORDS.say("drift." + key, filled);
  }

  /** Such as "−14.0 % a year (−15.1 to −12.9)". */
  static String rate(Estimate.Known rate) {
    return say(
        "rate",
        number(rate.value(), "%+.1f"),
        number(rate.low(), "%+.1f"),
        number(rate.high(), "%+.1f"));
  }

  static String number(double value, String format) {
    return String.format(Locale.ROOT, format, value).replace("-", MINUS);
  }

  /** Such as "cell replaced on 2026-03-14, cell 9 (B17): swelling". */
  static String event(DiaryEvent event) {
    StringBuilder words = new StringBuilder();
    words.append(say("event", event.kind().spoken(), event.day().toString()));
    if (event.cell() > 0) {
      words.append(say("event.cell", Integer.toString(event.cell())));
    }
    if (!event.mark().isEmpty()) {
      words.append(" (").append(event.mark()).append(')');
    }
    if (!event.text().isEmpty()) {
      words.append(": ").append(event.text());
    }
    return words.toString();
  }

  static String newHistory(DiaryEvent event, String mark) {
    boolean replaced = event.kind() == DiaryEvent.Kind.CELL_REPLACED;
    return say(replaced ? "replaced" : "moved", event.day().toString(), mark);
  }

  static String drifts(boolean fades, boolean stiffens) {
    return say(fades && stiffens ? "both" : fades ? "fades" : "stiffens");
  }

  static List<String> cell(
      Line.Result share,
      Estimate capacity,
      Estimate capacityAgainst,
      Common common,
      Line.Result resistance,
      Estimate resistanceAgainst,
      int cells) {
    List<String> evidence = new ArrayList<>();
    if (share instanceof Line.Result.Drawn drawn
        && capacityAgainst instanceof Estimate.Known against
        && capacity instanceof Estimate.Known own) {
      String key = drawn.line().seasonal() ? "capacity.seasonal" : "capacity";
      evidence.add(
          say(
              key,
              rate(against),
              Integer.toString(drawn.line().months()),
              chance(drawn.line().test().p())));
      evidence.add(string(common, rate(own)));
    }
    if (resistance instanceof Line.Result.Drawn drawn) {
      evidence.add(say("resistance", rate(drawn.line().percentPerYear())));
    }
    if (resistanceAgainst instanceof Estimate.Known against) {
      evidence.add(say("resistance.against", rate(against)));
    }
    evidence.add(
        say(
            "floor",
            number(CellSeasons.CAPACITY_FLOOR, "%.1f"),
            number(CellSeasons.RESISTANCE_FLOOR, "%.0f"),
            Integer.toString(cells)));
    return evidence;
  }

  private static String string(Common common, String own) {
    String source = common.source().name().toLowerCase(Locale.ROOT);
    return say("middle." + source, rate(common.capacityRate()), own);
  }

  private static String chance(double p) {
    return p < 0.001
        ? say("chance.little")
        : say("chance", String.format(Locale.ROOT, "%.1f", 100 * p));
  }

  /** The one sentence of a bank. */
  static String headline(List<SeasonResult.Cell> cells, Common common) {
    List<SeasonResult.Cell> drifting =
        cells.stream().filter(SeasonResult.Cell::isDrifting).toList();
    String string =
        !(Common.rate(common.capacity()) instanceof Estimate.Known measured)
            ? say("string.unknown")
            : common.isAgeing() ? say("string.ages", rate(measured)) : say("string.holds");
    boolean none = cells.stream().noneMatch(c -> c.capacityTrend() instanceof Estimate.Known);
    if (drifting.isEmpty()) {
      return none ? say("headline.short") : say("headline.none", string);
    }
    if (drifting.size() == 1
        && drifting.get(0).capacityTrend() instanceof Estimate.Known own
        && drifting.get(0).capacityAgainstString() instanceof Estimate.Known against
        && against.isBelow(0)) {
      return say("headline.capacity", Integer.toString(drifting.get(0).cell()), rate(own), string);
    }
    String named =
        drifting.stream().map(c -> Integer.toString(c.cell())).collect(Collectors.joining(", "));
    return say(drifting.size() == 1 ? "headline.one" : "headline.several", named, string);
  }
}
