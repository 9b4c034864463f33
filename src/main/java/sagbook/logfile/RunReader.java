package sagbook.logfile;

import java.io.Closeable;
import java.io.IOException;
import java.io.InputStream;
import org.jspecify.annotations.Nullable;
import sagbook.issue.InputProblem;
import sagbook.issue.IssueStore;

/** Reads one run of a file; the file is opened when its first row is wanted. */
final class RunReader implements Closeable {
  private final FileSurvey survey;
  private final Run run;
  private final Slots slots;
  private final Row row;
  private long rows;
  private @Nullable RowReader reader;
  private @Nullable InputStream raw;

  RunReader(FileSurvey survey, Run run, Slots slots) {
    this.survey = survey;
    this.run = run;
    this.slots = slots;
    this.row = new Row(slots);
    this.row.timeS = run.firstS();
  }

  /** The row at hand, after {@link #advance()}; before it, only its time is set. */
  Row row() {
    return row;
  }

  boolean isOpen() {
    return reader != null;
  }

  /** Moves to the next row; false at the end. */
  boolean advance() throws InputProblem {
    try {
      if (reader == null) {
        reader = open();
      }
      double before = row.timeS;
      while (reader.next(row)) {
        rows++;
        if (row.timeS >= before) {
          return true;
        }
      }
      if (rows < run.rows()) {
        throw changed(new IOException("shorter than before"));
      }
      return false;
    } catch (IOException e) {
      throw changed(e);
    }
  }

  private InputProblem changed(IOException e) {
    return InputProblem.input(
        e, "problem.log.changed", InputProblem.quoted(survey.plan().source().name()));
  }

  private RowReader open() throws IOException {
    InputStream opened = survey.plan().source().openRaw();
    raw = opened;
    return RowReaders.open(
        survey.plan(),
        slots,
        LogSource.unpack(opened),
        new IssueStore(),
        new TextFound(),
        run.firstLine(),
        run.lastLine());
  }

  @Override
  public void close() throws IOException {
    if (raw != null) {
      raw.close();
    }
    if (reader != null) {
      reader.close();
    }
  }
}
