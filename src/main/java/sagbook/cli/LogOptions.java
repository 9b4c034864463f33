package sagbook.cli;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import sagbook.issue.InputProblem;
import sagbook.logfile.ReadRequest;
import sagbook.model.PackDescription;

/** Which logs of which battery are read, and how. */
final class LogOptions {
  @Mixin private final PackOption pack = new PackOption();

  @Option(names = "--columns", paramLabel = "FILE")
  private @Nullable Path columns;

  @Parameters(arity = "1..*", paramLabel = "LOG")
  private List<String> logs = List.of();

  /** All of the logs. */
  ReadRequest all() throws InputProblem {
    return between(pack.described(), Optional.empty(), Optional.empty());
  }

  /** What lies between two moments, where they are given. */
  ReadRequest between(PackDescription described, Optional<Instant> from, Optional<Instant> to) {
    return new ReadRequest(described, logs, from, to, Optional.ofNullable(columns));
  }

  PackOption pack() {
    return pack;
  }

  Optional<Path> columns() {
    return Optional.ofNullable(columns);
  }
}
