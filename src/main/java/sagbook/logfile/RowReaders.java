package sagbook.logfile;

import java.io.IOException;
import java.io.InputStream;
import java.util.Optional;
import sagbook.issue.IssueStore;

/** Makes the reader that a file's plan asks for. */
final class RowReaders {
  private RowReaders() {}

  /** A reader of the whole file. */
  static RowReader open(
      FilePlan plan, Slots slots, InputStream in, IssueStore issues, TextFound texts)
      throws IOException {
    return open(plan, slots, in, issues, texts, 1, Long.MAX_VALUE);
  }

  /** A reader of the lines {@code firstLine} to {@code lastLine}. */
  static RowReader open(
      FilePlan plan,
      Slots slots,
      InputStream in,
      IssueStore issues,
      TextFound texts,
      long firstLine,
      long lastLine)
      throws IOException {
    TableLines lines = new TableLines(plan, in, issues, firstLine, lastLine);
    Optional<TallLayout> tall = plan.tall();
    return tall.isPresent()
        ? new TallReader(plan, tall.get(), slots, lines, issues, texts)
        : new WideReader(plan, slots, lines, issues, texts);
  }
}
