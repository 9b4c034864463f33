package sagbook.logfile;

import java.nio.file.Path;
import java.time.Instant;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import sagbook.model.PackDescription;

/**
 * What to read.
 *
 * @param pack as described by the keeper
 * @param logs files, folders or patterns, as given; "-" is standard input
 * @param from leave out what is earlier
 * @param to leave out what is this late or later
 * @param columns a column mapping written by {@code preview} and edited by the keeper
 * @param leftOut names of files among {@code logs} that are not to be read
 */
public record ReadRequest(
    PackDescription pack,
    List<String> logs,
    Optional<Instant> from,
    Optional<Instant> to,
    Optional<Path> columns,
    Set<String> leftOut) {
  public ReadRequest {
    logs = List.copyOf(logs);
    leftOut = Set.copyOf(leftOut);
  }

  /** All that {@code logs} stands for. */
  public ReadRequest(
      PackDescription pack,
      List<String> logs,
      Optional<Instant> from,
      Optional<Instant> to,
      Optional<Path> columns) {
    this(pack, logs, from, to, columns, Set.of());
  }

  /** The same without some more files. */
  public ReadRequest without(Set<String> files) {
    Set<String> all = new HashSet<>(leftOut);
    all.addAll(files);
    return new ReadRequest(pack, logs, from, to, columns, all);
  }

  /** The same for what of its time lies in a part. */
  public ReadRequest between(Instant start, Instant end) {
    return new ReadRequest(
        pack,
        logs,
        Optional.of(from.filter(start::isBefore).orElse(start)),
        Optional.of(to.filter(end::isAfter).orElse(end)),
        columns,
        leftOut);
  }
}
