package sagbook.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Iterator;
import java.util.List;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import sagbook.simulate.Logged;
import sagbook.simulate.PackPlan;
import sagbook.simulate.Scenario;
import sagbook.simulate.Scenarios;
import sagbook.simulate.SimulatedLogs;
import sagbook.wording.Words;

/** Writes the logs of an invented battery whose truth is known. */
@Command(
    name = "simulate",
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    usageHelpWidth = 100)
public final class SimulateCommand implements Callable<Integer> {
  private static final Words WORDS = Words.english();

  @Spec private CommandSpec spec;

  @Option(
      names = "--scenario",
      required = true,
      paramLabel = "NAME",
      completionCandidates = Names.class)
  private String scenario;

  @Option(names = "--out", required = true, paramLabel = "DIR")
  private Path out;

  @Option(names = "--from", paramLabel = "DATE")
  private @Nullable LocalDate from;

  @Option(names = "--days", paramLabel = "N")
  private @Nullable Integer days;

  @Option(names = "--cadence-s", paramLabel = "S")
  private @Nullable Integer cadence;

  @Option(names = "--chemistry", paramLabel = "NAME")
  private @Nullable String chemistry;

  @Option(names = "--cells", paramLabel = "N")
  private @Nullable Integer cells;

  @Option(names = "--capacity-ah", paramLabel = "AH")
  private @Nullable Double capacity;

  @Option(names = "--seed", paramLabel = "N")
  private @Nullable Long seed;

  @Option(names = "--leave-out", split = ",", paramLabel = "COLUMNS")
  private Set<String> leaveOut = Set.of();

  @Option(names = "--gzip")
  private boolean gzip;

  @Override
  public Integer call() {
    Scenario asked = asked();
    Logged logged = logged();
    PrintWriter err = spec.commandLine().getErr();
    try (Progress progress = Progress.watched(err)) {
      SimulatedLogs.write(
          asked,
          out,
          logged,
          gzip,
          day ->
              progress.at(
                  WORDS.say(
                      "simulate.day", Integer.toString(day), Integer.toString(asked.days()))));
    } catch (IOException e) {
      err.println(WORDS.say("problem.write.simulated", out.toString(), reason(e)));
      err.flush();
      return ExitCode.OUTPUT;
    }
    PrintWriter stdout = spec.commandLine().getOut();
    stdout.println(asked.story());
    stdout.println(WORDS.say("simulate.done", out.resolve("logs").toString()));
    stdout.flush();
    return ExitCode.WELL;
  }

  private Logged logged() {
    for (String column : leaveOut) {
      if (!Set.of("current", "temperature", "bleed").contains(column)) {
        throw new ParameterException(
            spec.commandLine(), WORDS.say("problem.simulate.leave-out", column));
      }
    }
    return new Logged(
        !leaveOut.contains("current"),
        !leaveOut.contains("temperature"),
        !leaveOut.contains("bleed"));
  }

  private static String reason(IOException e) {
    return e instanceof java.nio.file.FileSystemException f && f.getReason() == null
        ? (Files.exists(Path.of(f.getFile()))
            ? WORDS.say("problem.other-there")
            : WORDS.say("problem.no-access"))
        : String.valueOf(e.getMessage());
  }

  private Scenario asked() {
    CommandLine line = spec.commandLine();
    Scenario known =
        Scenarios.find(scenario)
            .orElseThrow(
                () ->
                    new ParameterException(
                        line, WORDS.say("problem.simulate.scenario", scenario, names())));
    try {
      Scenario changed = known.withPack(pack(known));
      changed =
          changed.withTime(
              from == null ? known.from() : from,
              days == null ? known.days() : days,
              cadence == null ? known.cadenceS() : cadence);
      return seed == null ? changed : changed.withSeed(seed);
    } catch (IllegalArgumentException e) {
      throw new ParameterException(
          line, WORDS.say("problem.simulate.options", String.valueOf(e.getMessage())), e);
    }
  }

  private PackPlan pack(Scenario known) {
    if (chemistry == null && cells == null && capacity == null) {
      return known.pack();
    }
    int n = cells == null ? known.pack().cells() : cells;
    double ah = capacity == null ? known.pack().capacityAh() : capacity;
    return switch (chemistry == null ? "lfp" : chemistry) {
      case "lfp" -> PackPlan.lfp(n, ah);
      case "nmc" -> PackPlan.nmc(n, ah);
      default ->
          throw new IllegalArgumentException(
              WORDS.say("problem.simulate.chemistry", String.valueOf(chemistry)));
    };
  }

  private static String names() {
    return Scenarios.all().stream().map(Scenario::name).collect(Collectors.joining(", "));
  }

  /** For the shell's completion. */
  static final class Names implements Iterable<String> {
    @Override
    public Iterator<String> iterator() {
      List<String> all = Scenarios.all().stream().map(Scenario::name).toList();
      return all.iterator();
    }
  }
}
