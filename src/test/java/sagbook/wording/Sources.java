package sagbook.wording;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * The texts between quotation marks in sources and templates.
 *
 * @param literals all of them
 * @param saidKeys those that are asked for as they stand
 * @param spoken those of two words or more, or of one with a space to glue it to others; without
 *     the messages of exceptions that only a mistake in the program throws
 */
record Sources(Set<String> literals, Set<String> saidKeys, Set<String> spoken) {
  private static final Pattern LITERAL = Pattern.compile("\"((?:[^\"\\\\\\n]|\\\\.)*)\"");
  private static final Pattern COMMENT = Pattern.compile("(?s)/\\*\\*.*?\\*/");
  private static final Pattern SAID =
      Pattern.compile(
          "\\b(?:say|fact|usage|input|output)\\(\\s*(?:e,\\s*)?\"([^\"]*[^\".])\"\\s*[,)]");
  private static final Pattern PROGRAMMERS =
      Pattern.compile(
          "new Illegal(?:State|Argument)Exception\\((?:\"(?:[^\"\\\\]|\\\\.)*\"|[^\";])*");
  private static final Pattern SPOKEN =
      Pattern.compile("\\p{L}{2,},? +\\p{L}{2,}|^ \\p{L}{2,}|\\p{L}{2,} $");

  static Sources of(String folder) {
    Set<String> literals = new TreeSet<>();
    Set<String> said = new TreeSet<>();
    Set<String> spoken = new TreeSet<>();
    try (Stream<Path> files = Files.walk(Path.of(folder))) {
      for (Path file : files.filter(Sources::isSource).toList()) {
        String text = Files.readString(file);
        SAID.matcher(text).results().forEach(found -> said.add(found.group(1)));
        String code = COMMENT.matcher(text).replaceAll("");
        literals.addAll(literals(code));
        literals(PROGRAMMERS.matcher(code).replaceAll("")).stream()
            .filter(literal -> SPOKEN.matcher(literal).find())
            .forEach(spoken::add);
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    literals.addAll(said);
    return new Sources(literals, said, spoken);
  }

  private static List<String> literals(String code) {
    return LITERAL.matcher(code).results().map(found -> found.group(1)).toList();
  }

  private static boolean isSource(Path file) {
    return file.toString().endsWith(".java") || file.toString().endsWith(".jte");
  }

  /** Whether a key stands there whole, or put together from a beginning or an end. */
  boolean isUsed(String key) {
    if (literals.contains(key)) {
      return true;
    }
    Matcher listed = Pattern.compile("(.*)\\.\\d+(\\.term)?").matcher(key);
    return (listed.matches() && literals.contains(listed.group(1)))
        || literals.stream().anyMatch(text -> begins(key, text) || ends(key, text));
  }

  private static boolean begins(String key, String text) {
    return text.length() > 2 && text.endsWith(".") && key.startsWith(text);
  }

  private boolean ends(String key, String text) {
    return text.length() > 2
        && text.startsWith(".")
        && key.endsWith(text)
        && literals.contains(key.substring(0, key.length() - text.length()));
  }
}
