package sagbook.report;

import java.io.IOException;
import java.net.URI;
import java.net.URISyntaxException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import sagbook.issue.InputProblem;
import sagbook.record.KeptCheck;
import sagbook.report.html.SeasonPage;
import sagbook.wording.Words;

/** index.html over the reports that lie side by side in a folder, one folder a check. */
public final class SeasonIndex {
  private SeasonIndex() {}

  /**
   * Reads every report in a folder's own folders and writes the page over them.
   *
   * @param season the folder with the reports' folders
   * @return how many reports it lists
   */
  public static int write(Path season) throws InputProblem {
    Map<String, KeptCheck> checks = new TreeMap<>();
    try {
      for (Path folder : folders(season)) {
        String name = address(String.valueOf(folder.getFileName()));
        checks.put(name, read(folder.resolve("results.json")));
      }
    } catch (IOException e) {
      throw InputProblem.input(e, "problem.reports.read", InputProblem.quoted(season.toString()));
    }
    if (checks.isEmpty()) {
      throw InputProblem.input("problem.reports.none", InputProblem.quoted(season.toString()));
    }
    byte[] page = SeasonPage.html(checks, Words.english()).getBytes(StandardCharsets.UTF_8);
    try {
      WholeFolder.write(season, Map.of("index.html", page));
    } catch (IOException e) {
      throw InputProblem.output(e, "problem.write.index", InputProblem.quoted(season.toString()));
    }
    return checks.size();
  }

  private static List<Path> folders(Path season) throws IOException {
    try (Stream<Path> inside = Files.list(season)) {
      return inside
          .filter(folder -> Files.isRegularFile(folder.resolve("results.json")))
          .filter(folder -> Files.isRegularFile(folder.resolve("report.html")))
          .sorted()
          .toList();
    }
  }

  private static KeptCheck read(Path file) throws IOException, InputProblem {
    try {
      return KeptCheck.parse(Files.readString(file));
    } catch (IllegalArgumentException e) {
      throw InputProblem.input(
          e,
          "problem.reports.other",
          InputProblem.quoted(file.toString()),
          String.valueOf(e.getMessage()));
    }
  }

  /** A folder's name as a relative address. */
  private static String address(String name) {
    try {
      return new URI(null, null, "./" + name, null).toASCIIString();
    } catch (URISyntaxException e) {
      throw new IllegalStateException(name, e);
    }
  }
}
