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
  /** 2005 to 2100: a clock without battery starts at 1970 or 2000, a garbled one anywhere. */
  private static final double EARLIEST_S = 1_104_537_600;

  private static final double LATEST_S = 4_102_444_800.0;

  private final FilePlan plan;
  private final LineReader lines;
  private final Fields fields;
  private final Clock clock;
  private final IssueStore issues;
  private final long firstLine;
  private final long lastLine;
  private final int otherCount;
  private final boolean mayBeReset;
  private long line;
  private double timeS = Double.NaN;

  /** Reads the lines {@code firstLine} to {@code lastLine} of {@code in}. */
  TableLines(FilePlan plan, InputStream in, IssueStore issues, long firstLine, long lastLine)
      throws IOException {
    this.plan = plan;
    this.lines = Head.open(in, plan.charset(), plan.source().name());
    this.fields = Fields.of(plan.dialect());
    this.clock = new Clock(plan.clock(), plan.dialect().decimalComma());
    this.issues = issues;
    this.firstLine = Math.max(firstLine, plan.dialect().firstDataLine());
    this.lastLine = lastLine;
    this.mayBeReset = plan.clock().kind() != ClockPlan.Kind.ELAPSED;
    this.otherCount = plan.dialect().names().size();
  }

  Fields fields() {
    return fields;
  }

  double timeS() {
    return timeS;
  }

  /** Physical line on which the row starts. */
  long line() {
    return line;
  }

  /** Physical line on which the row ends. */
  long lastLine() {
    return lines.number();
  }

  /** How often a local clock was seen not to follow summer time. */
  int missedChanges() {
    return clock.missedChanges();
  }

  /** Moves to the next good row; false at the end. */
  boolean next() throws IOException, InputProblem {
    while (lines.number() < lastLine && lines.next()) {
      if (lines.number() < firstLine || isBlankOrComment()) {
        continue;
      }
      line = lines.number();
      fields.split(lines);
      if (fields.count() != plan.dialect().fieldCount() && fields.count() != otherCount) {
        rejectUnreadable(RowIssue.TORN_ROW);
        continue;
      }
      timeS = clock.read(fields);
      if (Double.isNaN(timeS)) {
        rejectUnreadable(RowIssue.UNREADABLE_TIME);
        continue;
      }
      if (mayBeReset && !(timeS >= EARLIEST_S && timeS < LATEST_S)) {
        reject(RowIssue.STRAY_CLOCK);
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

  private void rejectUnreadable(RowIssue issue) throws InputProblem {
    if (!namesTime()) {
      reject(issue);
      return;
    }
    List<String> names = plan.dialect().names();
    List<String> found = HeaderFinder.withoutCommentSign(fields.all());
    if (!found.equals(names)) {
      throw InputProblem.input(
          "problem.log.other-names",
          InputProblem.quoted(plan.source().name()),
          Long.toString(lines.number()),
          PlanMaker.listed(found),
          PlanMaker.listed(names));
    }
    reject(RowIssue.REPEATED_HEADER);
  }

  private boolean namesTime() {
    String timeName = plan.dialect().names().get(plan.clock().field());
    for (int i = 0; i < fields.count(); i++) {
      if (fields.field(i).equals(timeName)) {
        return true;
      }
    }
    return false;
  }

  private void reject(RowIssue issue) {
    issues.add(issue, plan.source().name(), lines.number());
  }

  @Override
  public void close() throws IOException {
    lines.close();
  }
}
