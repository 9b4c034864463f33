package sagbook.logfile;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import sagbook.issue.InputProblem;
import sagbook.model.BankDescription;
import sagbook.model.LogMapping;
import sagbook.model.PackDescription;
import sagbook.packfile.MappingFile;
import sagbook.wording.Words;

/** Finds log files and works out what they hold. */
public final class LogFolder {
  private static final int MOST_CELLS_SURVEYED = 64;

  private final ReadRequest request;
  private final List<LogMapping> mappings;
  private final List<String> passedOver = new ArrayList<>();
  private Optional<InputProblem> firstProblem = Optional.empty();

  private LogFolder(ReadRequest request, List<LogMapping> mappings) {
    this.request = request;
    this.mappings = mappings;
  }

  /** The name and the SHA-256 (lower-case hexadecimal) of every file that a request reads. */
  public static Map<String, String> hashes(ReadRequest request) throws InputProblem {
    Map<String, String> hashes = new LinkedHashMap<>();
    for (LogSource source : Inputs.find(request.logs())) {
      if (!request.leftOut().contains(source.name())) {
        hashes.put(source.name(), Surveyor.hash(source));
      }
    }
    return hashes;
  }

  /** Opens the logs of a request: every file is looked through once, none is handed on yet. */
  public static OpenedLogs open(ReadRequest request) throws InputProblem {
    List<LogMapping> mappings = new ArrayList<>();
    if (request.columns().isPresent()) {
      mappings.addAll(MappingFile.read(request.columns().get()));
    }
    mappings.addAll(request.pack().logs());
    return new LogFolder(request, mappings).open();
  }

  private OpenedLogs open() throws InputProblem {
    List<LogSource> sources = Inputs.find(request.logs());
    if (sources.isEmpty()) {
      throw InputProblem.usage("problem.input.none");
    }
    List<BankDescription> banks = request.pack().banks();
    if (banks.isEmpty()) {
      banks = List.of(new BankDescription(PackDescription.soleBankName(), List.of("*")));
    }
    List<BankLogs> opened = new ArrayList<>();
    for (BankDescription bank : banks) {
      List<LogSource> own =
          sources.stream().filter(s -> NamePattern.anyMatches(bank.filePatterns(), s)).toList();
      if (own.isEmpty()) {
        throw InputProblem.input(
            "problem.input.bank",
            InputProblem.quoted(bank.name()),
            PlanMaker.listed(bank.filePatterns()));
      }
      List<LogSource> wanted =
          own.stream().filter(s -> !request.leftOut().contains(s.name())).toList();
      if (!wanted.isEmpty()) {
        opened.add(bank(bank.name(), wanted));
      }
    }
    return new OpenedLogs(opened);
  }

  private BankLogs bank(String name, List<LogSource> sources) throws InputProblem {
    passedOver.clear();
    firstProblem = Optional.empty();
    List<FilePlan> plans = new ArrayList<>();
    for (LogSource source : sources) {
      unlessPassedOver(source, () -> plans.add(DateOrderScan.settle(plan(source))));
    }
    List<FileSurvey> files = new ArrayList<>();
    for (FilePlan plan : DateOrderScan.agree(plans)) {
      unlessPassedOver(plan.source(), () -> files.add(survey(plan)));
    }
    if (files.isEmpty() && firstProblem.isPresent()) {
      throw firstProblem.get();
    }
    return new BankJoiner(request, mappings, name, SteadyClock.settle(files), passedOver).join();
  }

  /** Something done with a file that may turn out to be no log. */
  @FunctionalInterface
  private interface Attempt {
    void run() throws InputProblem;
  }

  private void unlessPassedOver(LogSource source, Attempt attempt) throws InputProblem {
    try {
      attempt.run();
    } catch (InputProblem e) {
      if (source.named() || e.kind() == InputProblem.Kind.USAGE) {
        throw e;
      }
      firstProblem = firstProblem.isPresent() ? firstProblem : Optional.of(e);
      passedOver.add(Words.english().say("reading.passed-over", e.sentence()));
    }
  }

  private FilePlan plan(LogSource source) throws InputProblem {
    Optional<LogMapping> mapping =
        mappings.stream()
            .filter(m -> NamePattern.anyMatches(List.of(m.filePattern()), source))
            .findFirst();
    return new PlanMaker(source, mapping, request.pack().timezone()).plan();
  }

  private FileSurvey survey(FilePlan plan) throws InputProblem {
    int cells = request.pack().seriesCells();
    int surveyed =
        plan.tall().isPresent()
            ? MOST_CELLS_SURVEYED
            : Math.max(cells, plan.highestCell(Quantity.CELL_VOLTAGE));
    FileSurvey survey =
        new Surveyor(plan, new Slots(Math.min(surveyed, MOST_CELLS_SURVEYED))).survey();
    boolean useful = survey.hasVoltage() || survey.hasCurrent() || survey.hasAnyTemperature();
    if (!useful) {
      throw noCells(survey);
    }
    return survey;
  }

  static InputProblem noCells(FileSurvey survey) {
    return InputProblem.input(
        "problem.log.no-cells",
        InputProblem.quoted(survey.plan().source().name()),
        PlanMaker.listed(survey.plan().dialect().names()));
  }
}
