package sagbook.logfile;

import java.io.Closeable;
import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import sagbook.issue.InputProblem;
import sagbook.issue.IssueStore;
import sagbook.issue.RowIssue;

/** The rows of a delimited text that have a readable time; the others are counted by reason. */
final class TableLines implements Closeable {
  private final FilePlan plan;
  private final LineReader lines;
  private final Fields fields;
  private final Clock clock;
  private final IssueStore issues;
  private final long firstLine;
  private final long lastLine;
  private final int otherCount;
  private double timeS = Double.NaN;

  /** Reads the lines {@code firstLine} to {@code lastLine} of {@code in}. */
  TableLines(FilePlan plan, InputStream in, IssueStore issues, long firstLine, long lastLine)
      throws IOException {
    this.plan = plan;
    this.lines = Head.open(in, plan.charset(), plan.source().name());
    this.fields = new Fields(plan.dialect().delimiter());
    this.clock = new Clock(plan.clock(), plan.dialect().decimalComma());
    this.issues = issues;
    this.firstLine = Math.max(firstLine, plan.dialect().firstDataLine());
    this.lastLine = lastLine;
    this.otherCount = plan.dialect().names().size();
  }

  Fields fields() {
    return fields;
  }

  double timeS() {
    return timeS;
  }

  long line() {
    return lines.number();
  }

  /** Moves to the next good row; false at the end. */
  boolean next() throws IOException, InputProblem {
    while (lines.number() < lastLine && lines.next()) {
      if (lines.number() < firstLine || isBlankOrComment()) {
        continue;
      }
      fields.split(lines);
      if (fields.count() != plan.dialect().fieldCount() && fields.count() != otherCount) {
        reject(isHeader() ? RowIssue.REPEATED_HEADER : RowIssue.TORN_ROW);
        continue;
      }
      timeS = clock.read(fields);
      if (Double.isNaN(timeS)) {
        reject(isHeader() ? RowIssue.REPEATED_HEADER : RowIssue.UNREADABLE_TIME);
        continue;
      }
      return true;
    }
    return false;
  }

  private boolean isBlankOrComment() {
    char[] c = lines.buffer();
    int at = lines.start();
    while (at < lines.end() && c[at] <= ' ') {
      at++;
    }
    return at == lines.end() || c[at] == '#';
  }

  private boolean isHeader() {
    int field = plan.clock().field();
    List<String> names = plan.dialect().names();
    return field < fields.count() && fields.field(field).equals(names.get(field));
  }

  private void reject(RowIssue issue) {
    issues.add(issue, plan.source().name(), lines.number());
  }

  @Override
  public void close() throws IOException {
    lines.close();
  }
}
