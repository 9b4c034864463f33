package sagbook.packfile;

import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.dataformat.toml.TomlMapper;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import sagbook.issue.InputProblem;
import sagbook.wording.Words;

/** A TOML file with its text, so that a complaint can name line and column. */
final class TomlDocument {
  private static final Words WORDS = Words.english();

  /** A description longer than this is no description. */
  private static final int MOST_BYTES = 1 << 20;

  private final String name;
  private final List<String> lines;
  private final ObjectNode root;

  private TomlDocument(String name, List<String> lines, ObjectNode root) {
    this.name = name;
    this.lines = lines;
    this.root = root;
  }

  /**
   * Reads a file.
   *
   * @param what what the file should be, such as a pack description
   */
  static TomlDocument read(Path file, String what) throws InputProblem {
    String name = file.toString().replace('\\', '/');
    String shown = InputProblem.quoted(name);
    byte[] bytes;
    try (InputStream in = Files.newInputStream(file)) {
      bytes = in.readNBytes(MOST_BYTES + 1);
    } catch (NoSuchFileException e) {
      throw InputProblem.input(e, "problem.toml.missing", shown, what);
    } catch (IOException e) {
      throw InputProblem.input(e, "problem.toml.read", shown, what);
    }
    if (bytes.length > MOST_BYTES) {
      throw InputProblem.input("problem.toml.long", shown, what);
    }
    return parse(name, decode(bytes, shown, what), what);
  }

  private static String decode(byte[] bytes, String shown, String what) throws InputProblem {
    try {
      String text = StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
      return text.startsWith("\ufeff") ? text.substring(1) : text;
    } catch (CharacterCodingException e) {
      throw InputProblem.input(e, "problem.toml.text", shown, what);
    }
  }

  static TomlDocument parse(String name, String text, String what) throws InputProblem {
    JsonNode node;
    try {
      node = new TomlMapper().readTree(text);
    } catch (JsonProcessingException e) {
      JsonLocation at = e.getLocation();
      String shown = InputProblem.quoted(name);
      String place = at == null ? shown : place(shown, at.getLineNr(), at.getColumnNr());
      throw InputProblem.usage(
          "problem.toml.invalid", place, firstLine(e.getOriginalMessage()), what);
    } catch (RuntimeException | StackOverflowError e) {
      throw InputProblem.usage("problem.toml.unreadable", InputProblem.quoted(name), what);
    }
    if (!(node instanceof ObjectNode table)) {
      throw InputProblem.usage("problem.toml.empty", InputProblem.quoted(name), what);
    }
    return new TomlDocument(name, text.lines().toList(), table);
  }

  private static String firstLine(String message) {
    String line = message.lines().findFirst().orElse(WORDS.say("problem.toml.no-details"));
    return line.length() > 160 ? line.substring(0, 160) + "..." : line;
  }

  TomlTable root() {
    return new TomlTable(this, root, "", 0);
  }

  /**
   * File, line and column of a key.
   *
   * @param table dotted name of its table; empty for the top
   * @param nth which of several tables of that name, from 0
   */
  String place(String table, int nth, String key) {
    String current = "";
    int seen = -1;
    for (int i = 0; i < lines.size(); i++) {
      String line = lines.get(i).strip();
      if (line.startsWith("[")) {
        String header = line.replaceAll("#.*$", "").replaceAll("[\\[\\]\\s\"']", "");
        current = header;
        seen += header.equals(table) ? 1 : 0;
        if (join(table, key).equals(header)) {
          return at(i, key);
        }
      } else if ((current.equals(table) && (table.isEmpty() || seen == nth))
          && isAssignment(line, key)) {
        return at(i, key);
      }
    }
    return table.isEmpty() ? place() : WORDS.say("place.table", place(), table);
  }

  private static String join(String table, String key) {
    return table.isEmpty() ? key : table + "." + key;
  }

  private static boolean isAssignment(String line, String key) {
    for (String written : List.of(key, "\"" + key + "\"", "'" + key + "'")) {
      if (line.startsWith(written)) {
        String rest = line.substring(written.length()).stripLeading();
        if (rest.startsWith("=") || rest.startsWith(".")) {
          return true;
        }
      }
    }
    return false;
  }

  private String at(int index, String key) {
    int column = Math.max(0, lines.get(index).indexOf(key)) + 1;
    return place(place(), index + 1, column);
  }

  private static String place(String file, int line, int column) {
    return WORDS.say("place.column", file, Integer.toString(line), Integer.toString(column));
  }

  /** The file without a place in it. */
  String place() {
    return InputProblem.quoted(name);
  }
}
