package sagbook.logfile;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import sagbook.issue.InputProblem;
import sagbook.issue.IssueStore;
import sagbook.issue.RowIssue;

/**
 * Reads a table with one line a value (time, channel, value) or one line a cell (time, cell,
 * voltage, temperature). Lines with the same time that follow each other make one row.
 */
final class TallReader implements RowReader {
  /** Names beyond this many are not kept, so that memory stays bounded. */
  private static final int MOST_NAMES = 10_000;

  private final FilePlan plan;
  private final TallLayout layout;
  private final Slots slots;
  private final TableLines lines;
  private final NumberReader numbers;
  private final IssueStore issues;
  private final TextFound texts;
  private final Map<String, List<Target>> targets = new HashMap<>();
  private boolean waiting;
  private int highestCell;

  /** A value's column and where it goes. */
  private record Target(int field, Channel channel) {}

  TallReader(
      FilePlan plan,
      TallLayout layout,
      Slots slots,
      TableLines lines,
      IssueStore issues,
      TextFound texts) {
    this.plan = plan;
    this.layout = layout;
    this.slots = slots;
    this.lines = lines;
    this.numbers = new NumberReader(plan.dialect().decimalComma());
    this.issues = issues;
    this.texts = texts;
  }

  /** Highest cell number with a voltage seen so far. */
  int highestCell() {
    return highestCell;
  }

  @Override
  public boolean next(Row row) throws IOException, InputProblem {
    if (!waiting && !lines.next()) {
      return false;
    }
    waiting = false;
    row.clear();
    row.timeS = lines.timeS();
    row.line = lines.line();
    row.lastLine = lines.lastLine();
    take(row);
    while (lines.next()) {
      if (lines.timeS() != row.timeS || !take(row)) {
        waiting = true;
        return true;
      }
      row.lastLine = lines.lastLine();
    }
    return true;
  }

  /** Takes the current line into the row; false when that channel is already filled. */
  private boolean take(Row row) {
    Fields fields = lines.fields();
    List<Target> each = targets(fields);
    if (each.isEmpty()) {
      issues.add(RowIssue.UNKNOWN_CHANNEL, plan.source().name(), lines.line());
      return true;
    }
    for (Target target : each) {
      boolean shared = layout.valueField() < 0 && target.channel().slot() == slots.current();
      if (!shared && !Double.isNaN(row.values[target.channel().slot()])) {
        return false;
      }
    }
    for (Target target : each) {
      put(target, fields, row);
    }
    return true;
  }

  private void put(Target target, Fields fields, Row row) {
    int field = target.field();
    if (field >= fields.count() || fields.isEmpty(field)) {
      return;
    }
    double raw = numbers.read(fields.text(), fields.start(field), fields.end(field));
    if (Double.isNaN(raw)) {
      raw = target.channel().switched(fields.field(field));
    }
    if (!Double.isNaN(raw)) {
      target.channel().put(raw, row, issues, plan.source().name(), lines.line());
    } else if (!NumberReader.isMissing(fields.text(), fields.start(field), fields.end(field))) {
      String name = plan.columns().get(field).name();
      issues.add(RowIssue.TEXT_VALUE, plan.source().name(), lines.line());
      texts.add(plan.source().name(), lines.line(), field, name, fields.field(field));
    }
  }

  private List<Target> targets(Fields fields) {
    String key =
        part(fields, layout.cellField())
            + '\u0000'
            + part(fields, layout.channelField())
            + '\u0000'
            + part(fields, layout.unitField());
    List<Target> known = targets.get(key);
    if (known == null) {
      known = resolve(fields);
      if (targets.size() < MOST_NAMES) {
        targets.put(key, known);
      }
    }
    return known;
  }

  private static String part(Fields fields, int field) {
    return field < 0 || field >= fields.count() ? "" : fields.field(field);
  }

  private List<Target> resolve(Fields fields) {
    List<Target> found = new ArrayList<>();
    TallNames names = new TallNames(layout);
    String cell = part(fields, layout.cellField());
    if (layout.valueField() >= 0) {
      String unit = part(fields, layout.unitField());
      names
          .meaning(cell, part(fields, layout.channelField()), unit)
          .ifPresent(meaning -> add(found, layout.valueField(), meaning));
      return found;
    }
    for (Column column : plan.columns()) {
      Optional<Meaning> meaning = names.ofColumn(cell, column.meaning());
      meaning.ifPresent(m -> add(found, column.field(), m));
    }
    return found;
  }

  private void add(List<Target> found, int field, Meaning meaning) {
    if (meaning.quantity() == Quantity.CELL_VOLTAGE) {
      highestCell = Math.max(highestCell, meaning.cell());
    }
    Channel channel = Channel.of(meaning, slots);
    if (channel.slot() >= 0) {
      found.add(new Target(field, channel));
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
