package sagbook.logfile;

import java.io.Closeable;
import java.io.IOException;
import java.io.Reader;
import java.util.Arrays;
import sagbook.issue.InputProblem;

/**
 * Gives a text line by line without making strings. A line ends with LF, CR LF or CR; lines are
 * counted from 1. A line longer than {@link #MOST_CHARACTERS} is refused, so that memory stays
 * bounded whatever comes in.
 */
final class LineReader implements Closeable {
  /** No log has longer lines; 4096 columns of 20 characters take a twelfth of this. */
  static final int MOST_CHARACTERS = 1 << 20;

  private final Reader in;
  private final String file;
  private char[] buffer = new char[1 << 16];
  private int filled;
  private int next;
  private int start;
  private int end;
  private long number;
  private String ending = "";
  private boolean ended;

  LineReader(Reader in, String file) {
    this.in = in;
    this.file = file;
  }

  /** The characters; the line is {@link #start()} to {@link #end()}. Valid until the next line. */
  char[] buffer() {
    return buffer;
  }

  int start() {
    return start;
  }

  int end() {
    return end;
  }

  /** Number of the current line, from 1. */
  long number() {
    return number;
  }

  /** What ended the current line: LF, CR LF, CR, or nothing at the end of the text. */
  String ending() {
    return ending;
  }

  String line() {
    return new String(buffer, start, end - start);
  }

  /** Moves to the next line; false when there is none. */
  boolean next() throws IOException, InputProblem {
    int scan = next;
    while (true) {
      int at = lineEnd(scan);
      if (at >= 0 && (buffer[at] == '\n' || at + 1 < filled || ended)) {
        finish(at);
        return true;
      }
      int scanned = (at >= 0 ? at : filled) - next;
      if (!fill()) {
        return lastLine();
      }
      scan = next + scanned;
    }
  }

  private int lineEnd(int from) {
    char[] b = buffer;
    for (int i = from; i < filled; i++) {
      if (b[i] <= '\r' && (b[i] == '\n' || b[i] == '\r')) {
        return i;
      }
    }
    return -1;
  }

  private void finish(int at) {
    start = next;
    end = at;
    boolean pair = buffer[at] == '\r' && at + 1 < filled && buffer[at + 1] == '\n';
    next = at + (pair ? 2 : 1);
    ending = pair ? "\r\n" : buffer[at] == '\r' ? "\r" : "\n";
    number++;
  }

  private boolean lastLine() {
    if (next >= filled) {
      return false;
    }
    int at = lineEnd(next);
    if (at >= 0) {
      finish(at);
      return true;
    }
    start = next;
    end = filled;
    next = filled;
    ending = "";
    number++;
    return true;
  }

  private boolean fill() throws IOException, InputProblem {
    if (ended) {
      return false;
    }
    if (next > 0) {
      System.arraycopy(buffer, next, buffer, 0, filled - next);
      filled -= next;
      next = 0;
    }
    if (filled == buffer.length) {
      if (filled >= MOST_CHARACTERS) {
        throw InputProblem.input(
            "problem.log.long-line", InputProblem.quoted(file), Long.toString(number + 1));
      }
      buffer = Arrays.copyOf(buffer, buffer.length * 2);
    }
    int got = in.read(buffer, filled, buffer.length - filled);
    if (got < 0) {
      ended = true;
      return true;
    }
    filled += got;
    return true;
  }

  @Override
  public void close() throws IOException {
    in.close();
  }
}
