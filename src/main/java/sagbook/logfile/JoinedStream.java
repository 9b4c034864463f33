package sagbook.logfile;

import java.io.IOException;
import java.util.List;
import sagbook.issue.InputProblem;

/** The rows of the log with the cell voltages, filled up from the logs beside it. */
final class JoinedStream implements RowStream {
  private final RowStream leading;
  private final List<Companion> companions;

  JoinedStream(RowStream leading, List<Companion> companions) {
    this.leading = leading;
    this.companions = List.copyOf(companions);
  }

  @Override
  public boolean next(Row row) throws InputProblem {
    if (!leading.next(row)) {
      return false;
    }
    for (Companion companion : companions) {
      companion.fill(row);
    }
    return true;
  }

  @Override
  public void close() throws IOException {
    leading.close();
    for (Companion companion : companions) {
      companion.close();
    }
  }
}
