package sagbook.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import sagbook.issue.InputProblem;
import sagbook.record.store.RecordCsv;
import sagbook.wording.Words;

/** A record back from plain CSV. */
@Command(
    name = "import",
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    description = {"Make a record of the plain CSV files that export --record wrote.", ""},
    footer = {
      "",
      "Examples:",
      "  sagbook export --record battery.db --out battery-csv",
      "  sagbook import --record copy.db battery-csv",
      "",
      "Exit codes: 0 imported, 2 the record is there already, 3 the files can't be read, 4 the",
      "record can't be written."
    })
public final class ImportCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Option(
      names = "--record",
      required = true,
      paramLabel = "FILE",
      description = "The record to make; must not be there yet.")
  private Path record;

  @Parameters(paramLabel = "DIR", description = "Folder with the CSV files.")
  private Path folder;

  @Override
  public Integer call() {
    PrintWriter stdout = spec.commandLine().getOut();
    PrintWriter err = spec.commandLine().getErr();
    try {
      RecordCsv.read(folder, record);
      stdout.println(Words.english().say("import.done", folder.toString(), record.toString()));
      stdout.flush();
      return ExitCode.WELL;
    } catch (InputProblem problem) {
      err.println(problem.sentence());
      err.flush();
      return ExitCode.of(problem);
    }
  }
}
