package sagbook.logfile;

import java.io.Closeable;
import sagbook.issue.InputProblem;

/** Rows in rising time order, from any number of files. */
interface RowStream extends Closeable {
  /**
   * Fills {@code row} with the next row.
   *
   * @return false at the end
   */
  boolean next(Row row) throws InputProblem;
}
