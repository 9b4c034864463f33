package sagbook.report.html;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import sagbook.model.Estimate;
import sagbook.model.Finding;
import sagbook.record.BankResult;
import sagbook.report.words.Numbers;
import sagbook.report.words.OutsideText;
import sagbook.verdict.CellVerdict;
import sagbook.verdict.Severity;
import sagbook.wording.Words;

/** The questions that a keeper has, answered from a bank's verdict. */
final class Answers {
  private static final double WORTH_SAYING_AH = 0.5;
  private static final int MOST_NAMED = 4;

  private final BankResult bank;
  private final Buys buys;
  private final Words words;

  private Answers(BankResult bank, Buys buys, Words words) {
    this.bank = bank;
    this.buys = buys;
    this.words = words;
  }

  /** Is it fine, and what is wrong. */
  static List<Page.Entry> state(BankResult bank, Buys buys, Words words) {
    Answers answers = new Answers(bank, buys, words);
    return List.of(
        new Page.Entry(words.say("answer.fine"), List.of(answers.fine())),
        new Page.Entry(words.say("answer.wrong"), answers.wrong()));
  }

  /** What the actions buy, and how sure all that is. */
  static List<Page.Entry> worth(BankResult bank, Buys buys, Words words) {
    return List.of(
        new Page.Entry(words.say("answer.buys"), buys.sentences()),
        new Page.Entry(words.say("answer.sure"), List.of(new Answers(bank, buys, words).sure())));
  }

  /** What the battery gives as it is, and what ends it. */
  static List<String> gives(BankResult bank, Buys buys, Words words) {
    return new Answers(bank, buys, words).gives();
  }

  /**
   * What to do first where cells could not be judged: measure. Without such cells, that there is
   * nothing to do, or nothing more than the verdict asks for.
   */
  static String idle(BankResult bank, Buys buys, Words words) {
    Answers answers = new Answers(bank, buys, words);
    List<Integer> open = answers.openCells();
    if (open.isEmpty() || bank.verdict().severity() == Severity.ACT_NOW) {
      return bank.verdict().todo().isEmpty() ? words.say("todo.now.none") : "";
    }
    String which = open.size() > MOST_NAMED ? "many" : open.size() == 1 ? "one" : "some";
    return words.say(
        "todo.now.measure." + which,
        open.size() > MOST_NAMED ? Integer.toString(open.size()) : buys.list(open),
        words.say("todo.next"));
  }

  private String fine() {
    long open = openCells().size();
    if (open > 0 && bank.verdict().severity() == Severity.WELL) {
      int all = bank.verdict().cells().size();
      return words.say("answer.fine.open", Long.toString(open), Integer.toString(all));
    }
    boolean joint = troubled().stream().anyMatch(c -> c.finding() == Finding.CONNECTION);
    if (joint && bank.verdict().severity() == Severity.ATTENTION) {
      return words.say("answer.fine.joint");
    }
    String severity = bank.verdict().severity().name().toLowerCase(Locale.ROOT);
    return words.say("answer.fine." + severity.replace('_', '-'));
  }

  private List<CellVerdict> troubled() {
    return bank.verdict().cells().stream()
        .filter(c -> c.finding() != Finding.HEALTHY)
        .filter(c -> c.finding() != Finding.INSUFFICIENT_EVIDENCE)
        .sorted(Comparator.comparingInt(CellVerdict::rank))
        .toList();
  }

  private List<String> wrong() {
    List<String> sentences = new ArrayList<>();
    for (CellVerdict cell : troubled()) {
      sentences.add(
          words.say(
              "answer.wrong.cell",
              Integer.toString(cell.cell()),
              words.say("answer.finding." + cell.findingKey()),
              cost(cell)));
    }
    return sentences.isEmpty() ? List.of(noneWrong()) : sentences;
  }

  /** Nothing is wrong for sure; a few cells that could not be judged are named. */
  private String noneWrong() {
    List<Integer> open = openCells();
    if (open.isEmpty()) {
      return words.say("answer.wrong.none");
    }
    if (open.size() > MOST_NAMED) {
      return words.say(
          "answer.wrong.open.many",
          Integer.toString(open.size()),
          Integer.toString(bank.verdict().cells().size()));
    }
    String key = open.size() == 1 ? "answer.wrong.open" : "answer.wrong.open.some";
    return words.say(key, buys.list(open));
  }

