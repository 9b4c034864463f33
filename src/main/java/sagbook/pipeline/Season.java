package sagbook.pipeline;

import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.Instant;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Consumer;
import sagbook.issue.InputProblem;
import sagbook.logfile.LogFolder;
import sagbook.logfile.OpenedLogs;
import sagbook.logfile.ReadReport;
import sagbook.logfile.ReadRequest;
import sagbook.record.CheckResult;
import sagbook.wording.Words;

/** One check for every calendar month of the logs. */
public final class Season {
  private static final Words WORDS = Words.english();

  private Season() {}

  /**
   * Runs the checks. The logs are read once as a whole, to learn which file holds which time, and
   * then month by month.
   *
   * @param softwareVersion goes into the results
   * @param progress told in a few words what is being done
   * @return the months in order, in the pack's time zone; one with less than a day of log is left
   *     out
   */
  public static SortedMap<YearMonth, CheckResult> run(
      ReadRequest request, String softwareVersion, Consumer<String> progress) throws InputProblem {
    progress.accept(WORDS.say("progress.looking"));
    MonthSpans spans = new MonthSpans(request.pack().timezone());
    List<ReadReport.Input> files = new ArrayList<>();
    OpenedLogs logs = LogFolder.open(request);
    for (String bank : logs.banks()) {
      files.addAll(logs.read(bank, spans).inputs());
    }
    SortedMap<YearMonth, CheckResult> months = new TreeMap<>();
    for (Map.Entry<YearMonth, MonthSpans.Span> month : spans.ofADayOrMore().entrySet()) {
      progress.accept(WORDS.say("progress.checking", month.getKey().toString()));
      months.put(
          month.getKey(),
          Check.run(
              part(request, month.getValue().from(), month.getValue().to(), files),
              softwareVersion,
              words -> {}));
    }
    if (months.isEmpty()) {
      throw InputProblem.input("problem.log.day");
    }
    return months;
  }

  private static ReadRequest part(
      ReadRequest request, Instant from, Instant to, List<ReadReport.Input> files) {
    List<String> own =
        files.stream()
            .filter(file -> file.first().isBefore(to) && !file.last().isBefore(from))
            .map(ReadReport.Input::file)
            .toList();
    return new ReadRequest(
        request.pack(),
        own.stream().allMatch(Season::isFile) ? own : request.logs(),
        Optional.of(from),
        Optional.of(to),
        request.columns());
  }

  /** What lies in an archive has a name that is not a file's. */
  private static boolean isFile(String name) {
    try {
      return Files.isRegularFile(Path.of(name));
    } catch (InvalidPathException e) {
      return false;
    }
  }
}
