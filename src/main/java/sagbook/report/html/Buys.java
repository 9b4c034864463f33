package sagbook.report.html;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import sagbook.model.Estimate;
import sagbook.model.Finding;
import sagbook.record.BankResult;
import sagbook.report.chart.DataTable;
import sagbook.report.words.Numbers;
import sagbook.report.words.OutsideText;
import sagbook.verdict.Action;
import sagbook.verdict.CellVerdict;
import sagbook.verdict.Severity;
import sagbook.whatif.Change;
import sagbook.whatif.Outcome;
import sagbook.whatif.Prospect;
import sagbook.wording.Words;

/** What each action buys: a few sentences for the first page, a table behind them. */
final class Buys {
  /**
   * A gain below this share of nominal capacity is not worth a line. Common practice, no source.
   */
  private static final double WORTH_A_LINE = 0.002;

  private static final int PAIRS_SHOWN = 3;
  private static final int SINGLES_SAID = 3;

  private final BankResult bank;
  private final Prospect prospect;
  private final double nominalAh;
  private final Words words;

  Buys(BankResult bank, double nominalAh, Words words) {
    this.bank = bank;
    this.prospect = bank.prospect();
    this.nominalAh = nominalAh;
    this.words = words;
  }

  /**
   * What the first page says: one sentence for whatever bears on what is advised. What else would
   * buy something is left to the table, or the page would seem to advise it; so of a battery
   * without fault, and of cells that are only suspected, no replacement is named.
   */
  List<String> sentences() {
    if (bank.verdict().severity() == Severity.ACT_NOW) {
      return List.of(words.say("buys.stop"));
    }
    if (troubled().isEmpty()) {
      return List.of(untroubled());
    }
    List<String> sentences = new ArrayList<>();
    if (isLevelling()) {
      sentences.add(sentence(prospect.rebalanced()));
      if (has(Finding.SELF_DISCHARGE)) {
        sentences.add(words.say("buys.drain"));
      }
    }
    troubled().stream()
        .filter(cell -> cell.finding() == Finding.CONNECTION)
        .forEach(cell -> sentences.add(mending(cell.cell())));
    if (bank.verdict().cells().stream().anyMatch(Buys::isMisread)) {
      sentences.add(words.say("buys.sensor"));
    }
    for (CellVerdict cell : troubled()) {
      replacing(cell).ifPresent(sentences::add);
    }
    sentences.addAll(replacingWorn());
    return sentences;
  }

  /** What replacing cells that lost capacity buys, alone and two together, the best first. */
  private List<String> replacingWorn() {
    List<Outcome> single = worthwhile(prospect.single());
    List<Outcome> said =
        single.stream().filter(this::isOfWorn).filter(this::isSaid).limit(SINGLES_SAID).toList();
    List<String> sentences = new ArrayList<>();
    said.forEach(outcome -> sentences.add(sentence(outcome)));
    pairs().stream()
        .filter(this::isOfWorn)
        .filter(this::isSaid)
        .limit(1)
        .forEach(outcome -> sentences.add(sentence(outcome)));
    if (!said.isEmpty()) {
      String others = said.size() == single.size() ? words.say("buys.other.none") + " " : "";
      sentences.add(others + spare());
    }
    return sentences;
  }

  /** What mending a joint buys; without a current nobody knows how much of it is the joint's. */
  private String mending(int cell) {
    Change mend = Change.mend(cell);
    return prospect
        .find(mend)
        .map(this::sentence)
        .orElseGet(() -> words.say("buys.joint.unknown", change(mend)));
  }

  /** Why a cell that is not worn, as far as is known, need not be replaced. */
  private Optional<String> replacing(CellVerdict cell) {
    Outcome outcome = prospect.single().get(cell.cell() - 1);
    String what = change(outcome.change());
    return switch (cell.finding()) {
      case OUT_OF_BALANCE, SELF_DISCHARGE ->
          Optional.of(
              words.say(
                  outcome.gainAh() instanceof Estimate.Known ? "buys.level" : "buys.level.unknown",
                  what));
      case HIGH_RESISTANCE -> Optional.of(joint(what, outcome));
      default -> Optional.empty();
    };
  }

  /** Nothing that would seem advised is named of a battery in which nothing was found. */
  private String untroubled() {
    boolean open =
        bank.verdict().cells().stream()
            .anyMatch(cell -> cell.finding() == Finding.INSUFFICIENT_EVIDENCE);
    return words.say(
        open
            ? "buys.open"
            : worthwhile(prospect.single()).isEmpty() ? "buys.fine.nothing" : "buys.fine");
  }

  /** What the table of changes rests on. */
  List<String> lead() {
    return List.of(words.say("buys.lead"), spare(), advised(), words.say("buys.all"));
  }

