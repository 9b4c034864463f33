package sagbook.logfile;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import sagbook.issue.InputProblem;
import sagbook.issue.IssueStore;
import sagbook.issue.RowIssue;

/** Reads a table with one line a moment and one column a channel. */
final class WideReader implements RowReader {
  private final FilePlan plan;
  private final TableLines lines;
  private final NumberReader numbers;
  private final IssueStore issues;
  private final TextFound texts;
  private final Channel[] channels;
  private final int[] fieldOf;

  WideReader(FilePlan plan, Slots slots, TableLines lines, IssueStore issues, TextFound texts) {
    this.plan = plan;
    this.lines = lines;
    this.numbers = new NumberReader(plan.dialect().decimalComma());
    this.issues = issues;
    this.texts = texts;
    List<Channel> used = new ArrayList<>();
    List<Integer> fields = new ArrayList<>();
    for (Column column : plan.columns()) {
      Channel channel = Channel.of(column.meaning(), slots);
      if (channel.slot() >= 0) {
        used.add(channel);
        fields.add(column.field());
      }
    }
    this.channels = used.toArray(new Channel[0]);
    this.fieldOf = fields.stream().mapToInt(Integer::intValue).toArray();
  }

  @Override
  public boolean next(Row row) throws IOException, InputProblem {
    if (!lines.next()) {
      return false;
    }
    row.clear();
    row.timeS = lines.timeS();
    row.line = lines.line();
    row.lastLine = lines.lastLine();
    Fields fields = lines.fields();
    int count = fields.count();
    for (int i = 0; i < fieldOf.length; i++) {
      int field = fieldOf[i];
      if (field < count && !fields.isEmpty(field)) {
        put(channels[i], field, fields, row);
      }
    }
    return true;
  }

  private void put(Channel channel, int field, Fields fields, Row row) {
    double raw = numbers.read(fields.text(), fields.start(field), fields.end(field));
    if (Double.isNaN(raw)) {
      raw = channel.switched(fields.field(field));
    }
    if (!Double.isNaN(raw)) {
      channel.put(raw, row, issues, plan.source().name(), row.line);
    } else if (!NumberReader.isMissing(fields.text(), fields.start(field), fields.end(field))) {
      String name = plan.columns().get(field).name();
      issues.add(RowIssue.TEXT_VALUE, plan.source().name(), row.line);
      texts.add(plan.source().name(), row.line, field, name, fields.field(field));
    }
  }

  @Override
  public int missedChanges() {
    return lines.missedChanges();
  }

  @Override
  public void close() throws IOException {
    lines.close();
  }
}
