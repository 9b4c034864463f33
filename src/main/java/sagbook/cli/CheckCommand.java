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
@Command(
    name = "check",
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    description = {
      "Check the health of every cell from the exported logs, and write a report.",
      "",
      "The folder gets report.html, results.json and tables as CSV. They are replaced together or"
          + " not at all.",
      ""
    },
    footer = {
      "",
      "Examples:",
      "  sagbook check --pack pack.toml --out report logs/2026-06.csv.gz",
      "  sagbook check --pack pack.toml --out report --from 2026-06-01 --to 2026-07-01 logs",
      "  sagbook check --pack pack.toml --out report --record battery.db logs",
      "  sagbook check --pack pack.toml --out report --json 'logs/2026-*.csv' > results.json",
      "",
      "Exit codes: 0 all well, 10 something needs attention, 20 act now (limits were exceeded),",
      "2 the command or the pack description makes no sense, 3 a log can't be read, 4 the report",
      "can't be written."
    })
public final class CheckCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Option(
      names = "--pack",
      required = true,
      paramLabel = "FILE",
      description = "Pack description (TOML): name, chemistry, cells in series, nominal capacity.")
  private Path pack;

  @Option(
      names = "--out",
      required = true,
      paramLabel = "DIR",
      description = "Folder for the report; made when it isn't there.")
  private Path out;

  @Option(
      names = "--from",
      paramLabel = "DATE",
      description = "Leave out what is earlier: 2026-06-01, or with time and offset.")
  private @Nullable String from;

  @Option(names = "--to", paramLabel = "DATE", description = "Leave out this moment and later.")
  private @Nullable String to;

  @Option(
      names = "--columns",
      paramLabel = "FILE",
      description = "Column mapping for logs that can't be guessed; preview writes one to edit.")
  private @Nullable Path columns;

  @Option(
      names = "--record",
      paramLabel = "FILE",
      description = {
        "Keep the result in this battery's record (SQLite; made when it isn't there), which season"
            + " reads. Files that the record knows are not read again. Logs of more than a month"
            + " are checked month by month, each with a report of its own in a folder of DIR."
      })
  private @Nullable Path record;

  @Option(
      names = "--pdf",
      description =
          "Write the report as report.pdf too; from then on it is replaced with the rest.")
  private boolean pdf;

  @Option(names = "--json", description = "Print results.json and nothing else.")
  private boolean json;

  @Option(names = "--quiet", description = "Print nothing but problems.")
  private boolean quiet;

  @Parameters(
      arity = "1..*",
      paramLabel = "LOG",
      description =
          "Log files, folders or patterns, - for standard input; .gz and .zip are read as they are.")
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
