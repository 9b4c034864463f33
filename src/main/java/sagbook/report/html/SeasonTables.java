package sagbook.report.html;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import sagbook.record.DiaryEvent;
import sagbook.report.chart.DataTable;
import sagbook.report.words.Numbers;
import sagbook.report.words.OutsideText;
import sagbook.season.SeasonResult;
import sagbook.season.StressAccount;
import sagbook.wording.Words;

/** The tables of the season's page and of the dossier. */
final class SeasonTables {
  private SeasonTables() {}

  /** One row an event and quantity; an event of which nothing was compared has one, too. */
  static DataTable diary(SeasonResult.Bank bank, List<DiaryEvent> diary, Words words) {
    List<List<String>> rows = new ArrayList<>();
    for (DiaryEvent event : diary) {
      if (!event.bank().isEmpty() && !event.bank().equals(bank.bank())) {
        continue;
      }
      List<SeasonResult.Effect> effects =
          bank.effects().stream().filter(effect -> effect.event().equals(event)).toList();
      String day = words.date(event.day());
      String what = OutsideText.shown(said(event, words));
      if (effects.isEmpty()) {
        rows.add(List.of(day, what, "", "", "", ""));
      }
      for (SeasonResult.Effect effect : effects) {
        rows.add(
            List.of(
                day,
                what,
                words.say("quantity." + effect.quantity().key()),
                SeasonStory.shown(Display.of(effect.quantity(), effect.before()), words),
                SeasonStory.shown(Display.of(effect.quantity(), effect.after()), words),
                effect.words()));
      }
    }
    return new DataTable(
        List.of(
            words.say("story.diary.day"),
            words.say("story.diary.event"),
            words.say("story.diary.quantity"),
            words.say("story.diary.before"),
            words.say("story.diary.after"),
            words.say("story.diary.outcome")),
        rows);
  }

  private static String said(DiaryEvent event, Words words) {
    List<String> parts = new ArrayList<>(List.of(event.kind().spoken()));
    if (event.cell() > 0) {
      parts.add(words.cell(event.cell()));
    }
    if (!event.mark().isEmpty()) {
      parts.add(event.mark());
    }
    if (!event.text().isEmpty()) {
      parts.add(event.text());
    }
    return String.join(", ", parts);
  }

  /** What a bank went through. */
  static DataTable stress(StressAccount stress, Words words) {
    List<List<String>> rows = new ArrayList<>();
    add(rows, "hours", stress.hours(), "h", words);
    add(rows, "charged_kwh", stress.chargedKWh(), "kWh", words);
    add(rows, "discharged_kwh", stress.dischargedKWh(), "kWh", words);
    add(rows, "charged_ah", stress.chargedAh(), "Ah", words);
    add(rows, "discharged_ah", stress.dischargedAh(), "Ah", words);
    add(rows, "cycles", stress.fullCycles(), "1", words);
    add(rows, "full", stress.fullChargeDays(), "1", words);
    add(rows, "current", stress.highestDischargeA(), "A", words);
    rows.add(span("voltage", stress.lowestV(), stress.highestV(), 3, "V", words));
    rows.add(span("temperature", stress.lowestC(), stress.highestC(), 1, "°C", words));
    add(rows, "above", stress.hoursAboveMax(), "h", words);
    add(rows, "below", stress.hoursBelowMin(), "h", words);
    add(rows, "cold", stress.hoursChargingCold(), "h", words);
    add(rows, "hot-charging", stress.hoursChargingHot(), "h", words);
    add(rows, "hot", stress.hoursHot(), "h", words);
    return new DataTable(
        List.of(words.say("story.stress.quantity"), words.say("story.stress.value")), rows);
  }

  private static void add(
      List<List<String>> rows, String key, OptionalDouble value, String unit, Words words) {
    rows.add(
        List.of(
            words.say("story.stress." + key),
            value.isPresent()
                ? Numbers.with(Numbers.significant(value.getAsDouble(), 3), unit)
                : words.say("not-logged")));
  }

  private static List<String> span(
      String key, OptionalDouble low, OptionalDouble high, int decimals, String unit, Words words) {
    return List.of(
        words.say("story.stress." + key),
        low.isPresent() && high.isPresent()
            ? words.say(
                "range",
                Numbers.text(low.getAsDouble(), decimals),
                Numbers.with(Numbers.text(high.getAsDouble(), decimals), unit))
            : words.say("not-logged"));
  }
}
