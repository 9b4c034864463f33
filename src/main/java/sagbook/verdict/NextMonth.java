package sagbook.verdict;

import java.util.ArrayList;
import java.util.List;
import sagbook.estimate.BankEstimates;
import sagbook.estimate.CellEstimates;
import sagbook.model.Estimate;

/** What would make next month's answers better. */
final class NextMonth {
  private NextMonth() {}

  static List<String> of(BankEstimates estimates, List<String> loggingAdvice) {
    List<String> all = new ArrayList<>();
    for (CellEstimates cell : estimates.cells()) {
      if (cell.capacityRelative() instanceof Estimate.Unknown u) {
        add(all, VerdictWords.capital(u.reason()) + ".");
      }
      if (cell.resistanceRelative() instanceof Estimate.Unknown u) {
        add(all, VerdictWords.capital(u.reason()) + ".");
      }
    }
    if (estimates.medianCapacityAh() instanceof Estimate.Unknown u) {
      add(all, VerdictWords.capital(u.reason()) + ".");
    }
    loggingAdvice.forEach(sentence -> add(all, sentence));
    return all;
  }

  private static void add(List<String> all, String sentence) {
    if (!all.contains(sentence)) {
      all.add(sentence);
    }
  }
}
