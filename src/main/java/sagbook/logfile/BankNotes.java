package sagbook.logfile;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import sagbook.issue.InputProblem;
import sagbook.wording.Words;

/** Says in plain sentences how a bank's files were understood. */
final class BankNotes {
  private static final Words WORDS = Words.english();

  private BankNotes() {}

  static List<String> of(List<FileSurvey> files) {
    Map<String, List<String>> filesBySentence = new LinkedHashMap<>();
    for (FileSurvey file : files) {
      for (String sentence : sentences(file.plan())) {
        filesBySentence
            .computeIfAbsent(sentence, s -> new ArrayList<>())
            .add(file.plan().source().name());
      }
    }
    List<String> notes = new ArrayList<>();
    filesBySentence.forEach(
        (sentence, names) ->
            notes.add(names.size() == files.size() ? sentence : within(names, sentence)));
    return notes;
  }

  private static String within(List<String> names, String sentence) {
    String first = InputProblem.quoted(names.get(0));
    return names.size() == 1
        ? WORDS.say("reading.in", first, sentence)
        : WORDS.say("reading.in.files", Integer.toString(names.size()), first, sentence);
  }

  private static List<String> sentences(FilePlan plan) {
    List<String> sentences = new ArrayList<>();
    sentences.add(WORDS.say("reading.clock", plan.clock().words()));
    if (plan.tall().isPresent()) {
      sentences.add(WORDS.say("reading.columns.tall"));
    }
    for (Quantity quantity : Quantity.values()) {
      List<Column> columns =
          plan.columns().stream().filter(c -> c.meaning().quantity() == quantity).toList();
      if (!columns.isEmpty() && isSpoken(quantity)) {
        sentences.add(sentence(quantity, columns));
      }
    }
    return sentences;
  }

  private static boolean isSpoken(Quantity quantity) {
    return quantity != Quantity.TIME && quantity != Quantity.UNIT_NAME;
  }

  private static String sentence(Quantity quantity, List<Column> columns) {
    String first = InputProblem.quoted(columns.get(0).name());
    String last = InputProblem.quoted(columns.get(columns.size() - 1).name());
    String names =
        columns.size() == 1
            ? first
            : columns.size() == 2
                ? WORDS.say("reading.columns.two", first, last)
                : WORDS.say("reading.columns.many", Integer.toString(columns.size()), first, last);
    if (quantity == Quantity.IGNORED) {
      return WORDS.say("reading.columns.ignored", names);
    }
    Set<Unit> units = EnumSet.noneOf(Unit.class);
    for (Column column : columns) {
      column.meaning().unit().ifPresent(units::add);
    }
    List<String> symbols = units.stream().map(Unit::symbol).toList();
    String what = WORDS.say("reading.quantity." + quantity.words().replace(' ', '-'));
    return symbols.isEmpty()
        ? WORDS.say("reading.columns.without-unit", what, names, columns.get(0).how())
        : WORDS.say(
            "reading.columns",
            what,
            names,
            String.join(WORDS.say("list.last"), symbols),
            columns.get(0).how());
  }
}
