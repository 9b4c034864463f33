package sagbook.packfile;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import sagbook.issue.InputProblem;
import sagbook.model.LogMapping;
import sagbook.wording.Words;

/**
 * The column mapping that {@code preview} writes and {@code check --columns} takes back.
 *
 * <pre>
 * [[log]]
 * files = "bank-*.csv"
 * delimiter = ";"            # found from the file when absent
 * decimal = ","              # found from the file when absent
 * header_line = 1            # 0: the file has no header
 * clock = "local day-first"  # found from the file when absent
 * start = "2026-01-01T00:00:00+01:00"   # for a log that counts seconds from its start
 * hold_s = 900               # for a log that writes only what changed
 * [log.columns]
 * "Z1" = "cell 1 voltage, mV"
 * "x"  = "ignore"
 * </pre>
 */
public final class MappingFile {
  private static final Words WORDS = Words.english();
  private static final String WHAT = WORDS.say("problem.toml.mapping");

  private MappingFile() {}

  public static List<LogMapping> read(Path file) throws InputProblem {
    return from(TomlDocument.read(file, WHAT));
  }

  /** Reads a mapping from text; {@code name} is what complaints call it. */
  public static List<LogMapping> parse(String name, String text) throws InputProblem {
    return from(TomlDocument.parse(name, text, WHAT));
  }

  /** Mappings as the text of a file that {@link #read} takes back. */
  public static String text(List<LogMapping> mappings) {
    StringBuilder text = new StringBuilder();
    for (LogMapping mapping : mappings) {
      text.append("[[log]]\n");
      text.append("files = ").append(quoted(mapping.filePattern())).append('\n');
      mapping
          .delimiter()
          .ifPresent(d -> text.append("delimiter = ").append(quoted(d.toString())).append('\n'));
      mapping
          .decimalComma()
          .ifPresent(c -> text.append("decimal = ").append(quoted(c ? "," : ".")).append('\n'));
      mapping.headerLine().ifPresent(n -> text.append("header_line = ").append(n).append('\n'));
      mapping.clock().ifPresent(c -> text.append("clock = ").append(quoted(c)).append('\n'));
      mapping.start().ifPresent(s -> text.append("start = ").append(quoted(s)).append('\n'));
      mapping.holdS().ifPresent(s -> text.append("hold_s = ").append(s).append('\n'));
      text.append("[log.columns]\n");
      mapping
          .columns()
          .forEach(
              (name, meaning) ->
                  text.append(quoted(name)).append(" = ").append(quoted(meaning)).append('\n'));
      text.append('\n');
    }
    return text.toString();
  }

  /** A TOML basic string. */
  private static String quoted(String text) {
    StringBuilder quoted = new StringBuilder("\"");
    text.codePoints()
        .forEach(
            c -> {
              if (c == '"' || c == '\\') {
                quoted.append('\\').appendCodePoint(c);
              } else if (c < 0x20 || c == 0x7f) {
                quoted.append(String.format(Locale.ROOT, "\\u%04x", c));
              } else {
                quoted.appendCodePoint(c);
              }
            });
    return quoted.append('"').toString();
  }

  private static List<LogMapping> from(TomlDocument document) throws InputProblem {
    TomlTable root = document.root();
    root.allowOnly("log");
    return mappings(root);
  }

  static List<LogMapping> mappings(TomlTable root) throws InputProblem {
    List<LogMapping> found = new ArrayList<>();
    for (TomlTable log : root.tables("log")) {
      found.add(mapping(log));
    }
    return found;
  }

  private static LogMapping mapping(TomlTable log) throws InputProblem {
    log.allowOnly(
        "files", "delimiter", "decimal", "header_line", "clock", "start", "hold_s", "columns");
    Optional<TomlTable> columns = log.table("columns");
    Map<String, String> meanings = columns.isPresent() ? columns.get().allTexts() : Map.of();
    return new LogMapping(
        log.text("files").orElse("*"),
        delimiter(log),
        decimalComma(log),
        log.whole("header_line", 0, 100_000),
        log.text("clock"),
        log.text("start"),
        log.number("hold_s", 0, 7 * 86_400.0),
        meanings);
  }

  private static Optional<Character> delimiter(TomlTable log) throws InputProblem {
    Optional<String> text = log.text("delimiter");
    if (text.isEmpty()) {
      return Optional.empty();
    }
    String given = text.get().equals("tab") ? "\t" : text.get();
    if (given.length() != 1 || ",;\t|".indexOf(given.charAt(0)) < 0) {
      throw log.complaint("delimiter", WORDS.say("problem.expected.delimiter"));
    }
    return Optional.of(given.charAt(0));
  }

  private static Optional<Boolean> decimalComma(TomlTable log) throws InputProblem {
    Optional<String> text = log.text("decimal");
    if (text.isEmpty()) {
      return Optional.empty();
    }
    if (!text.get().equals(",") && !text.get().equals(".")) {
      throw log.complaint("decimal", WORDS.say("problem.expected.decimal"));
    }
    return Optional.of(text.get().equals(","));
  }
}
