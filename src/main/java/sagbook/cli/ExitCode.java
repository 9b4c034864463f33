package sagbook.cli;

import sagbook.issue.InputProblem;
import sagbook.verdict.Severity;

/** The program's exit codes, as documented in the README and in each command's help. */
final class ExitCode {
  static final int WELL = 0;

  /** A fault of the program itself. */
  static final int FAULT = 1;

  static final int USAGE = 2;
  static final int INPUT = 3;
  static final int OUTPUT = 4;
  static final int ATTENTION = 10;
  static final int ACT_NOW = 20;

  private ExitCode() {}

  static int of(Severity severity) {
    return switch (severity) {
      case WELL -> WELL;
      case ATTENTION -> ATTENTION;
      case ACT_NOW -> ACT_NOW;
    };
  }

  static int of(InputProblem problem) {
    return switch (problem.kind()) {
      case USAGE -> USAGE;
      case INPUT -> INPUT;
      case OUTPUT -> OUTPUT;
    };
  }
}
