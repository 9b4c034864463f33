package sagbook.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import sagbook.issue.InputProblem;

/** One number for all that is told to a check besides the logs. */
final class SettingsHash {
  private SettingsHash() {}

  /**
   * SHA-256 of the pack description, the column mapping and the time asked for.
   *
   * @return lower-case hexadecimal
   */
  static String of(Path pack, Optional<Path> columns, @Nullable String from, @Nullable String to)
      throws InputProblem {
    MessageDigest digest;
    try {
      digest = MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
    add(digest, read(pack));
    add(digest, columns.isEmpty() ? new byte[0] : read(columns.get()));
    add(digest, (from + " " + to).getBytes(StandardCharsets.UTF_8));
    return HexFormat.of().formatHex(digest.digest());
  }

  /** Each part with its length, so that no two different sets read the same. */
  private static void add(MessageDigest digest, byte[] part) {
    digest.update((part.length + " ").getBytes(StandardCharsets.UTF_8));
    digest.update(part);
  }

  private static byte[] read(Path file) throws InputProblem {
    try {
      return Files.readAllBytes(file);
    } catch (IOException e) {
      throw InputProblem.input(e, "problem.log.unreadable", InputProblem.quoted(file.toString()));
    }
  }
}
