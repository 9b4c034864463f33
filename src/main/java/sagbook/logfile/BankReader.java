package sagbook.logfile;

import java.io.IOException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import sagbook.issue.InputProblem;
import sagbook.issue.IssueStore;
import sagbook.issue.RowIssue;
import sagbook.model.SampleBlock;
import sagbook.model.SampleSink;
import sagbook.wording.Words;

/** One pass over a bank's logs: merged rows in, blocks in the project's units out. */
final class BankReader {
  private static final Words WORDS = Words.english();
  private static final int ROWS_A_BLOCK = 2048;

  private final BankLogs logs;
  private final Slots slots;
  private final SampleBlock block;
  private final double fromS;
  private final double toS;
  private final GapCounter gaps;
  private final IssueStore issues = new IssueStore();
  private final LogStatistics statistics;

  BankReader(BankLogs logs) {
    this.logs = logs;
    this.slots = new Slots(logs.channels().seriesCells());
    this.block = new SampleBlock(logs.channels(), ROWS_A_BLOCK);
    this.fromS = logs.from().map(BankReader::seconds).orElse(Double.NEGATIVE_INFINITY);
    this.toS = logs.to().map(BankReader::seconds).orElse(Double.POSITIVE_INFINITY);
    double cadenceS = logs.groups().get(0).cadenceS();
    this.gaps = new GapCounter(cadenceS);
    this.statistics = new LogStatistics(slots, cadenceS);
  }

  private static double seconds(Instant instant) {
    return instant.getEpochSecond() + instant.getNano() / 1e9;
  }

  ReadReport read(SampleSink sink) throws InputProblem {
    long rows = 0;
    StreamBuilder builder = new StreamBuilder(logs, slots, issues);
    try (RowStream stream = builder.open(wanted())) {
      Row row = new Row(slots);
      while (stream.next(row) && row.timeS < toS) {
        if (row.timeS >= fromS) {
          rows++;
          gaps.add(row.timeS);
          put(row, sink);
        }
      }
    } catch (IOException e) {
      throw InputProblem.input(e, "problem.log.close");
    }
    flush(sink);
    if (rows == 0) {
      throw InputProblem.input("problem.log.time", InputProblem.quoted(logs.name()));
    }
    return report(rows, builder);
  }

  private List<FileSurvey> wanted() {
    List<FileSurvey> wanted = new ArrayList<>();
    for (FileSurvey file : logs.files()) {
      if (file.lastS() >= fromS && file.firstS() < toS) {
        wanted.add(file);
      }
    }
    return wanted;
  }

  private void put(Row row, SampleSink sink) {
    int at = block.rows();
    double[] values = row.values;
    block.timeS()[at] = row.timeS;
    int cells = slots.cells();
    double sum = 0;
    for (int cell = 1; cell <= cells; cell++) {
      double voltage = values[slots.voltage(cell)];
      sum += voltage;
      block.voltageV()[cell - 1][at] = voltage;
    }
    if (logs.channels().hasTemperature()) {
      for (int i = 0; i < cells; i++) {
        int sensor = logs.sensorOf()[i];
        block.temperatureC()[i][at] = sensor == 0 ? Double.NaN : values[slots.temperature(sensor)];
      }
    }
    if (logs.channels().hasBleed()) {
      for (int cell = 1; cell <= cells; cell++) {
        block.bleedFraction()[cell - 1][at] = Math.min(1, values[slots.bleed(cell)]);
      }
    }
    double current = current(values, sum) * logs.sign().sign().factor();
    if (logs.channels().hasCurrent()) {
      block.currentA()[at] = current;
    }
    statistics.add(row, current);
    block.setRows(at + 1);
    if (at + 1 == block.capacity()) {
      flush(sink);
    }
  }

  private double current(double[] values, double sumOfCells) {
    double current = values[slots.current()];
    if (!Double.isNaN(current)) {
      return current;
    }
    double pack = values[slots.packVoltage()];
    return values[slots.power()] / (Double.isNaN(pack) ? sumOfCells : pack);
  }

  private void flush(SampleSink sink) {
    if (block.rows() > 0) {
      sink.accept(block);
      block.setRows(0);
    }
  }

  private ReadReport report(long rows, StreamBuilder stream) {
    long duplicates = stream.duplicates();
    List<ReadReport.Input> inputs = new ArrayList<>();
    for (FileSurvey file : logs.files()) {
      inputs.add(file.input());
      issues.addAll(file.issues());
    }
    if (duplicates > 0) {
      issues.add(RowIssue.DUPLICATE_TIME, duplicates, logs.files().get(0).plan().source().name());
    }
    List<String> sentences = new ArrayList<>();
    sentences.add(
        WORDS.say(
            inputs.size() == 1 ? "reading.rows.one" : "reading.rows",
            Words.whole(rows),
            Integer.toString(inputs.size()),
            WORDS.time(gaps.first(), logs.zone()),
            WORDS.time(gaps.last(), logs.zone()),
            gaps.cadence()));
    sentences.addAll(logs.notes());
    sentences.add(gaps.sentence(logs.zone()));
    sentences.addAll(stream.placeSentences());
    sentences.addAll(issues.sentences());
    sentences.addAll(statistics.sentences(logs.zone()));
    return new ReadReport(
        inputs,
        sentences,
        statistics.advice(gaps.cadenceS(), logs.channels().hasCurrent()),
        statistics.qualities(),
        stream.lagS(),
        issues);
  }
}
