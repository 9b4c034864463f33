package sagbook.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import java.util.function.ToDoubleFunction;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import sagbook.bench.BenchTest;
import sagbook.bench.SpareMatch;
import sagbook.estimate.CellEstimates;
import sagbook.issue.InputProblem;
import sagbook.logfile.BenchFile;
import sagbook.model.Estimate;
import sagbook.model.PackDescription;
import sagbook.record.KeptString;
import sagbook.report.words.Numbers;
import sagbook.whatif.Spare;
import sagbook.whatif.WhatIf;
import sagbook.wording.Words;

/** Spare cells judged from their bench tests. */
@Command(name = "spares", mixinStandardHelpOptions = true, versionProvider = Version.class)
public final class SparesCommand implements Callable<Integer> {
  private static final Words WORDS = Words.english();

  /** Places that would lose less than this by themselves ask for no spare, % of nominal. */
  private static final double WORTH_PERCENT = 3;

  @Spec private CommandSpec spec;

  @Mixin private PackOption pack;

  @Mixin private ResultsOptions results;

  @Parameters(arity = "1..*", paramLabel = "TEST")
  private List<Path> tests;

  @Override
  public Integer call() throws InputProblem {
    PrintWriter out = spec.commandLine().getOut();
    PackDescription described = pack.described();
    List<BenchTest> judged = new ArrayList<>();
    for (Path test : tests) {
      judged.add(
          BenchTest.of(
              BenchFile.read(test),
              described.nominalCapacityAh(),
              described.limits().cellEmptyVoltage()));
    }
    Optional<KeptString> string = results.string();
    print(judged, out);
    string.ifPresent(s -> match(s, judged, out));
    out.flush();
    return ExitCode.WELL;
  }

  private static void print(List<BenchTest> tests, PrintWriter out) {
    for (BenchTest test : tests) {
      out.println(WORDS.say("spares.of", test.name()));
      out.println("  " + capacity(test));
      out.println("  " + resistance(test));
    }
  }

  private static String capacity(BenchTest test) {
    if (!(test.capacityAh() instanceof Estimate.Known known)) {
      return WORDS.say("spares.capacity.unknown", reason(test.capacityAh()));
    }
    boolean standard = Math.abs(test.rateIt() - 0.2) < 0.02;
    return WORDS.say(
        standard ? "spares.capacity" : "spares.capacity.other",
        Numbers.with(Numbers.significant(known.value(), 4), "Ah"),
        Words.fixed(test.rateIt(), 2));
  }

  private static String resistance(BenchTest test) {
    if (!(test.milliohm() instanceof Estimate.Known known)) {
      return WORDS.say("spares.resistance.unknown", reason(test.milliohm()));
    }
    String key =
        test.form() == BenchTest.Form.FROM_REST
            ? "spares.resistance.rest"
            : test.isAtTheStandardsCurrents() ? "spares.resistance" : "spares.resistance.other";
    return WORDS.say(
        key,
        Numbers.with(Numbers.significant(known.value(), 4), "m\u03a9"),
        Words.fixed(test.pulseS(), 1),
        Words.fixed(test.fromIt(), 2),
        Words.fixed(test.toIt(), 2),
        test.form().words());
  }

  private static String reason(Estimate estimate) {
    return estimate instanceof Estimate.Unknown unknown ? unknown.reason() : "";
  }

  private static void match(KeptString string, List<BenchTest> tests, PrintWriter out) {
    out.println();
    List<Integer> places = places(string);
    if (places.isEmpty()) {
      out.println(WORDS.say("spares.none-needed"));
      return;
    }
    Map<String, Spare> spares = spares(tests);
    WhatIf whatIf = string.whatIf(string.spare());
    ToDoubleFunction<Map<Integer, Spare>> likeliest = whatIf.likeliestGainAh();
    SpareMatch best =
        SpareMatch.of(
            places,
            List.copyOf(spares.keySet()),
            way -> likeliest.applyAsDouble(put(way, spares)),
            name -> string.mismatch(put(name, spares).resistanceMilliohm()));
    if (best.spares().isEmpty()) {
      out.println(WORDS.say("spares.none-better"));
      return;
    }
    new TreeMap<>(best.spares())
        .forEach((cell, name) -> out.println(WORDS.say("spares.best", cell.toString(), name)));
    if (whatIf.gainAh(put(best.spares(), spares)) instanceof Estimate.Known gain) {
      out.println(
          WORDS.say(
              best.spares().size() == 1 ? "spares.gain.one" : "spares.gain.all",
              Words.fixed(gain.value(), 0),
              Words.fixed(gain.low(), 0),
              Words.fixed(gain.high(), 0)));
    }
  }

  /** Those of known capacity, the largest first as far as they can be tried together. */
  private static Map<String, Spare> spares(List<BenchTest> tests) {
    Map<String, Spare> spares = new LinkedHashMap<>();
    tests.stream()
        .filter(test -> test.capacityAh() instanceof Estimate.Known)
        .sorted(Comparator.comparingDouble(test -> -test.capacityAh().find().orElse(0)))
        .limit(SpareMatch.MOST)
        .forEach(
            test ->
                spares.put(
                    test.name(),
                    new Spare(test.capacityAh().find().orElse(0), test.milliohm().find(), true)));
    return spares;
  }

  private static Spare put(String name, Map<String, Spare> spares) {
    return Objects.requireNonNull(spares.get(name));
  }

  private static Map<Integer, Spare> put(Map<Integer, String> way, Map<String, Spare> spares) {
    Map<Integer, Spare> put = new TreeMap<>();
    way.forEach((cell, name) -> put.put(cell, put(name, spares)));
    return put;
  }

  /** Cells that cost the string something worth it, the costliest first. */
  private static List<Integer> places(KeptString string) {
    double worth = WORTH_PERCENT / 100 * string.nominalAh();
    return string.cells().stream()
        .map(CellEstimates::cell)
        .filter(cell -> string.costAloneAh(cell) > worth)
        .sorted(Comparator.comparingDouble(cell -> -string.costAloneAh(cell)))
        .limit(SpareMatch.MOST)
        .toList();
  }
}
