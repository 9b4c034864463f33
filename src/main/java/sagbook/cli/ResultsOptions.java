package sagbook.cli;

import java.nio.file.Path;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import sagbook.issue.InputProblem;
import sagbook.record.KeptString;

/** Which string of an earlier check's results is meant. */
final class ResultsOptions {
  @Option(names = "--results", paramLabel = "PATH")
  private @Nullable Path results;

  @Option(names = "--bank", paramLabel = "NAME")
  private @Nullable String bank;

  /** The string, where results were named. */
  Optional<KeptString> string() throws InputProblem {
    return results == null ? Optional.empty() : Optional.of(KeptResults.of(results, bank));
  }

  /** The string; of these results where none were named. */
  KeptString stringOr(Path usual) throws InputProblem {
    return KeptResults.of(results == null ? usual : results, bank);
  }
}
