package sagbook.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.YearMonth;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import sagbook.issue.InputProblem;
import sagbook.logfile.ReadRequest;
import sagbook.packfile.PackFile;
import sagbook.pipeline.Season;
import sagbook.record.CheckResult;
import sagbook.report.SeasonFolder;

/** A season's results as tables for notebooks. */
@Command(
    name = "export",
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    description = {
      "Check every calendar month of the logs and write the results as tables for notebooks.",
      "",
      "The folder gets estimates.csv, cells.csv, banks.csv, dictionary.csv, which says what each"
          + " column means, and season.ipynb, a notebook that draws the season. They are replaced"
          + " together or not at all.",
      ""
    },
    footer = {
      "",
      "Examples:",
      "  sagbook export --pack pack.toml --out notebooks logs",
      "  sagbook export --pack sample-logs/pack.toml --out notebooks-export sample-logs/logs",
      "",
      "Exit codes: 0 written, 2 the command or the pack description makes no sense, 3 a log can't",
      "be read, 4 the tables can't be written."
    })
public final class ExportCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Option(
      names = "--pack",
      required = true,
      paramLabel = "FILE",
      description = "Pack description (TOML), as for check.")
  private Path pack;

  @Option(
      names = "--out",
      required = true,
      paramLabel = "DIR",
      description = "Folder for the tables; made when it isn't there.")
  private Path out;

  @Option(
      names = "--columns",
      paramLabel = "FILE",
      description = "Column mapping for logs that can't be guessed; preview writes one to edit.")
  private @Nullable Path columns;

  @Parameters(
      arity = "1..*",
      paramLabel = "LOG",
      description = "Log files, folders or patterns; .gz is read as it is.")
  private List<String> logs;

  @Override
  public Integer call() {
    PrintWriter stdout = spec.commandLine().getOut();
    PrintWriter err = spec.commandLine().getErr();
    try {
      ReadRequest request =
          new ReadRequest(
              PackFile.read(pack),
              logs,
              Optional.empty(),
              Optional.empty(),
              Optional.ofNullable(columns));
      SortedMap<YearMonth, CheckResult> months;
      try (Progress progress = Progress.watched(err)) {
        months = Season.run(request, Version.current(), progress::at);
      }
      SeasonFolder.write(months, out);
      stdout.println(
          months.size()
              + (months.size() == 1 ? " month" : " months")
              + " checked; the tables and season.ipynb lie in "
              + out
              + ".");
      stdout.flush();
      return ExitCode.WELL;
    } catch (InputProblem problem) {
      err.println(problem.sentence());
      err.flush();
      return ExitCode.of(problem);
    }
  }
}
