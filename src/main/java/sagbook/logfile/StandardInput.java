package sagbook.logfile;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import sagbook.issue.InputProblem;

/**
 * Standard input as a file: a log is gone through more than once, and a process has one standard
 * input, so it is copied once and kept until the process ends.
 */
final class StandardInput {
  /** What the keeper calls it among the logs. */
  static final String ARGUMENT = "-";

  /** A year of 16 cells at a row a second takes less. */
  private static final long MOST_BYTES = 8L << 30;

  private static Optional<Path> kept = Optional.empty();

  private StandardInput() {}

  static synchronized Path file() throws InputProblem {
    if (kept.isEmpty()) {
      try {
        Path file = Files.createTempFile("sagbook", ".log");
        file.toFile().deleteOnExit();
        try (OutputStream out = Files.newOutputStream(file)) {
          copy(System.in, out, MOST_BYTES);
        }
        kept = Optional.of(file);
      } catch (IOException e) {
        throw InputProblem.input(e, "problem.standard-input.read");
      }
    }
    return kept.get();
  }

  static void copy(InputStream in, OutputStream out, long mostBytes)
      throws IOException, InputProblem {
    byte[] buffer = new byte[1 << 16];
    long copied = 0;
    for (int got = in.read(buffer); got >= 0; got = in.read(buffer)) {
      copied += got;
      if (copied > mostBytes) {
        throw InputProblem.input("problem.standard-input.long", Long.toString(mostBytes >> 30));
      }
      out.write(buffer, 0, got);
    }
  }
}
