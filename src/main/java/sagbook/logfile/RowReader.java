package sagbook.logfile;

import java.io.Closeable;
import java.io.IOException;
import sagbook.issue.InputProblem;

/** Gives the rows of one file in the order in which they stand in it. */
interface RowReader extends Closeable {
  /**
   * Fills {@code row} with the next row.
   *
   * @return false at the end of the file
   */
  boolean next(Row row) throws IOException, InputProblem;

  /** How often a local clock was seen not to follow summer time. */
  int missedChanges();
}
