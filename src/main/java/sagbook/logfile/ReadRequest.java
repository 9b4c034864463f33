package sagbook.logfile;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import sagbook.model.PackDescription;

/**
 * What to read.
 *
 * @param pack as described by the keeper
 * @param logs files, folders or patterns, as given
 * @param from leave out what is earlier
 * @param to leave out what is this late or later
 * @param columns a column mapping written by {@code preview} and edited by the keeper
 */
public record ReadRequest(
    PackDescription pack,
    List<String> logs,
    Optional<Instant> from,
    Optional<Instant> to,
    Optional<Path> columns) {
  public ReadRequest {
    logs = List.copyOf(logs);
  }
}
