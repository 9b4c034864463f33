package sagbook.report.html;

import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import sagbook.model.ChannelQuality;
import sagbook.model.Estimate;
import sagbook.model.Limits;
import sagbook.model.Threshold;
import sagbook.record.BankResult;
import sagbook.record.CheckResult;
import sagbook.record.InputFile;
import sagbook.report.chart.DataTable;
import sagbook.report.chart.Picks;
import sagbook.report.chart.Plate;
import sagbook.report.chart.Plates;
import sagbook.report.words.Numbers;
import sagbook.report.words.OutsideText;
import sagbook.verdict.BankVerdict;
import sagbook.verdict.Checklist;
import sagbook.verdict.TestPlan;
import sagbook.wording.Words;

/** The report of one check as one HTML page. */
public final class ReportPage {
  private final CheckResult result;
  private final Words words;
  private final Assets assets;
  private int plates;

  private ReportPage(CheckResult result, Words words, Assets assets) {
    this.result = result;
    this.words = words;
    this.assets = assets;
  }

  /** The page's whole text. */
  public static String html(CheckResult result, Words words) {
    return html(result, words, Assets.own());
  }

  /** The same page with a style sheet for paper and without script, well-formed XHTML. */
  public static String printed(CheckResult result, Words words) {
    return html(result, words, Assets.printed());
  }

  private static String html(CheckResult result, Words words, Assets assets) {
    return Template.filled("report.jte", new ReportPage(result, words, assets).page());
  }

  private Page page() {
    String name = OutsideText.shown(result.pack().name());
    return new Page(
        words,
        words.say("page.title", name, date(from()), date(to())),
        name,
        facts(),
        banks(),
        words.list("method"),
        limits(),
        thresholds(),
        words.list("caution"),
        inputs(),
        glossary(),
        words.say("inputs.software", OutsideText.shown(result.softwareVersion())),
        assets);
  }

  private ZoneId zone() {
    return result.pack().timezone();
  }

  private String date(Instant time) {
    return words.date(time, zone());
  }

  private Instant from() {
    return result.banks().stream().map(BankResult::from).min(Instant::compareTo).orElseThrow();
  }

  private Instant to() {
    return result.banks().stream().map(BankResult::to).max(Instant::compareTo).orElseThrow();
  }

  private List<Page.Entry> facts() {
    long rows = result.inputs().stream().mapToLong(InputFile::rows).sum();
    int files = result.inputs().size();
    String log =
        files == 1
            ? words.say("fact.log.value.one", Numbers.count(rows))
            : words.say("fact.log.value", Numbers.count(rows), Integer.toString(files));
    String chemistry = words.say("chemistry." + result.pack().chemistry().key());
    return List.of(
        fact("fact.period", words.say("head.period", date(from()), date(to()))),
        fact(
            "fact.cells",
            words.say(
                "fact.cells.value", Integer.toString(result.pack().seriesCells()), chemistry)),
        fact(
            switch (result.pack().capacitySource()) {
              case TOLD -> "fact.nominal";
              case FOUND -> "fact.nominal.found";
              case ASSUMED -> "fact.nominal.assumed";
            },
            Numbers.with(Numbers.plain(result.pack().nominalCapacityAh()), "Ah")),
        fact("fact.log", log));
  }

  private Page.Entry fact(String key, String value) {
    return new Page.Entry(words.say(key), List.of(value));
  }

  private List<Page.Bank> banks() {
    List<Page.Bank> banks = new ArrayList<>();
    for (BankResult bank : result.banks()) {
      banks.add(bank(bank, "bank" + (banks.size() + 1)));
    }
    return banks;
  }

  private Page.Bank bank(BankResult bank, String id) {
    Picks picks = Picks.of(bank.verdict().cells());
    Buys buys = new Buys(bank, result.pack().nominalCapacityAh(), words);
    Accounts accounts = new Accounts(bank, result.pack(), words);
    Plates drawn = Plates.of(bank, result.pack(), words);
    List<Page.NumberedPlate> numbered = new ArrayList<>();
    for (Plate plate : drawn.drawn()) {
      numbered.add(new Page.NumberedPlate(++plates, plate));
    }
    return new Page.Bank(
        id,
        result.banks().size() > 1 ? OutsideText.shown(bank.bank()) : "",
        OutsideText.shown(bank.verdict().headline()),
        Answers.state(bank, buys, words),
        shown(bank.verdict().todo()),
        Answers.idle(bank, buys, words),
        Answers.worth(bank, buys, words),
        shown(bank.verdict().nextMonth()),
        plan(bank.plan()),
        checklists(bank.verdict()),
        RankingTable.of(bank.verdict().cells(), picks, words),
        Answers.gives(bank, buys, words),
        buys.lead(),
        buys.table(),
        numbered,
        drawn.missing(),
        accounts.stress(),
        accounts.balancing(),
        accounts.boards(),
        Sheets.open(bank, words),
        Sheets.of(bank, picks, words),
        quality(bank));
  }

