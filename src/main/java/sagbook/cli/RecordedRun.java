package sagbook.cli;

import java.nio.file.Path;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import sagbook.issue.InputProblem;
import sagbook.logfile.ReadRequest;
import sagbook.pipeline.RecordedCheck;
import sagbook.record.CheckResult;
import sagbook.record.KeptMonth;
import sagbook.record.KnownFiles;
import sagbook.record.store.RecordFile;
import sagbook.report.SeasonIndex;
import sagbook.verdict.Severity;
import sagbook.wording.Words;

/** A check with a record: what is new is checked, reported and kept, month by month. */
final class RecordedRun {
  private static final Words WORDS = Words.english();

  private final ReadRequest request;
  private final Path file;
  private final String settings;
  private final Path out;
  private final Writer writer;
  private final List<String> said = new ArrayList<>();
  private @Nullable CheckResult newest;
  private Severity severity = Severity.WELL;

  /** Writes one month's report. */
  interface Writer {
    void write(CheckResult result, Path folder) throws InputProblem;
  }

  /**
   * A run.
   *
   * @param file the record
   * @param settings hash of all that is told besides the logs
   * @param out folder of the newest month's report; with several months each has a folder in it
   * @param writer writes a month's report into its folder
   */
  RecordedRun(ReadRequest request, Path file, String settings, Path out, Writer writer) {
    this.request = request;
    this.file = file;
    this.settings = settings;
    this.out = out;
    this.writer = writer;
  }

  /** Checks what is new; the newest month's result, if anything was. */
  Optional<CheckResult> check(Consumer<String> progress) throws InputProblem {
    try (RecordFile record = RecordFile.open(file)) {
      String software = Version.current();
      RecordedCheck.Outcome outcome =
          RecordedCheck.run(
              request,
              new KnownFiles(record.months(), software, settings),
              software,
              progress,
              (month, result, alone) -> take(record, month, result, alone));
      if (outcome.checked().size() > 1) {
        SeasonIndex.write(out);
      }
      tell(outcome);
      if (newest != null) {
        writer.write(newest, out);
      } else {
        severity =
            record.months().stream()
                .max(Comparator.comparing(KeptMonth::middle))
                .map(month -> month.bank().severity())
                .orElse(Severity.WELL);
      }
    }
    return Optional.ofNullable(newest);
  }

  /** What was done, plain sentences. */
  List<String> said() {
    return List.copyOf(said);
  }

  /** That of the newest month. */
  Severity severity() {
    return severity;
  }

  private void take(RecordFile record, YearMonth month, CheckResult result, boolean alone)
      throws InputProblem {
    if (!alone) {
      writer.write(result, out.resolve(month.toString()));
    }
    record.keep(KeptMonth.of(result, settings));
    newest = result;
    severity = result.severity();
  }

  private void tell(RecordedCheck.Outcome outcome) {
    said.addAll(outcome.leftOut());
    if (outcome.checked().isEmpty()) {
      said.add(
          outcome.files() == 1
              ? WORDS.say("kept.nothing-new.one")
              : WORDS.say("kept.nothing-new", Integer.toString(outcome.files())));
      return;
    }
    if (outcome.known() > 0) {
      said.add(
          WORDS.say(
              "kept.known", Integer.toString(outcome.known()), Integer.toString(outcome.files())));
    }
    said.add(
        WORDS.say(
            "kept.in",
            file.toString(),
            outcome.checked().stream().map(YearMonth::toString).collect(Collectors.joining(", "))));
  }
}
