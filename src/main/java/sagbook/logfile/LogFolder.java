package sagbook.logfile;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import sagbook.issue.InputProblem;
import sagbook.model.BankDescription;
import sagbook.model.LogMapping;
import sagbook.model.PackDescription;
import sagbook.packfile.MappingFile;

/** Finds log files and works out what they hold. */
public final class LogFolder {
  private static final int MOST_CELLS_SURVEYED = 64;

  private final ReadRequest request;
  private final List<LogMapping> mappings;
  private final List<String> passedOver = new ArrayList<>();

  private LogFolder(ReadRequest request, List<LogMapping> mappings) {
    this.request = request;
    this.mappings = mappings;
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
      throw InputProblem.usage("No log is named; give at least one file, folder or pattern.");
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
            "No log belongs to bank "
                + InputProblem.quoted(bank.name())
                + ": no file name matches "
                + PlanMaker.listed(bank.filePatterns())
                + "; correct files under [[bank]] in the pack description.");
      }
      opened.add(bank(bank.name(), own));
    }
    return new OpenedLogs(opened);
  }

  private BankLogs bank(String name, List<LogSource> sources) throws InputProblem {
    List<FileSurvey> files = new ArrayList<>();
    Optional<InputProblem> problem = Optional.empty();
    passedOver.clear();
    for (LogSource source : sources) {
      try {
        files.add(survey(source));
      } catch (InputProblem e) {
        if (source.named() || e.kind() == InputProblem.Kind.USAGE) {
          throw e;
        }
        problem = problem.isPresent() ? problem : Optional.of(e);
        passedOver.add("Passed over: " + e.sentence());
      }
    }
    if (files.isEmpty() && problem.isPresent()) {
      throw problem.get();
    }
    return new BankJoiner(request, name, files, passedOver).join();
  }

  private FileSurvey survey(LogSource source) throws InputProblem {
    Optional<LogMapping> mapping =
        mappings.stream()
            .filter(m -> NamePattern.anyMatches(List.of(m.filePattern()), source))
            .findFirst();
    FilePlan plan = new PlanMaker(source, mapping, request.pack().timezone()).plan();
    int cells = request.pack().seriesCells();
    int surveyed =
        plan.tall().isPresent()
            ? MOST_CELLS_SURVEYED
            : Math.max(cells, plan.highestCell(Quantity.CELL_VOLTAGE));
    FileSurvey survey =
        new Surveyor(plan, new Slots(Math.min(surveyed, MOST_CELLS_SURVEYED))).survey();
    if (survey.rows() == 0) {
      throw InputProblem.input(
          "The file "
              + InputProblem.quoted(source.name())
              + " holds no row with a readable time; expected at least one.");
    }
    boolean useful = survey.hasVoltage() || survey.hasCurrent() || survey.hasAnyTemperature();
    if (!useful) {
      throw InputProblem.input(noCells(survey));
    }
    return survey;
  }

  static String noCells(FileSurvey survey) {
    return "The file "
        + InputProblem.quoted(survey.plan().source().name())
        + " holds no cell voltages: none of its columns "
        + PlanMaker.listed(survey.plan().dialect().names())
        + " could be taken for one; name them in a column mapping (preview writes one to start"
        + " from) and give it with --columns.";
  }
}
