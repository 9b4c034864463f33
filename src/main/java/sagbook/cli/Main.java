package sagbook.cli;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import sagbook.issue.InputProblem;
import sagbook.wording.Words;

/** Entry point of the program. */
@Command(
    name = "sagbook",
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    subcommands = {
      CheckCommand.class,
      PreviewCommand.class,
      SeasonCommand.class,
      NoteCommand.class,
      ExportCommand.class,
      ImportCommand.class,
      SwapCommand.class,
      SparesCommand.class,
      SimulateCommand.class
    },
    synopsisSubcommandLabel = "COMMAND")
public final class Main implements Runnable {
  private static final Words WORDS = Words.english();

  @CommandLine.Spec private CommandLine.Model.CommandSpec spec;

  @Override
  public void run() {
    throw new CommandLine.ParameterException(spec.commandLine(), WORDS.say("problem.command.none"));
  }

  /** Runs the command line and gives its exit code; prints to the given writers only. */
  static int run(PrintWriter out, PrintWriter err, String... args) {
    CommandLine command = new CommandLine(new Main());
    return command
        .setResourceBundle(new HelpWords(command))
        .setOut(out)
        .setErr(err)
        .setCaseInsensitiveEnumValuesAllowed(true)
        .setUsageHelpAutoWidth(true)
        .setParameterExceptionHandler(new Complaint())
        .setExecutionExceptionHandler((thrown, line, parsed) -> ended(thrown, line.getErr()))
        .execute(args);
  }

  /** Says what went wrong: with the input in its own sentence, anything else as a fault. */
  private static int ended(Exception thrown, PrintWriter err) {
    err.println(
        thrown instanceof InputProblem problem
            ? problem.sentence()
            : WORDS.say("problem.fault", InputProblem.quoted(thrown.toString())));
    err.flush();
    return thrown instanceof InputProblem problem ? ExitCode.of(problem) : ExitCode.FAULT;
  }

  public static void main(String[] args) {
    PrintWriter out = new PrintWriter(System.out, true, StandardCharsets.UTF_8);
    PrintWriter err = new PrintWriter(System.err, true, StandardCharsets.UTF_8);
    System.exit(run(out, err, args));
  }
}
