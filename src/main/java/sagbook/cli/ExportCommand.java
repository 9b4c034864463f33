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
import sagbook.record.store.RecordCsv;
import sagbook.record.store.RecordFile;
import sagbook.report.SeasonFolder;
import sagbook.wording.Words;

/** A season's results as tables for notebooks. */
@Command(name = "export", mixinStandardHelpOptions = true, versionProvider = Version.class)
public final class ExportCommand implements Callable<Integer> {
  private static final Words WORDS = Words.english();

  @Spec private CommandSpec spec;

  @Option(names = "--pack", paramLabel = "FILE")
  private @Nullable Path pack;

  @Option(names = "--record", paramLabel = "FILE")
  private @Nullable Path record;

  @Option(names = "--tables", paramLabel = "DIR")
  private @Nullable Path tables;

  @Option(names = "--out", paramLabel = "DIR")
  private @Nullable Path out;

  @Option(names = "--columns", paramLabel = "FILE")
  private @Nullable Path columns;

  @Parameters(arity = "0..*", paramLabel = "LOG")
  private List<String> logs = List.of();

  @Override
  public Integer call() throws InputProblem {
    PrintWriter stdout = spec.commandLine().getOut();
    PrintWriter err = spec.commandLine().getErr();
    String done =
        record != null
            ? ofRecord(record)
            : ofLogs(
                wanted(pack, "problem.export.pack"),
                wanted(folder(), "problem.export.tables"),
                err);
    stdout.println(done);
    stdout.flush();
    return ExitCode.WELL;
  }

  private @Nullable Path folder() {
    return tables != null ? tables : out;
  }

  private static Path wanted(@Nullable Path path, String key) throws InputProblem {
    if (path == null) {
      throw InputProblem.usage(key);
    }
    return path;
  }

  private String ofRecord(Path file) throws InputProblem {
    wanted(folder(), "problem.export.folder");
    if (!logs.isEmpty()) {
      throw InputProblem.usage("problem.export.either");
    }
    try (RecordFile kept = RecordFile.existing(file)) {
      if (tables != null) {
        SeasonFolder.write(kept.months(), kept.diary(), tables);
      }
      if (out != null) {
        SeasonFolder.write(RecordCsv.files(kept), out);
      }
    }
    return WORDS.say(tables != null ? "export.tables" : "export.record", String.valueOf(folder()));
  }

  private String ofLogs(Path described, Path to, PrintWriter err) throws InputProblem {
    if (logs.isEmpty()) {
      throw InputProblem.usage("problem.export.logs");
    }
    ReadRequest request =
        new ReadRequest(
            PackFile.read(described),
            logs,
            Optional.empty(),
            Optional.empty(),
            Optional.ofNullable(columns));
    SortedMap<YearMonth, CheckResult> months;
    try (Progress progress = Progress.watched(err)) {
      months = Season.run(request, Version.current(), progress::at);
    }
    SeasonFolder.write(months, to);
    return WORDS.say(
        months.size() == 1 ? "export.month" : "export.months",
        Integer.toString(months.size()),
        to.toString());
  }
}