  /** What a cell costs; a reading that is wrong costs nothing, resistance costs voltage. */
  private String cost(CellVerdict cell) {
    if (cell.finding() == Finding.CONNECTION || cell.finding() == Finding.HIGH_RESISTANCE) {
      return sag(cell);
    }
    Estimate alone = cell.cost().aloneAh();
    if (cell.finding() == Finding.VOLTAGE_SENSOR || cell.finding() == Finding.TEMPERATURE_SENSOR) {
      return words.say("answer.cost.nothing");
    }
    if (alone instanceof Estimate.Unknown) {
      // Why stands with what would tell it, under what to do next month.
      return words.say("answer.cost.unknown");
    }
    Estimate.Known cost = (Estimate.Known) alone;
    String most = Numbers.with(Numbers.high(cost), "Ah");
    if (cost.high() < WORTH_SAYING_AH) {
      return words.say("answer.cost.nothing");
    }
    return Numbers.isZero(cost)
        ? words.say("answer.cost.most", most)
        : words.say(
            "answer.cost.cell",
            Numbers.with(Numbers.value(cost), "Ah"),
            Numbers.low(cost),
            Numbers.high(cost));
  }

  private String sag(CellVerdict cell) {
    List<Estimate.Known> sags =
        bank.verdict().cells().stream()
            .map(each -> each.cost().sagMillivolt())
            .filter(Estimate.Known.class::isInstance)
            .map(Estimate.Known.class::cast)
            .sorted(Comparator.comparingDouble(Estimate.Known::value))
            .toList();
    return cell.cost().sagMillivolt() instanceof Estimate.Known own
        ? words.say("answer.cost.sag", millivolt(own), millivolt(sags.get(sags.size() / 2)))
        : words.say("answer.cost.sag.unknown");
  }

  private String millivolt(Estimate.Known sag) {
    return Display.interval(sag, "mV", words);
  }

  /** The weakest cells whose cost can't be told apart, where that cost is worth a word. */
  private List<String> ties() {
    CellVerdict weakest =
        bank.verdict().cells().stream()
            .min(Comparator.comparingInt(CellVerdict::rank))
            .orElseThrow();
    boolean worth =
        weakest.cost().aloneAh() instanceof Estimate.Known cost && cost.low() > WORTH_SAYING_AH;
    if (!worth || weakest.tiedWith().isEmpty()) {
      return List.of();
    }
    String cell = Integer.toString(weakest.cell());
    int others = weakest.tiedWith().size();
    if (others == bank.verdict().cells().size() - 1) {
      return List.of(words.say("answer.cost.tie.all"));
    }
    return List.of(
        others > MOST_NAMED
            ? words.say("answer.cost.tie.many", cell, Integer.toString(others))
            : words.say(
                others == 1 ? "answer.cost.tie" : "answer.cost.tie.some",
                cell,
                buys.list(weakest.tiedWith())));
  }

  private List<String> gives() {
    List<String> sentences = new ArrayList<>();
    Estimate usable = bank.estimates().stringUsableAh();
    if (usable instanceof Estimate.Unknown unknown) {
      return List.of(words.say("answer.gives.unknown", OutsideText.shown(unknown.reason())));
    }
    sentences.add(interval("answer.gives.value", (Estimate.Known) usable));
    if (bank.estimates().stringBalancedAh() instanceof Estimate.Known balanced) {
      sentences.add(interval("answer.gives.balanced", balanced));
    }
    if (bank.prospect().usableKWh() instanceof Estimate.Known energy
        && bank.prospect().eveningMinutes() instanceof Estimate.Known minutes) {
      Estimate.Known hours = (Estimate.Known) minutes.map(m -> m / 60);
      sentences.add(
          words.say(
              "answer.gives.energy",
              Display.interval(energy, "kWh", words),
              Display.interval(hours, "h", words)));
    }
    sentences.addAll(buys.evening());
    sentences.addAll(buys.ends());
    sentences.addAll(ties());
    return sentences;
  }

  private String interval(String key, Estimate.Known estimate) {
    return words.say(
        key,
        Numbers.with(Numbers.value(estimate), "Ah"),
        Numbers.low(estimate),
        Numbers.high(estimate));
  }

  private List<Integer> openCells() {
    return bank.verdict().cells().stream()
        .filter(c -> c.finding() == Finding.INSUFFICIENT_EVIDENCE)
        .map(CellVerdict::cell)
        .toList();
  }

  private String sure() {
    int all = bank.verdict().cells().size();
    int open = openCells().size();
    String key = open == 0 ? "all" : open == 1 ? "one" : "some";
    return words.say("answer.sure." + key, Integer.toString(all), Integer.toString(open));
  }
}