  /** Which of the replacements in the table are meant to be made, before anybody reads its rows. */
  private String advised() {
    if (bank.verdict().severity() == Severity.ACT_NOW) {
      return words.say("buys.stop");
    }
    List<Outcome> replaced =
        shown().stream().filter(o -> o.change().kind() == Change.Kind.REPLACE).toList();
    if (replaced.isEmpty()) {
      return words.say("buys.none-worth");
    }
    List<Integer> due =
        replaced.stream()
            .flatMap(o -> o.change().cells().stream())
            .filter(this::isToBeReplaced)
            .distinct()
            .sorted()
            .toList();
    if (due.isEmpty()) {
      return words.say(troubled().isEmpty() ? "buys.not-advised" : "buys.not-advised.first");
    }
    return words.say(due.size() == 1 ? "buys.advised.one" : "buys.advised.many", list(due));
  }

  private boolean isToBeReplaced(int cell) {
    return bank.verdict().cells().get(cell - 1).advice().action() == Action.PLAN_REPLACEMENT;
  }

  /** A change, and where it is a replacement that nobody advises, why not. */
  private String row(Change change) {
    if (change.kind() != Change.Kind.REPLACE || bank.verdict().severity() == Severity.ACT_NOW) {
      return change(change);
    }
    Map<String, List<Integer>> why = new LinkedHashMap<>();
    for (int cell : change.cells()) {
      if (!isToBeReplaced(cell)) {
        Finding finding = bank.verdict().cells().get(cell - 1).finding();
        why.computeIfAbsent(finding.words(), f -> new ArrayList<>()).add(cell);
      }
    }
    List<String> reasons = new ArrayList<>();
    why.forEach(
        (finding, cells) ->
            reasons.add(
                words.say(
                    "buys.row." + finding + (cells.size() == 1 ? ".one" : ".many"), list(cells))));
    return reasons.isEmpty()
        ? change(change)
        : words.say("buys.row", change(change), String.join(", ", reasons));
  }

  private List<CellVerdict> troubled() {
    return bank.verdict().cells().stream()
        .filter(cell -> cell.finding() != Finding.HEALTHY)
        .filter(cell -> cell.finding() != Finding.INSUFFICIENT_EVIDENCE)
        .toList();
  }

  private boolean has(Finding finding) {
    return bank.verdict().cells().stream().anyMatch(cell -> cell.finding() == finding);
  }

  private String spare() {
    return words.say(
        prospect.spare().told() ? "buys.spare.told" : "buys.spare.nominal",
        Numbers.with(Numbers.plain(prospect.spare().capacityAh()), "Ah"));
  }

  /** Whether bringing all cells to full together is advised, or surely buys something. */
  private boolean isLevelling() {
    return has(Finding.OUT_OF_BALANCE)
        || has(Finding.SELF_DISCHARGE)
        || (prospect.rebalanced().gainAh() instanceof Estimate.Known gain
            && gain.low() > WORTH_A_LINE * nominalAh);
  }

  private static boolean isMisread(CellVerdict cell) {
    return cell.finding() == Finding.VOLTAGE_SENSOR || cell.finding() == Finding.TEMPERATURE_SENSOR;
  }

  /** Whether all cells that a change touches lost capacity. */
  private boolean isOfWorn(Outcome outcome) {
    return outcome.change().cells().stream()
        .map(cell -> bank.verdict().cells().get(cell - 1))
        .allMatch(cell -> cell.finding() == Finding.LOW_CAPACITY);
  }

  /** A gain that may as well be a loss is left to the table. */
  private boolean isSaid(Outcome outcome) {
    return outcome.gainAh() instanceof Estimate.Known gain && gain.low() >= 0;
  }

  /** The evening that times are reckoned by; empty when the log shows none. */
  List<String> evening() {
    OptionalDouble load = prospect.use().eveningLoadW();
    return load.isEmpty()
        ? List.of()
        : List.of(
            words.say(
                "buys.evening", Numbers.with(Numbers.significant(load.getAsDouble(), 2), "W")));
  }

  /** The first full and the first empty cell, as far as the log can tell. */
  List<String> ends() {
    List<String> sentences = new ArrayList<>();
    end("ends.charge", prospect.chargeEndsWith(), sentences);
    end("ends.discharge", prospect.dischargeEndsWith(), sentences);
    return sentences;
  }

  private void end(String key, List<Integer> cells, List<String> into) {
    if (cells.size() == 1) {
      into.add(words.say(key + ".one", Integer.toString(cells.get(0))));
    } else if (cells.size() > 4) {
      into.add(words.say(key + ".open"));
    } else if (cells.size() > 1) {
      into.add(words.say(key + ".some", list(cells.stream().sorted().toList())));
    }
  }

  /** Every change that buys something, and those that are advised. */
  DataTable table() {
    List<String> headers =
        List.of(
            words.say("buys.column.change"),
            words.say("buys.column.ah"),
            words.say("buys.column.kwh"),
            words.say("buys.column.minutes"),
            words.say("buys.column.sag"));
    List<List<String>> rows = new ArrayList<>();
    for (Outcome outcome : shown()) {
      rows.add(
          List.of(
              row(outcome.change()),
              figure(outcome.gainAh(), 0.05),
              figure(outcome.gainKWh(), 0.005),
              figure(outcome.gainEveningMinutes(), 0.5),
              figure(outcome.sagV(), 0)));
    }
    return new DataTable(headers, rows);
  }

