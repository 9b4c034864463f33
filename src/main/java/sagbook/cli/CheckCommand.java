package sagbook.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import sagbook.issue.InputProblem;
import sagbook.logfile.ReadRequest;
import sagbook.model.PackDescription;
import sagbook.packfile.PackFile;
import sagbook.pipeline.Check;
import sagbook.record.CheckResult;
import sagbook.record.ResultsJson;
import sagbook.report.ReportFolder;

/** The monthly health check. */
@Command(name = "check", mixinStandardHelpOptions = true, versionProvider = Version.class)
public final class CheckCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Option(names = "--pack", required = true, paramLabel = "FILE")
  private Path pack;

  @Option(names = "--out", required = true, paramLabel = "DIR")
  private Path out;

  @Option(names = "--from", paramLabel = "DATE")
  private @Nullable String from;

  @Option(names = "--to", paramLabel = "DATE")
  private @Nullable String to;

  @Option(names = "--columns", paramLabel = "FILE")
  private @Nullable Path columns;

  @Option(names = "--record", paramLabel = "FILE")
  private @Nullable Path record;

  @Option(names = "--pdf")
  private boolean pdf;

  @Option(names = "--json")
  private boolean json;

  @Option(names = "--quiet")
  private boolean quiet;

  @Parameters(arity = "1..*", paramLabel = "LOG")
  private List<String> logs;

  @Override
  public Integer call() {
    PrintWriter stdout = spec.commandLine().getOut();
    PrintWriter err = spec.commandLine().getErr();
    try {
      PackDescription described = PackFile.read(pack);
      ReadRequest request =
          new ReadRequest(
              described,
              logs,
              moment("--from", from, described.timezone()),
              moment("--to", to, described.timezone()),
              Optional.ofNullable(columns));
      if (record != null) {
        return recorded(request, record, stdout, err);
      }
      CheckResult result = Check.run(request, Version.current(), progress(err));
      write(result, out);
      print(result, stdout);
      return ExitCode.of(result.severity());
    } catch (InputProblem problem) {
      err.println(problem.sentence());
      err.flush();
      return ExitCode.of(problem);
    }
  }

  private void write(CheckResult result, Path folder) throws InputProblem {
    if (pdf) {
      ReportFolder.writeWithPdf(result, folder);
    } else {
      ReportFolder.write(result, folder);
    }
  }

  private int recorded(ReadRequest request, Path file, PrintWriter stdout, PrintWriter err)
      throws InputProblem {
    String settings = SettingsHash.of(pack, columns, from, to);
    Set<String> noLogs = new HashSet<>();
    noLogs.add(pack.toString().replace('\\', '/'));
    noLogs.add(String.valueOf(columns).replace('\\', '/'));
    RecordedRun run = new RecordedRun(request.without(noLogs), file, settings, out, this::write);
    Optional<CheckResult> newest = run.check(progress(err));
    if (newest.isPresent()) {
      print(newest.get(), stdout);
    }
    if (!quiet && !json) {
      run.said().forEach(stdout::println);
    }
    stdout.flush();
    return ExitCode.of(run.severity());
  }

  private void print(CheckResult result, PrintWriter stdout) {
    if (json) {
      stdout.print(ResultsJson.text(result));
    } else if (!quiet) {
      new Summary(result).print(stdout, out.resolve("report.html"));
    }
    stdout.flush();
  }

  /** Progress goes to a terminal only; through a pipe or from cron there is silence. */
  @SuppressWarnings("SystemConsoleNull")
  private Consumer<String> progress(PrintWriter err) {
    boolean terminal = System.console() != null && !quiet && !json;
    return words -> {
      if (terminal) {
        err.println(words + " ...");
        err.flush();
      }
    };
  }

  private static Optional<Instant> moment(String option, @Nullable String text, ZoneId zone)
      throws InputProblem {
    if (text == null) {
      return Optional.empty();
    }
    try {
      return Optional.of(
          text.length() <= 10
              ? LocalDate.parse(text).atStartOfDay(zone).toInstant()
              : OffsetDateTime.parse(text).toInstant());
    } catch (DateTimeException wrong) {
      throw InputProblem.usage("problem.option.moment", option, InputProblem.quoted(text));
    }
  }
}
