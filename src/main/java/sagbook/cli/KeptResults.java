package sagbook.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;
import sagbook.issue.InputProblem;
import sagbook.record.KeptString;
import sagbook.wording.Words;

/** Results of an earlier check, found on disk. */
final class KeptResults {
  private static final Words WORDS = Words.english();

  private KeptResults() {}

  /**
   * One string of the results.
   *
   * @param path folder of a report, or its results.json
   * @param bank which one; may be left out where there is but one
   */
  static KeptString of(Path path, @Nullable String bank) throws InputProblem {
    List<KeptString> strings = read(path);
    for (KeptString string : strings) {
      if (string.bank().equals(bank) || (bank == null && strings.size() == 1)) {
        return string;
      }
    }
    List<String> names = strings.stream().map(KeptString::bank).toList();
    throw InputProblem.usage(
        "problem.option.bank",
        bank == null ? WORDS.say("problem.option.missing") : InputProblem.quoted(bank),
        InputProblem.quoted(String.join(", ", names)));
  }

  private static List<KeptString> read(Path path) throws InputProblem {
    Path file = Files.isDirectory(path) ? path.resolve("results.json") : path;
    try {
      return KeptString.parse(Files.readString(file));
    } catch (IOException e) {
      throw InputProblem.input(e, "problem.results.read", InputProblem.quoted(file.toString()));
    } catch (IllegalArgumentException e) {
      throw InputProblem.input(
          e,
          "problem.results.other",
          InputProblem.quoted(file.toString()),
          String.valueOf(e.getMessage()));
    }
  }
}
