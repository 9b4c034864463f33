package sagbook.logfile;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import sagbook.issue.InputProblem;

/** Says in plain sentences how a bank's files were understood. */
final class BankNotes {
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
            notes.add(names.size() == files.size() ? sentence : scope(names) + sentence));
    return notes;
  }

  private static String scope(List<String> names) {
    String first = InputProblem.quoted(names.get(0));
    return names.size() == 1
        ? "In " + first + ": "
        : "In " + names.size() + " files (" + first + " and others): ";
  }

  private static List<String> sentences(FilePlan plan) {
    List<String> sentences = new ArrayList<>();
    sentences.add("Clock: " + plan.clock().words() + ".");
    if (plan.tall().isPresent()) {
      sentences.add("One line a value: channels recognised by their names.");
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
                ? first + " and " + last
                : columns.size() + " columns, " + first + " to " + last;
    if (quantity == Quantity.IGNORED) {
      return "Not used: " + names + ".";
    }
    Set<Unit> units = EnumSet.noneOf(Unit.class);
    for (Column column : columns) {
      column.meaning().unit().ifPresent(units::add);
    }
    List<String> symbols = units.stream().map(Unit::symbol).toList();
    String words = quantity.words();
    String head = Character.toUpperCase(words.charAt(0)) + words.substring(1);
    return head
        + ": "
        + names
        + (symbols.isEmpty() ? "" : " in " + String.join(" and ", symbols))
        + ", "
        + columns.get(0).how()
        + ".";
  }
}
