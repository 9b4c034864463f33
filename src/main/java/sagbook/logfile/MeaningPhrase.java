package sagbook.logfile;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import sagbook.issue.InputProblem;

/** The words with which a column mapping gives a column its meaning. */
final class MeaningPhrase {
  private static final Pattern OF_CELL =
      Pattern.compile("cell ([0-9]{1,2}) (voltage|temperature|bleed)( level)?");

  private MeaningPhrase() {}

  /**
   * Reads a phrase such as "cell 3 voltage, mV".
   *
   * @param column the column it is said about, for a complaint
   */
  static Meaning read(String phrase, String column) throws InputProblem {
    String words = phrase.strip().replaceAll("\\s+", " ");
    if (words.toLowerCase(Locale.ROOT).equals("ignore")) {
      return Meaning.ignored();
    }
    int comma = words.lastIndexOf(',');
    Optional<Unit> unit = Optional.empty();
    if (comma >= 0) {
      unit = Unit.find(words.substring(comma + 1));
      if (unit.isEmpty()) {
        throw complaint(phrase, column);
      }
      words = words.substring(0, comma).strip();
    }
    Meaning meaning = withoutUnit(words.toLowerCase(Locale.ROOT), phrase, column);
    if (unit.isEmpty()) {
      return meaning;
    }
    if (!unit.get().fits(meaning.quantity()) && meaning.quantity() != Quantity.VALUE) {
      throw complaint(phrase, column);
    }
    return meaning.withUnit(unit.get());
  }

  private static Meaning withoutUnit(String words, String phrase, String column)
      throws InputProblem {
    Matcher ofCell = OF_CELL.matcher(words);
    if (ofCell.matches()) {
      int cell = Integer.parseInt(ofCell.group(1));
      Quantity quantity =
          switch (ofCell.group(2)) {
            case "voltage" -> Quantity.CELL_VOLTAGE;
            case "temperature" -> Quantity.CELL_TEMPERATURE;
            default -> Quantity.CELL_BLEED;
          };
      if (cell >= 1) {
        return new Meaning(quantity, cell, Optional.empty());
      }
    }
    for (Quantity quantity : Quantity.values()) {
      if (quantity.words().equals(words) && quantity != Quantity.CELL_UNNAMED) {
        return Meaning.of(quantity);
      }
    }
    throw complaint(phrase, column);
  }

  private static InputProblem complaint(String phrase, String column) {
    return InputProblem.usage(
        "problem.mapping.meaning", InputProblem.quoted(column), InputProblem.quoted(phrase));
  }
}
