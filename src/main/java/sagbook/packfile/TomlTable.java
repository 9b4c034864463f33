package sagbook.packfile;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import sagbook.issue.InputProblem;
import sagbook.wording.Words;

/** One table of a TOML file, read key by key with complaints that name the place. */
final class TomlTable {
  private static final Words WORDS = Words.english();

  private final TomlDocument document;
  private final ObjectNode node;
  private final String name;
  private final int nth;

  TomlTable(TomlDocument document, ObjectNode node, String name, int nth) {
    this.document = document;
    this.node = node;
    this.name = name;
    this.nth = nth;
  }

  /** Refuses every key that is not among those known, and names the nearest one that is. */
  void allowOnly(String... known) throws InputProblem {
    List<String> keys = List.of(known);
    for (String key : (Iterable<String>) node::fieldNames) {
      if (!keys.contains(key)) {
        throw unknown(key, keys);
      }
    }
  }

  private InputProblem unknown(String key, List<String> known) {
    String nearest = Spelling.nearest(key, known);
    boolean near = Spelling.distance(key, nearest) <= Math.max(2, nearest.length() / 2);
    return InputProblem.usage(
        near ? "problem.key.nearest" : "problem.key.known",
        document.place(name, nth, key),
        within(InputProblem.quoted(key), "problem.key.not-known"),
        near ? nearest : String.join(", ", known));
  }

  /** Says of a key where it stands, unless that is the top. */
  private String within(String key, String what) {
    return name.isEmpty() ? WORDS.say(what, key) : WORDS.say(what + ".in", key, name);
  }

  boolean has(String key) {
    return node.has(key);
  }

  Optional<String> text(String key) throws InputProblem {
    JsonNode value = node.get(key);
    if (value == null) {
      return Optional.empty();
    }
    if (!value.isTextual()) {
      throw complaint(key, WORDS.say("problem.expected.text"), value);
    }
    return Optional.of(value.textValue());
  }

  String neededText(String key, String example) throws InputProblem {
    Optional<String> found = text(key);
    if (found.isEmpty() || found.get().isBlank()) {
      throw missing(key, example);
    }
    return found.get();
  }

  /** A number within inclusive ends. */
  Optional<Double> number(String key, double least, double most) throws InputProblem {
    JsonNode value = node.get(key);
    if (value == null) {
      return Optional.empty();
    }
    String expected = WORDS.say("problem.expected.number", plain(least), plain(most));
    if (!value.isNumber()) {
      throw complaint(key, expected, value);
    }
    double number = value.doubleValue();
    if (!(number >= least && number <= most)) {
      throw complaint(key, expected, value);
    }
    return Optional.of(number);
  }

  /** A whole number within inclusive ends. */
  Optional<Integer> whole(String key, int least, int most) throws InputProblem {
    JsonNode value = node.get(key);
    if (value == null) {
      return Optional.empty();
    }
    boolean good =
        value.isIntegralNumber()
            && value.canConvertToInt()
            && value.intValue() >= least
            && value.intValue() <= most;
    if (!good) {
      throw complaint(
          key,
          WORDS.say("problem.expected.whole", Integer.toString(least), Integer.toString(most)),
          value);
    }
    return Optional.of(value.intValue());
  }

  /** A list of numbers, each within inclusive ends; empty when there is no such key. */
  Optional<List<Double>> numbers(String key, double least, double most) throws InputProblem {
    JsonNode value = node.get(key);
    if (value == null) {
      return Optional.empty();
    }
    String expected = WORDS.say("problem.expected.numbers", plain(least), plain(most));
    if (!value.isArray()) {
      throw complaint(key, expected, value);
    }
    List<Double> found = new ArrayList<>();
    for (JsonNode one : value) {
      double number = one.isNumber() ? one.doubleValue() : Double.NaN;
      if (!(number >= least && number <= most)) {
        throw complaint(key, expected, one);
      }
      found.add(number);
    }
    return Optional.of(found);
  }

  /** One text, or a list of texts. */
  List<String> texts(String key) throws InputProblem {
    JsonNode value = node.get(key);
    List<String> found = new ArrayList<>();
    if (value == null) {
      return found;
    }
    Iterable<JsonNode> each = value.isArray() ? value : List.of(value);
    for (JsonNode one : each) {
      if (!one.isTextual()) {
        throw complaint(key, WORDS.say("problem.expected.texts"), one);
      }
      found.add(one.textValue());
    }
    return found;
  }

  /** Every key of this table with its text. */
  Map<String, String> allTexts() throws InputProblem {
    Map<String, String> all = new LinkedHashMap<>();
    for (String key : (Iterable<String>) node::fieldNames) {
      all.put(key, text(key).orElse(""));
    }
    return all;
  }

  Optional<TomlTable> table(String key) throws InputProblem {
    JsonNode value = node.get(key);
    if (value == null) {
      return Optional.empty();
    }
    if (!(value instanceof ObjectNode table)) {
      throw complaint(key, WORDS.say("problem.expected.table", key), value);
    }
    return Optional.of(new TomlTable(document, table, inner(key), nth));
  }

  /** Tables written with double brackets. */
  List<TomlTable> tables(String key) throws InputProblem {
    JsonNode value = node.get(key);
    List<TomlTable> found = new ArrayList<>();
    if (value == null) {
      return found;
    }
    if (value instanceof ObjectNode) {
      throw complaint(key, WORDS.say("problem.expected.brackets", key), value);
    }
    for (JsonNode one : value) {
      if (!(one instanceof ObjectNode table)) {
        throw complaint(key, WORDS.say("problem.expected.tables", key), one);
      }
      found.add(new TomlTable(document, table, inner(key), found.size()));
    }
    if (!value.isArray()) {
      throw complaint(key, WORDS.say("problem.expected.tables", key), value);
    }
    return found;
  }

  private String inner(String key) {
    return name.isEmpty() ? key : name + "." + key;
  }

  InputProblem missing(String key, String example) {
    return InputProblem.usage(
        "problem.key.add", document.place(), within(key, "problem.key.missing"), example);
  }

  /** A complaint about the whole of a list: what is wrong with it and what was expected. */
  InputProblem listComplaint(String key, String wrong, String expected) {
    return InputProblem.usage(
        "problem.key.list",
        document.place(name, nth, key),
        InputProblem.quoted(key),
        wrong,
        expected);
  }

  InputProblem complaint(String key, String expected) {
    JsonNode value = node.get(key);
    return complaint(key, expected, value == null ? node : value);
  }

  private InputProblem complaint(String key, String expected, JsonNode found) {
    String shown =
        found.isTextual()
            ? found.textValue()
            : found.isContainerNode() ? WORDS.say("problem.found.table") : found.asText();
    return InputProblem.usage(
        "problem.key.value",
        document.place(name, nth, key),
        InputProblem.quoted(key),
        InputProblem.quoted(shown),
        expected);
  }

  private static String plain(double number) {
    return number == Math.rint(number) && Math.abs(number) < 1e9
        ? Long.toString((long) number)
        : Double.toString(number);
  }
}
