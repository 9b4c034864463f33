package sagbook.cli;

import java.io.PrintWriter;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.Collectors;
import picocli.CommandLine;
import picocli.CommandLine.IParameterExceptionHandler;
import picocli.CommandLine.MissingParameterException;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.OverwrittenOptionException;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;
import sagbook.issue.InputProblem;
import sagbook.wording.Words;

/** Says in one sentence what is wrong with a command line, and then what was meant or is known. */
final class Complaint implements IParameterExceptionHandler {
  private static final Words WORDS = Words.english();

  @Override
  public int handleParseException(ParameterException wrong, String[] args) {
    CommandLine line = wrong.getCommandLine();
    PrintWriter err = line.getErr();
    err.println(line.getColorScheme().errorText(sentence(wrong)));
    List<String> meant =
        wrong instanceof UnmatchedArgumentException u ? u.getSuggestions() : List.of();
    if (meant.isEmpty()) {
      line.usage(err, line.getColorScheme());
    } else {
      String either = String.join(WORDS.say("list.either"), meant);
      err.println(WORDS.say("problem.command.meant", either));
    }
    err.flush();
    return ExitCode.USAGE;
  }

  private static String sentence(ParameterException wrong) {
    if (wrong instanceof MissingParameterException missing) {
      return WORDS.say(
          "problem.command.missing",
          missing.getMissing().stream().map(Complaint::form).collect(Collectors.joining(", ")));
    }
    if (wrong instanceof UnmatchedArgumentException unmatched) {
      return WORDS.say(
          "problem.command.unknown",
          unmatched.getUnmatched().stream()
              .map(InputProblem::quoted)
              .collect(Collectors.joining(", ")));
    }
    if (wrong instanceof OverwrittenOptionException twice) {
      return WORDS.say("problem.command.twice", name(twice.getOverwritten()));
    }
    ArgSpec of = wrong.getArgSpec();
    return of == null
        ? InputProblem.shown(String.valueOf(wrong.getMessage()))
        : WORDS.say(expected(of), name(of), InputProblem.quoted(String.valueOf(wrong.getValue())));
  }

  private static String expected(ArgSpec of) {
    Class<?> type = of.auxiliaryTypes()[0];
    if (type == int.class || type == Integer.class || type == Long.class) {
      return "problem.command.whole";
    }
    if (type == Double.class) {
      return "problem.command.number";
    }
    return type == LocalDate.class ? "problem.option.date" : "problem.command.value";
  }

  private static String form(ArgSpec of) {
    return of instanceof OptionSpec option
        ? option.longestName() + "=" + option.paramLabel()
        : of.paramLabel();
  }

  private static String name(ArgSpec of) {
    return of instanceof OptionSpec option ? option.longestName() : of.paramLabel();
  }
}
