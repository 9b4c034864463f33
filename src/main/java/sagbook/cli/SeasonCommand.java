package sagbook.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import sagbook.issue.InputProblem;
import sagbook.record.DiaryEvent;
import sagbook.record.KeptMonth;
import sagbook.record.store.RecordFile;
import sagbook.report.SeasonPages;
import sagbook.season.Season;
import sagbook.season.SeasonResult;
import sagbook.wording.Words;

/** What the months of a record show together. */
@Command(name = "season", mixinStandardHelpOptions = true, versionProvider = Version.class)
public final class SeasonCommand implements Callable<Integer> {
  private static final Words WORDS = Words.english();

  @Spec private CommandSpec spec;

  @Option(names = "--record", required = true, paramLabel = "FILE")
  private Path record;

  @Option(names = "--out", required = true, paramLabel = "DIR")
  private Path out;

  @Option(names = "--dossier")
  private boolean dossier;

  @Option(names = "--dated", paramLabel = "DATE")
  private @Nullable String dated;

  @Option(names = "--quiet")
  private boolean quiet;

  @Override
  public Integer call() throws InputProblem {
    PrintWriter stdout = spec.commandLine().getOut();
    List<KeptMonth> months;
    List<DiaryEvent> diary;
    try (RecordFile file = RecordFile.existing(record)) {
      months = file.months();
      diary = file.diary();
    }
    if (months.isEmpty()) {
      throw InputProblem.input("problem.record.empty", InputProblem.quoted(record.toString()));
    }
    SeasonResult season = Season.of(months, diary);
    if (dossier) {
      SeasonPages.writeWithDossier(season, diary, Version.current(), made(), out);
    } else {
      SeasonPages.write(season, diary, Version.current(), out);
    }
    if (!quiet) {
      for (SeasonResult.Bank bank : season.banks()) {
        stdout.println(
            season.banks().size() > 1
                ? WORDS.say("terminal.season.bank", bank.bank(), bank.headline())
                : bank.headline());
      }
      stdout.println(WORDS.say("terminal.season", out.resolve("season.html").toString()));
      stdout.flush();
    }
    boolean drifts =
        season.banks().stream()
            .flatMap(bank -> bank.cells().stream())
            .anyMatch(SeasonResult.Cell::isDrifting);
    return drifts ? ExitCode.ATTENTION : ExitCode.WELL;
  }

  private Optional<LocalDate> made() throws InputProblem {
    try {
      return Optional.ofNullable(dated).map(LocalDate::parse);
    } catch (DateTimeException wrong) {
      throw InputProblem.usage(
          "problem.option.date", "--dated", InputProblem.quoted(String.valueOf(dated)));
    }
  }
}
