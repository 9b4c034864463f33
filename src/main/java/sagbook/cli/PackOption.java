package sagbook.cli;

import java.nio.file.Path;
import picocli.CommandLine.Option;
import sagbook.issue.InputProblem;
import sagbook.model.PackDescription;
import sagbook.packfile.PackFile;

/** Which battery it is about. */
final class PackOption {
  @Option(names = "--pack", required = true, paramLabel = "FILE")
  private Path file = Path.of("");

  Path file() {
    return file;
  }

  PackDescription described() throws InputProblem {
    return PackFile.read(file);
  }
}
