package sagbook.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;
import java.util.TreeSet;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import sagbook.issue.InputProblem;
import sagbook.record.KeptString;
import sagbook.whatif.Change;
import sagbook.whatif.Spare;
import sagbook.whatif.WhatIf;

/** What replacing cells would buy, from the last results. */
@Command(name = "swap", mixinStandardHelpOptions = true, versionProvider = Version.class)
public final class SwapCommand implements Callable<Integer> {
  private static final Path USUAL = Path.of("report");
  private static final double LEAST_AH = 0.01;
  private static final double MOST_AH = 99_999;
  private static final double LEAST_MILLIOHM = 0.001;
  private static final double MOST_MILLIOHM = 1000;

  @Spec private CommandSpec spec;

  @Mixin private ResultsOptions results;

  @Option(names = "--cell", required = true, paramLabel = "N")
  private List<Integer> cells;

  @Option(names = "--spare-ah", paramLabel = "AH")
  private @Nullable Double spareAh;

  @Option(names = "--spare-mohm", paramLabel = "MOHM")
  private @Nullable Double spareMilliohm;

  @Override
  public Integer call() throws InputProblem {
    PrintWriter out = spec.commandLine().getOut();
    KeptString string = results.stringOr(USUAL);
    Spare spare = spare(string.spare());
    Change change = Change.replace(places(string));
    WhatIf whatIf = string.whatIf(spare);
    new SwapAnswer(string, spare, whatIf.sagNow(), whatIf.outcome(change)).print(out);
    out.flush();
    return ExitCode.WELL;
  }

  private List<Integer> places(KeptString string) throws InputProblem {
    int n = string.cells().size();
    for (int cell : cells) {
      if (cell < 1 || cell > n) {
        throw InputProblem.usage(
            "problem.option.cell", Integer.toString(cell), Integer.toString(n));
      }
    }
    List<Integer> places = List.copyOf(new TreeSet<>(cells));
    if (places.size() == n) {
      throw InputProblem.usage("problem.option.all-cells", Integer.toString(n));
    }
    return places;
  }

  private Spare spare(Spare described) throws InputProblem {
    if (spareAh != null && !(spareAh >= LEAST_AH && spareAh <= MOST_AH)) {
      throw InputProblem.usage("problem.option.spare-ah", spareAh.toString());
    }
    if (spareMilliohm != null
        && !(spareMilliohm >= LEAST_MILLIOHM && spareMilliohm <= MOST_MILLIOHM)) {
      throw InputProblem.usage("problem.option.spare-mohm", spareMilliohm.toString());
    }
    return new Spare(
        spareAh == null ? described.capacityAh() : spareAh,
        spareMilliohm == null ? described.resistanceMilliohm() : OptionalDouble.of(spareMilliohm),
        spareAh != null || described.told());
  }
}