  private List<Outcome> shown() {
    List<Outcome> shown = new ArrayList<>();
    shown.add(prospect.rebalanced());
    prospect.mended().stream()
        .filter(mended -> findingOf(mended) == Finding.CONNECTION)
        .forEach(shown::add);
    shown.addAll(worthwhile(prospect.single()));
    prospect.single().stream()
        .filter(replaced -> findingOf(replaced) == Finding.HIGH_RESISTANCE)
        .filter(replaced -> !shown.contains(replaced))
        .forEach(shown::add);
    shown.addAll(pairs());
    return shown;
  }

  private List<Outcome> worthwhile(List<Outcome> outcomes) {
    return outcomes.stream()
        .filter(outcome -> gain(outcome) > WORTH_A_LINE * nominalAh)
        .sorted(Comparator.comparingDouble(outcome -> -gain(outcome)))
        .toList();
  }

  /** Pairs that buy more than the better of the two alone, the best first. */
  private List<Outcome> pairs() {
    return worthwhile(prospect.pairs()).stream()
        .filter(pair -> gain(pair) > better(pair) + WORTH_A_LINE * nominalAh)
        .limit(PAIRS_SHOWN)
        .toList();
  }

  private double better(Outcome pair) {
    double better = 0;
    for (int cell : pair.change().cells()) {
      better = Math.max(better, gain(prospect.single().get(cell - 1)));
    }
    return better;
  }

  private static double gain(Outcome outcome) {
    return outcome.gainAh().find().orElse(0);
  }

  private Finding findingOf(Outcome outcome) {
    List<CellVerdict> cells = bank.verdict().cells();
    return cells.get(outcome.change().cells().get(0) - 1).finding();
  }

  private String sentence(Outcome outcome) {
    String what = change(outcome.change());
    if (outcome.change().kind() == Change.Kind.MEND_JOINT) {
      return joint(what, outcome);
    }
    if (outcome.gainAh() instanceof Estimate.Unknown unknown) {
      return words.say("buys.unknown", what, OutsideText.shown(unknown.reason()));
    }
    Estimate.Known gain = (Estimate.Known) outcome.gainAh();
    if (gain.high() < 0.05) {
      return words.say("buys.nothing", what);
    }
    if (Numbers.isZero(gain)) {
      return words.say("buys.most", what, Numbers.with(Numbers.high(gain), "Ah"));
    }
    String charge =
        words.say(
            "buys.charge",
            what,
            Numbers.with(Numbers.value(gain), "Ah"),
            Numbers.low(gain),
            Numbers.high(gain));
    if (outcome.gainKWh() instanceof Estimate.Known kWh
        && outcome.gainEveningMinutes() instanceof Estimate.Known minutes) {
      return charge
          + " "
          + words.say("buys.energy", Display.interval(kWh, "kWh", words), time(minutes));
    }
    return charge;
  }

  /** What less resistance buys: less sag, and only where it is worth a word more time. */
  private String joint(String what, Outcome outcome) {
    if (!(outcome.lessSagV() instanceof Estimate.Known less)) {
      return words.say("buys.joint.unknown", what);
    }
    Estimate.Known millivolt = (Estimate.Known) less.map(volt -> 1000 * volt);
    Optional<Estimate.Known> longer =
        outcome.change().kind() == Change.Kind.MEND_JOINT
                && outcome.gainEveningMinutes() instanceof Estimate.Known minutes
                && minutes.value() >= 1
            ? Optional.of(minutes)
            : Optional.empty();
    return words.say(
        longer.isPresent() ? "buys.joint.longer" : "buys.joint",
        what,
        Display.interval(millivolt, "mV", words),
        Numbers.with(Numbers.significant(prospect.use().highestDischargeA().orElse(0), 3), "A"),
        longer.map(this::time).orElse(""));
  }

  private String time(Estimate.Known minutes) {
    if (minutes.high() < 1) {
      return words.say("buys.time.little");
    }
    return minutes.value() < 120
        ? Display.interval(minutes, "min", words)
        : Display.interval((Estimate.Known) minutes.map(m -> m / 60), "h", words);
  }

  private String change(Change change) {
    return switch (change.kind()) {
      case NOTHING -> words.say("change.nothing");
      case REBALANCE -> words.say("change.rebalance");
      case MEND_JOINT -> words.say("change.mend", list(change.cells()));
      case REPLACE ->
          words.say(
              change.cells().size() == 1 ? "change.replace" : "change.replace.both",
              list(change.cells()));
    };
  }

  String list(List<Integer> cells) {
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < cells.size(); i++) {
      String between = i == 0 ? "" : i == cells.size() - 1 ? words.say("list.last") : ", ";
      text.append(between).append(cells.get(i));
    }
    return text.toString();
  }

  private String figure(Estimate estimate, double little) {
    if (!(estimate instanceof Estimate.Known known)) {
      return words.say("none");
    }
    if (known.high() < little) {
      return words.say("buys.figure.little");
    }
    return Numbers.isZero(known) && known.low() >= 0
        ? words.say("at-most", Numbers.high(known))
        : words.say("buys.figure", Numbers.value(known), Numbers.low(known), Numbers.high(known));
  }
}
