package sagbook.logfile;

import org.jspecify.annotations.Nullable;
import sagbook.issue.InputProblem;

/** Counts text where numbers are expected and keeps the first place. */
final class TextFound {
  /** One garbled value in so many rows is damage to live with; more is a wrong column. */
  private static final long ROWS_A_TEXT = 10_000;

  private long count;
  private @Nullable InputProblem first;

  void add(String file, long line, int field, String name, String text) {
    count++;
    if (first == null) {
      first =
          InputProblem.input(
              "problem.log.number",
              InputProblem.quoted(file),
              Long.toString(line),
              Integer.toString(field + 1),
              InputProblem.quoted(name),
              InputProblem.quoted(text));
    }
  }

  /** Complains when there is more of it than damage explains. */
  void refuseTooMuch(long rows) throws InputProblem {
    if (first != null && count > rows / ROWS_A_TEXT) {
      throw first;
    }
  }
}
