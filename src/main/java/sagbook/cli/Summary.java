package sagbook.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import sagbook.model.Estimate;
import sagbook.model.Finding;
import sagbook.record.BankResult;
import sagbook.record.CheckResult;
import sagbook.report.words.Numbers;
import sagbook.verdict.CellVerdict;
import sagbook.verdict.Severity;
import sagbook.wording.Words;

/** What a check prints: the one sentence, the weakest cells, and where the report lies. */
final class Summary {
  private static final Words WORDS = Words.english();
  private static final int FEWEST_LINES = 3;

  private final CheckResult result;

  Summary(CheckResult result) {
    this.result = result;
  }

  void print(PrintWriter out, Path report) {
    for (BankResult bank : result.banks()) {
      if (result.banks().size() > 1) {
        out.println(WORDS.say("terminal.bank", bank.bank()));
      }
      out.println(bank.verdict().headline());
      out.println();
      out.printf(
          Locale.ROOT,
          "%5s  %-22s %-24s %s%n",
          WORDS.say("terminal.cell"),
          WORDS.say("terminal.finding"),
          WORDS.say("terminal.capacity"),
          WORDS.say("terminal.resistance"));
      List<CellVerdict> ranked =
          bank.verdict().cells().stream()
              .sorted(Comparator.comparingInt(CellVerdict::rank))
              .toList();
      for (CellVerdict cell : ranked) {
        if (cell.rank() <= FEWEST_LINES || cell.finding() != Finding.HEALTHY) {
          out.printf(
              Locale.ROOT,
              "%5d  %-22s %-24s %s%n",
              cell.cell(),
              WORDS.say("finding." + cell.findingKey()),
              share(cell.estimates().capacityRelative()),
              share(cell.estimates().resistanceRelative()));
        }
      }
      out.println("       " + WORDS.say("terminal.explained"));
      out.println();
      for (String todo : bank.verdict().todo()) {
        out.println("- " + todo);
      }
      measure(bank).forEach(out::println);
    }
    out.println(WORDS.say("terminal.report", report.toString()));
  }

  /** What to measure first where cells could not be judged. */
  private static List<String> measure(BankResult bank) {
    boolean open =
        bank.verdict().cells().stream()
            .anyMatch(cell -> cell.finding() == Finding.INSUFFICIENT_EVIDENCE);
    if (!open || bank.verdict().severity() == Severity.ACT_NOW) {
      return List.of();
    }
    List<String> lines = new ArrayList<>();
    lines.add("- " + WORDS.say("terminal.measure", bank.plan().why()));
    bank.plan().steps().forEach(step -> lines.add("  " + step.doing()));
    return lines;
  }

  private static String share(Estimate estimate) {
    if (estimate.map(ratio -> 100 * ratio) instanceof Estimate.Known k) {
      return WORDS.say("terminal.share", Numbers.value(k), Numbers.low(k), Numbers.high(k));
    }
    return WORDS.say("terminal.unknown");
  }
}
