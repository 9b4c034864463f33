package sagbook.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.Iterator;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import sagbook.issue.InputProblem;
import sagbook.record.DiaryEvent;
import sagbook.record.KeptMonth;
import sagbook.record.store.RecordFile;
import sagbook.wording.Words;

/** The diary of a battery. */
@Command(name = "note", mixinStandardHelpOptions = true, versionProvider = Version.class)
public final class NoteCommand implements Callable<Integer> {
  private static final Words WORDS = Words.english();
  static final String KINDS = String.join(", ", new Kinds());

  @Spec private CommandSpec spec;

  @Option(names = "--record", required = true, paramLabel = "FILE")
  private Path record;

  @Option(names = "--day", paramLabel = "DATE")
  private String day = "";

  @Option(names = "--kind", paramLabel = "KIND", completionCandidates = Kinds.class)
  private String kind = "";

  @Option(names = "--bank", paramLabel = "NAME")
  private String bank = "";

  @Option(names = "--cell", paramLabel = "N")
  private int cell;

  @Option(names = "--mark", paramLabel = "MARK")
  private String mark = "";

  @Parameters(arity = "0..*", paramLabel = "WORDS")
  private List<String> words = List.of();

  @Override
  public Integer call() throws InputProblem {
    PrintWriter stdout = spec.commandLine().getOut();
    try (RecordFile file = RecordFile.existing(record)) {
      if (kind.isEmpty()) {
        file.diary().forEach(event -> stdout.println(line(event)));
      } else {
        DiaryEvent event = event(file.months());
        file.note(event);
        stdout.println(WORDS.say("note.done", line(event)));
      }
      stdout.flush();
      return ExitCode.WELL;
    }
  }

  private DiaryEvent event(List<KeptMonth> months) throws InputProblem {
    DiaryEvent.Kind what =
        DiaryEvent.Kind.of(kind)
            .orElseThrow(
                () -> InputProblem.usage("problem.option.kind", InputProblem.quoted(kind), KINDS));
    if (!bank.isEmpty() && months.stream().noneMatch(m -> m.bank().bank().equals(bank))) {
      throw InputProblem.usage(
          "problem.option.known-banks", InputProblem.quoted(bank), banks(months));
    }
    int cells = months.stream().mapToInt(m -> m.cells().size()).max().orElse(32);
    boolean needsCell =
        List.of(
                DiaryEvent.Kind.CELL_REPLACED,
                DiaryEvent.Kind.CELL_MOVED,
                DiaryEvent.Kind.CELL_MARKED)
            .contains(what);
    if (!(cell >= (needsCell ? 1 : 0) && cell <= cells)) {
      throw InputProblem.usage(
          "problem.option.place", Integer.toString(cell), Integer.toString(cells));
    }
    boolean needsMark = what == DiaryEvent.Kind.CELL_MOVED || what == DiaryEvent.Kind.CELL_MARKED;
    if (needsMark && mark.isBlank()) {
      throw InputProblem.usage(
          what == DiaryEvent.Kind.CELL_MOVED
              ? "problem.option.mark.moved"
              : "problem.option.mark.marked");
    }
    return new DiaryEvent(when(), what, bank, cell, mark.strip(), String.join(" ", words).strip());
  }

  private LocalDate when() throws InputProblem {
    try {
      return LocalDate.parse(day);
    } catch (DateTimeException wrong) {
      throw InputProblem.usage("problem.option.date", "--day", InputProblem.quoted(day));
    }
  }

  private static String banks(List<KeptMonth> months) {
    return months.stream()
        .map(month -> InputProblem.quoted(month.bank().bank()))
        .distinct()
        .collect(Collectors.joining(", "));
  }

  private static String line(DiaryEvent event) {
    return Arrays.asList(
            event.day().toString(),
            event.kind().spoken(),
            event.bank(),
            event.cell() == 0 ? "" : WORDS.cell(event.cell()),
            event.mark(),
            event.text())
        .stream()
        .filter(part -> !part.isEmpty())
        .map(InputProblem::shown)
        .collect(Collectors.joining(", "));
  }

  /** For the shell's completion, and the help. */
  static final class Kinds implements Iterable<String> {
    @Override
    public Iterator<String> iterator() {
      return Arrays.stream(DiaryEvent.Kind.values()).map(DiaryEvent.Kind::words).iterator();
    }
  }
}
