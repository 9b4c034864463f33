package sagbook.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.HashSet;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import sagbook.issue.InputProblem;
import sagbook.logfile.ReadRequest;
import sagbook.model.PackDescription;
import sagbook.pipeline.Check;
import sagbook.record.CheckResult;
import sagbook.record.ResultsJson;
import sagbook.report.ReportFolder;

/** The monthly health check. */
@Command(name = "check", mixinStandardHelpOptions = true, versionProvider = Version.class)
public final class CheckCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Mixin private LogOptions logs;

  @Option(names = "--out", required = true, paramLabel = "DIR")
  private Path out;

  @Option(names = "--from", paramLabel = "DATE")
  private @Nullable String from;

  @Option(names = "--to", paramLabel = "DATE")
  private @Nullable String to;

  @Option(names = "--record", paramLabel = "FILE")
  private @Nullable Path record;

  @Option(names = "--pdf")
  private boolean pdf;

  @Option(names = "--json")
  private boolean json;

  @Option(names = "--quiet")
  private boolean quiet;

  @Override
  public Integer call() throws InputProblem {
    PrintWriter stdout = spec.commandLine().getOut();
    PrintWriter err = spec.commandLine().getErr();
    PackDescription described = logs.pack().described();
    ReadRequest request =
        logs.between(
            described,
            moment("--from", from, described.timezone()),
            moment("--to", to, described.timezone()));
    if (record != null) {
      return recorded(request, record, stdout, err);
    }
    CheckResult result = Check.run(request, Version.current(), progress(err));
    write(result, out);
    print(result, stdout);
    return ExitCode.of(result.severity());
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
    String settings = SettingsHash.of(logs.pack().file(), logs.columns(), from, to);
    Set<String> noLogs = new HashSet<>();
    noLogs.add(logs.pack().file().toString().replace('\\', '/'));
    logs.columns().ifPresent(mapping -> noLogs.add(mapping.toString().replace('\\', '/')));
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
