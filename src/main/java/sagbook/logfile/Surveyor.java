package sagbook.logfile;

import java.io.IOException;
import java.io.InputStream;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import sagbook.issue.InputProblem;
import sagbook.issue.IssueStore;

/** Reads a whole file once to learn what only all its values can tell. */
final class Surveyor {
  /** More changes of direction than this and backward rows are left out instead. */
  static final int MOST_RUNS = 256;

  private final FilePlan plan;
  private final Slots slots;
  private final IssueStore issues = new IssueStore();
  private final TextFound texts = new TextFound();
  private final List<Run> runs = new ArrayList<>();
  private final Thinned intervals = new Thinned();
  private final SignVote sign = new SignVote();
  private final long[] valid;
  private double mostBleed = Double.NaN;
  private long rows;
  private long runFirstLine;
  private double runFirstS = Double.NaN;
  private long runRows;
  private long lastLine;
  private double lastS = Double.NaN;

  Surveyor(FilePlan plan, Slots slots) {
    this.plan = plan;
    this.slots = slots;
    this.valid = new long[slots.count()];
  }

  FileSurvey survey() throws InputProblem {
    MessageDigest digest = sha256();
    int highestCell;
    try (InputStream raw = new DigestInputStream(plan.source().openRaw(), digest);
        InputStream in = LogSource.unpack(raw);
        RowReader reader = RowReaders.open(plan, slots, in, issues, texts)) {
      Row row = new Row(slots);
      while (reader.next(row)) {
        take(row);
      }
      highestCell =
          reader instanceof TallReader tall
              ? tall.highestCell()
              : plan.highestCell(Quantity.CELL_VOLTAGE);
      raw.transferTo(java.io.OutputStream.nullOutputStream());
    } catch (IOException e) {
      throw Head.unreadable(plan.source(), e);
    }
    closeRun();
    texts.refuseTooMuch(rows);
    return new FileSurvey(
        BleedUnit.settle(plan, mostBleed),
        HexFormat.of().formatHex(digest.digest()),
        rows,
        runs,
        intervals.median(),
        slots,
        valid,
        highestCell,
        sign,
        issues);
  }

  private static MessageDigest sha256() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }

  private void take(Row row) {
    rows++;
    if (row.timeS < lastS && runs.size() < MOST_RUNS) {
      closeRun();
    }
    if (runRows == 0) {
      runFirstLine = row.line;
      runFirstS = row.timeS;
    } else if (row.timeS > lastS) {
      intervals.add(row.timeS - lastS);
    }
    runRows++;
    lastLine = row.line;
    lastS = runRows > 1 ? Math.max(lastS, row.timeS) : row.timeS;
    count(row);
  }

  private void closeRun() {
    if (runRows > 0) {
      runs.add(new Run(runFirstLine, lastLine, runFirstS, lastS, runRows));
      runRows = 0;
    }
  }

  private void count(Row row) {
    double[] values = row.values;
    double sum = 0;
    int cells = 0;
    for (int slot = 0; slot < values.length; slot++) {
      if (!Double.isNaN(values[slot])) {
        valid[slot]++;
      }
    }
    for (int cell = 1; cell <= slots.cells(); cell++) {
      double voltage = values[slots.voltage(cell)];
      if (!Double.isNaN(voltage)) {
        sum += voltage;
        cells++;
      }
      double bleed = values[slots.bleed(cell)];
      if (bleed > mostBleed || (Double.isNaN(mostBleed) && !Double.isNaN(bleed))) {
        mostBleed = bleed;
      }
    }
    double power = values[slots.power()];
    double current = values[slots.current()];
    double signed = Double.isNaN(current) ? power / sum : current;
    sign.add(signed, cells == 0 ? Double.NaN : sum / cells);
  }
}
