package sagbook.logfile;

import java.io.IOException;
import java.io.InputStream;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import sagbook.align.EdgeCollector;
import sagbook.issue.InputProblem;
import sagbook.issue.IssueStore;
import sagbook.issue.RowIssue;

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
  private final ChannelRhythm rhythm;
  private final EdgeCollector voltageEdges = new EdgeCollector();
  private final EdgeCollector currentEdges = new EdgeCollector();
  private double mostBleed = Double.NaN;
  private int freshCells;
  private double edgeS = Double.NaN;
  private double edgeVoltage = Double.NaN;
  private double currentS = Double.NaN;
  private double latestCurrent = Double.NaN;
  private long rows;
  private long runFirstLine;
  private double runFirstS = Double.NaN;
  private long runRows;
  private long lastLine;
  private double lastS = Double.NaN;

  Surveyor(FilePlan plan, Slots slots) {
    this.plan = plan;
    this.slots = slots;
    this.rhythm = new ChannelRhythm(slots);
  }

  FileSurvey survey() throws InputProblem {
    MessageDigest digest = sha256();
    int highestCell;
    int missedChanges;
    try (InputStream raw = new DigestInputStream(plan.source().openRaw(), digest);
        InputStream in = LogSource.unpack(raw);
        RowReader reader = RowReaders.open(plan, slots, in, issues, texts)) {
      Row row = new Row(slots);
      while (reader.next(row)) {
        take(row);
      }
      missedChanges = reader.missedChanges();
      highestCell =
          reader instanceof TallReader tall
              ? tall.highestCell()
              : plan.highestCell(Quantity.CELL_VOLTAGE);
      raw.transferTo(java.io.OutputStream.nullOutputStream());
    } catch (IOException e) {
      throw Head.unreadable(plan.source(), e);
    }
    closeRun();
    refuseRubbish();
    return new FileSurvey(
        BleedUnit.settle(plan, mostBleed),
        HexFormat.of().formatHex(digest.digest()),
        rows,
        runs,
        intervals.median(),
        slots,
        rhythm.counts(),
        highestCell,
        sign,
        missedChanges,
        rhythm,
        voltageEdges,
        currentEdges,
        issues);
  }

  /** Complains when hardly anything in the file could be read. */
  private void refuseRubbish() throws InputProblem {
    texts.refuseTooMuch(rows);
    String name = InputProblem.quoted(plan.source().name());
    long stray = issues.count(RowIssue.STRAY_CLOCK);
    long broken = issues.count(RowIssue.TORN_ROW) + issues.count(RowIssue.UNREADABLE_TIME);
    if (rows == 0 && stray > 0) {
      throw InputProblem.input("problem.log.clock-unset", name);
    }
    if (broken > rows) {
      throw InputProblem.input(
          "problem.log.broken",
          name,
          Long.toString(broken),
          Long.toString(broken + rows),
          issues.firstPlace(RowIssue.TORN_ROW, RowIssue.UNREADABLE_TIME),
          Integer.toString(plan.dialect().fieldCount()),
          InputProblem.quoted(String.valueOf(plan.dialect().delimiter())));
    }
  }

  /** SHA-256 of a file's bytes as they lie on disk, lower-case hexadecimal. */
  static String hash(LogSource source) throws InputProblem {
    MessageDigest digest = sha256();
    try (InputStream raw = new DigestInputStream(source.openRaw(), digest)) {
      raw.transferTo(java.io.OutputStream.nullOutputStream());
    } catch (IOException e) {
      throw Head.unreadable(source, e);
    }
    return HexFormat.of().formatHex(digest.digest());
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
    lastLine = row.lastLine;
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
    for (int cell = 1; cell <= slots.cells(); cell++) {
      double bleed = values[slots.bleed(cell)];
      if (bleed > mostBleed || (Double.isNaN(mostBleed) && !Double.isNaN(bleed))) {
        mostBleed = bleed;
      }
      freshCells += Double.isNaN(values[slots.voltage(cell)]) ? 0 : 1;
    }
    rhythm.add(row);
    current(row);
    if (freshCells > 0 && freshCells >= rhythm.cellsSeen()) {
      freshCells = 0;
      double voltage = rhythm.meanVoltage();
      sign.add(latestCurrent, voltage);
      voltageEdges.add((row.timeS + edgeS) / 2, voltage - edgeVoltage);
      edgeS = row.timeS;
      edgeVoltage = voltage;
    }
  }

  private void current(Row row) {
    double pack = row.values[slots.packVoltage()];
    double power = row.values[slots.power()];
    double sum = Double.isNaN(pack) ? rhythm.meanVoltage() * rhythm.cellsSeen() : pack;
    double given = row.values[slots.current()];
    double current = Double.isNaN(given) ? power / (Double.isNaN(sum) ? 1 : sum) : given;
    if (!Double.isNaN(current)) {
      currentEdges.add((row.timeS + currentS) / 2, current - latestCurrent);
      currentS = row.timeS;
      latestCurrent = current;
    }
  }
}
