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
@Command(name = "import", mixinStandardHelpOptions = true, versionProvider = Version.class)
public final class ImportCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Option(names = "--record", required = true, paramLabel = "FILE")
  private Path record;

  @Parameters(paramLabel = "DIR")
  private Path folder;

  @Override
  public Integer call() throws InputProblem {
    PrintWriter stdout = spec.commandLine().getOut();
    RecordCsv.read(folder, record);
    stdout.println(Words.english().say("import.done", folder.toString(), record.toString()));
    stdout.flush();
    return ExitCode.WELL;
  }
}
