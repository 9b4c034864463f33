package sagbook.validation;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Assumptions;

/** Measured data that lies beside the project, not in it; tests skip visibly without it. */
final class SharedData {
  private SharedData() {}

  static Path folder(String name) {
    Path root = Path.of(System.getProperty("sagbook.shared", "../shared/data"));
    Path folder = root.resolve(name);
    Assumptions.assumeTrue(
        Files.isDirectory(folder), () -> "measured data not here: " + folder.toAbsolutePath());
    return folder;
  }
}
