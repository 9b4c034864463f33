package sagbook.record.store;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteErrorCode;
import sagbook.issue.InputProblem;
import sagbook.record.DiaryEvent;
import sagbook.record.KeptMonth;

/**
 * A battery's record, open.
 *
 * <p>Each change is one transaction that takes the file's only write lock at its start, waits up to
 * {@value #PATIENCE_MS} ms for other runs, and is on disk before it returns. What the file can't
 * hold or give is said in one sentence, and leaves it as it was.
 */
public final class RecordFile implements AutoCloseable {
  private static final int PATIENCE_MS = 60_000;

  private final Path file;
  private final Connection connection;

  private RecordFile(Path file, Connection connection) {
    this.file = file;
    this.connection = connection;
  }

  /** Opens a record, making the file or bringing its schema up to date where needed. */
  public static RecordFile open(Path file) throws InputProblem {
    SQLiteConfig config = new SQLiteConfig();
    config.setBusyTimeout(PATIENCE_MS);
    config.enforceForeignKeys(true);
    config.setSynchronous(SQLiteConfig.SynchronousMode.FULL);
    try {
      RecordFile record =
          new RecordFile(file, config.createConnection("jdbc:sqlite:" + file.toAbsolutePath()));
      try {
        if (!record.ask(() -> Schema.isUpToDate(record.connection))) {
          record.change(() -> Schema.bringUpToDate(record.connection, file));
        }
      } catch (InputProblem e) {
        record.close();
        throw e;
      }
      return record;
    } catch (SQLException e) {
      throw said(file, e);
    }
  }

  /** Opens a record that must be there. */
  public static RecordFile existing(Path file) throws InputProblem {
    if (!Files.isRegularFile(file)) {
      throw InputProblem.input("problem.record.missing", InputProblem.quoted(file.toString()));
    }
    return open(file);
  }

  /**
   * Keeps what a check found out. Months of the same bank that cover more than half of the same
   * time, or are covered so, are replaced.
   */
  public void keep(List<KeptMonth> check) throws InputProblem {
    change(
        () -> {
          MonthWriter writer = new MonthWriter(connection);
          for (KeptMonth month : check) {
            writer.replace(month);
          }
        });
  }

  /** Adds an event to the diary. */
  public void note(DiaryEvent event) throws InputProblem {
    change(() -> Diary.add(connection, event));
  }

  /** All months, oldest first, banks by name. */
  public List<KeptMonth> months() throws InputProblem {
    return ask(() -> new MonthReader(connection).all());
  }

  /** The diary, oldest day first. */
  public List<DiaryEvent> diary() throws InputProblem {
    return ask(() -> Diary.all(connection));
  }

  @Override
  public void close() throws InputProblem {
    try {
      connection.close();
    } catch (SQLException e) {
      throw said(file, e);
    }
  }

  /** Makes the file refuse to grow beyond so many pages, as a full disk would. */
  void limitPages(int pages) throws SQLException {
    try (Statement statement = connection.createStatement()) {
      statement.execute("PRAGMA max_page_count = " + pages);
    }
  }

  /** Something that changes the record. */
  @FunctionalInterface
  interface Change {
    void run() throws SQLException, InputProblem;
  }

  /** Something that is asked of the record. */
  @FunctionalInterface
  interface Question<T> {
    T answer() throws SQLException, InputProblem;
  }

  /** Runs a change as a whole or not at all. */
  void change(Change change) throws InputProblem {
    transaction(
        "BEGIN IMMEDIATE",
        () -> {
          change.run();
          return true;
        });
  }

  /** Answers a question from one state of the record. */
  <T> T ask(Question<T> question) throws InputProblem {
    return transaction("BEGIN", question);
  }

  private <T> T transaction(String begin, Question<T> question) throws InputProblem {
    boolean done = false;
    try (Statement statement = connection.createStatement()) {
      statement.execute(begin);
      try {
        T answer = question.answer();
        statement.execute("COMMIT");
        done = true;
        return answer;
      } finally {
        if (!done) {
          rollBack(statement);
        }
      }
    } catch (SQLException e) {
      throw said(file, e);
    }
  }

  Connection connection() {
    return connection;
  }

  /** A full disk may already have rolled back; then there is nothing left to undo. */
  private static void rollBack(Statement statement) {
    try {
      statement.execute("ROLLBACK");
    } catch (SQLException alreadyRolledBack) {
      return;
    }
  }

  private static InputProblem said(Path file, SQLException e) {
    String record = InputProblem.quoted(file.toString());
    int code = e.getErrorCode() & 0xff;
    if (code == SQLiteErrorCode.SQLITE_FULL.code) {
      return InputProblem.output(e, "problem.record.full", record);
    }
    if (code == SQLiteErrorCode.SQLITE_BUSY.code || code == SQLiteErrorCode.SQLITE_LOCKED.code) {
      return InputProblem.output(e, "problem.record.busy", record);
    }
    if (code == SQLiteErrorCode.SQLITE_NOTADB.code || code == SQLiteErrorCode.SQLITE_CORRUPT.code) {
      return InputProblem.input(e, "problem.record.damaged", record);
    }
    return InputProblem.output(
        e, "problem.record.use", record, InputProblem.quoted(String.valueOf(e.getMessage())));
  }
}