  private List<String> plan(TestPlan plan) {
    List<String> sentences = new ArrayList<>();
    sentences.add(OutsideText.shown(plan.why()));
    for (TestPlan.Step step : plan.steps()) {
      String buys =
          step.predictedPercent() instanceof Estimate.Known then
              ? words.say(
                  step.halfWidthPercent() instanceof Estimate.Known
                      ? "plan.buys"
                      : "plan.buys.unknown",
                  words.say("plan.quantity." + step.quantity()),
                  Integer.toString(plan.cell()),
                  Numbers.significant(step.halfWidthPercent().find().orElse(0), 2),
                  Numbers.significant(then.value(), 2))
              : words.say("plan.buys.nothing", words.say("plan.quantity." + step.quantity()));
      sentences.add(OutsideText.shown(step.doing()) + " " + buys);
    }
    return sentences;
  }

  private List<Page.Entry> checklists(BankVerdict verdict) {
    return Checklist.of(verdict).stream()
        .map(
            list ->
                new Page.Entry(
                    words.say("checklist.title", words.say("action." + list.action().words())),
                    list.points()))
        .toList();
  }

  private static List<String> shown(List<String> sentences) {
    return sentences.stream().map(OutsideText::shown).toList();
  }

  private Page.Quality quality(BankResult bank) {
    List<String> headers =
        List.of(
            words.say("quality.column.channel"),
            words.say("quality.column.valid"),
            words.say("quality.column.resolution"),
            words.say("quality.column.noise"),
            words.say("quality.column.stuck"),
            words.say("quality.column.delay"));
    List<List<String>> rows = new ArrayList<>();
    for (ChannelQuality channel : bank.channels()) {
      rows.add(
          List.of(
              OutsideText.shown(channel.name()),
              Numbers.percent(channel.validShare()),
              measured(channel.resolution(), channel.unit()),
              measured(channel.noise(), channel.unit()),
              number(channel.stuckHours()),
              number(channel.delayS())));
    }
    String cadence = Numbers.with(number(bank.evidence().cadenceS()), "s");
    String summary =
        words.say(
            "quality.summary",
            Integer.toString(rows.size()),
            Numbers.count(bank.evidence().rows()),
            cadence,
            Numbers.text(bank.evidence().stress().hours(), 0));
    return new Page.Quality(
        shown(bank.reading()),
        shown(bank.estimates().remarks()),
        summary,
        new DataTable(headers, rows));
  }

  /** A step or noise; of a voltage in millivolts, as everything else that small. */
  private String measured(double value, String unit) {
    if (!Double.isFinite(value)) {
      return words.say("none.short");
    }
    return unit.equals("V")
        ? Numbers.with(Numbers.significant(1000 * value, 2), "mV")
        : Numbers.with(Numbers.significant(value, 2), unit);
  }

  private String number(double value) {
    return Double.isFinite(value) ? Numbers.significant(value, 2) : words.say("none.short");
  }

  private DataTable limits() {
    Limits limits = result.pack().limits();
    List<List<String>> rows =
        List.of(
            List.of(words.say("limit.full"), volts(limits.cellFullVoltage())),
            List.of(words.say("limit.empty"), volts(limits.cellEmptyVoltage())),
            List.of(words.say("limit.max"), volts(limits.cellMaxVoltage())),
            List.of(words.say("limit.min"), volts(limits.cellMinVoltage())),
            List.of(
                words.say("limit.charge-temperature"),
                range(limits.chargeMinTemperatureC(), limits.chargeMaxTemperatureC())),
            List.of(
                words.say("limit.cool"),
                Numbers.with(Numbers.text(limits.chargeCoolTemperatureC(), 0), "°C")),
            List.of(
                words.say("limit.discharge-temperature"),
                range(limits.dischargeMinTemperatureC(), limits.dischargeMaxTemperatureC())));
    return new DataTable(List.of(words.say("method.limit"), words.say("method.limit.value")), rows);
  }

  /** Every threshold with its reason, marked where the keeper set it. */
  private DataTable thresholds() {
    List<List<String>> rows = new ArrayList<>();
    for (Threshold threshold : Threshold.values()) {
      Double told = result.pack().rules().get(threshold);
      rows.add(
          List.of(
              threshold.meaning(),
              Numbers.plain(told == null ? threshold.usual() : told),
              told == null ? threshold.reason() : words.say("method.rule.told")));
    }
    List<String> headers =
        List.of(
            words.say("method.rule"),
            words.say("method.rule.value"),
            words.say("method.rule.reason"));
    return new DataTable(headers, rows);
  }

  private static String volts(double value) {
    return Numbers.with(Numbers.text(value, 2), "V");
  }

  private String range(double low, double high) {
    return words.say(
        "limit.range", Numbers.text(low, 0), Numbers.with(Numbers.text(high, 0), "°C"));
  }

  private DataTable inputs() {
    List<String> headers =
        List.of(
            words.say("inputs.file"),
            words.say("inputs.rows"),
            words.say("inputs.first"),
            words.say("inputs.last"),
            words.say("inputs.sha256"));
    List<List<String>> rows = new ArrayList<>();
    for (InputFile input : result.inputs()) {
      rows.add(
          List.of(
              OutsideText.shown(input.file()),
              Numbers.count(input.rows()),
              words.time(input.first(), zone()),
              words.time(input.last(), zone()),
              input.sha256()));
    }
    return new DataTable(headers, rows);
  }

  private List<Page.Entry> glossary() {
    List<Page.Entry> entries = new ArrayList<>();
    for (int i = 1; words.has("glossary." + i); i++) {
      String key = "glossary." + i;
      entries.add(new Page.Entry(words.say(key + ".term"), List.of(words.say(key))));
    }
    return entries;
  }
}
