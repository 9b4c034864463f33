package sagbook.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import sagbook.bench.BenchTest;
import sagbook.bench.SpareMatch;
import sagbook.estimate.CellEstimates;
import sagbook.issue.InputProblem;
import sagbook.logfile.BenchFile;
import sagbook.model.Estimate;
import sagbook.model.PackDescription;
import sagbook.packfile.PackFile;
import sagbook.record.KeptString;
import sagbook.report.words.Numbers;
import sagbook.whatif.Change;
import sagbook.whatif.Spare;

/** Spare cells judged from their bench tests. */
@Command(
    name = "spares",
    mixinStandardHelpOptions = true,
    versionProvider = Version.class,
    description = {
      "Judge spare cells by their bench tests, and say which one fits which place best.",
      "",
      "Each file is the test of one cell, with columns time_s, voltage_v and current_a: a discharge"
          + " at constant current from full to empty, and a step of load. IEC 61960-3 asks for"
          + " 0.2 It to the end voltage, and for 0.2 It for 10 s followed by 1.0 It for 1 s (It:"
          + " nominal capacity over an hour).",
      ""
    },
    footer = {
      "",
      "Examples:",
      "  sagbook spares --pack pack.toml spare-a.csv spare-b.csv",
      "  sagbook spares --pack pack.toml --results report bench/*.csv",
      "",
      "Exit codes: 0 answered, 2 the command or the pack description makes no sense, 3 a file can't",
      "be read."
    })
public final class SparesCommand implements Callable<Integer> {
  /** Places that would lose less than this by themselves ask for no spare, % of nominal. */
  private static final double WORTH_PERCENT = 3;

  @Spec private CommandSpec spec;

  @Option(
      names = "--pack",
      required = true,
      paramLabel = "FILE",
      description =
          "Pack description (TOML): nominal capacity and empty voltage are taken from it.")
  private Path pack;

  @Option(
      names = "--results",
      paramLabel = "PATH",
      description = "Folder of a report, or its results.json: then places are found for the cells.")
  private @Nullable Path results;

  @Option(
      names = "--bank",
      paramLabel = "NAME",
      description = "Which bank; needed where there are several.")
  private @Nullable String bank;

  @Parameters(arity = "1..*", paramLabel = "TEST", description = "Bench tests, one file a cell.")
  private List<Path> tests;

  @Override
  public Integer call() {
    PrintWriter out = spec.commandLine().getOut();
    PrintWriter err = spec.commandLine().getErr();
    try {
      PackDescription described = PackFile.read(pack);
      List<BenchTest> judged = new ArrayList<>();
      for (Path test : tests) {
        judged.add(
            BenchTest.of(
                BenchFile.read(test),
                described.nominalCapacityAh(),
                described.limits().cellEmptyVoltage()));
      }
      Optional<KeptString> string =
          results == null ? Optional.empty() : Optional.of(KeptResults.of(results, bank));
      print(judged, out);
      string.ifPresent(s -> match(s, judged, out));
      out.flush();
      return ExitCode.WELL;
    } catch (InputProblem problem) {
      err.println(problem.sentence());
      err.flush();
      return ExitCode.of(problem);
    }
  }

  private static void print(List<BenchTest> tests, PrintWriter out) {
    for (BenchTest test : tests) {
      out.println(test.name() + ":");
      out.println(
          "  capacity    "
              + said(test.capacityAh(), "Ah")
              + (test.capacityAh() instanceof Estimate.Known
                  ? String.format(
                      Locale.ROOT, ", at %.2f It%s", test.rateIt(), standard(test.rateIt()))
                  : ""));
      out.println(
          "  resistance  "
              + said(test.milliohm(), "m\u03a9")
              + (test.milliohm() instanceof Estimate.Known
                  ? String.format(
                      Locale.ROOT,
                      ", %.1f s after %s",
                      test.pulseS(),
                      test.isTwoStep()
                          ? "the second step, as IEC 61960-3 asks"
                          : "a step from rest, not the standard's two steps")
                  : ""));
    }
  }

  private static String standard(double rateIt) {
    return Math.abs(rateIt - 0.2) < 0.02 ? "" : " (the standard asks for 0.20 It)";
  }

  private static String said(Estimate estimate, String unit) {
    return estimate instanceof Estimate.Known known
        ? Numbers.with(Numbers.significant(known.value(), 4), unit)
        : "not known: " + ((Estimate.Unknown) estimate).reason();
  }

  private static void match(KeptString string, List<BenchTest> tests, PrintWriter out) {
    List<Integer> places = places(string);
    List<SpareMatch.Offer> offers = new ArrayList<>();
    for (BenchTest test : tests) {
      if (test.capacityAh() instanceof Estimate.Known capacity) {
        OptionalDouble milliohm = test.milliohm().find();
        Spare spare = new Spare(capacity.value(), milliohm, true);
        for (int place : places) {
          double gain =
              string
                  .whatIf(spare)
                  .outcome(Change.replace(List.of(place)))
                  .gainAh()
                  .find()
                  .orElse(0);
          offers.add(new SpareMatch.Offer(place, test.name(), gain, string.mismatch(milliohm)));
        }
      }
    }
    out.println();
    List<SpareMatch> matches = SpareMatch.of(places, offers);
    for (SpareMatch match : matches) {
      out.println(
          "Best in the place of cell "
              + match.cell()
              + ": "
              + match.spare()
              + ", about "
              + Numbers.with(Numbers.significant(match.gainAh(), 2), "Ah")
              + " more by itself.");
    }
    if (matches.isEmpty()) {
      out.println(
          places.isEmpty()
              ? "No cell costs the battery enough to be replaced."
              : "None of these would let the battery give more by itself.");
    }
  }

  /** Cells that cost the string something worth it, the costliest first. */
  private static List<Integer> places(KeptString string) {
    double worth = WORTH_PERCENT / 100 * string.nominalAh();
    return string.cells().stream()
        .map(CellEstimates::cell)
        .filter(cell -> string.costAloneAh(cell) > worth)
        .sorted(Comparator.comparingDouble(cell -> -string.costAloneAh(cell)))
        .toList();
  }
}
