package sagbook.verdict;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import sagbook.estimate.BankEstimates;
import sagbook.estimate.CellEstimates;
import sagbook.model.Estimate;
import sagbook.wording.Words;

/** What would make next month's answers better. */
final class NextMonth {
  private static final Words WORDS = Words.english();

  private NextMonth() {}

  static List<String> of(BankEstimates estimates, List<String> loggingAdvice) {
    Set<String> all = new LinkedHashSet<>();
    all.addAll(reasons(estimates.cells(), CellEstimates::capacityRelative));
    all.addAll(reasons(estimates.cells(), CellEstimates::resistanceRelative));
    if (estimates.medianCapacityAh() instanceof Estimate.Unknown u
        && !isSaid(u, loggingAdvice)
        && !isOfOpenCell(u, estimates.cells())) {
      all.add(VerdictWords.capital(u.reason()) + ".");
    }
    all.addAll(loggingAdvice);
    return List.copyOf(all);
  }

  /** Why a quantity is unknown, each reason once, with the cells that it holds for unless all. */
  private static List<String> reasons(
      List<CellEstimates> cells, Function<CellEstimates, Estimate> quantity) {
    Map<String, List<Integer>> places = new LinkedHashMap<>();
    for (CellEstimates cell : cells) {
      if (quantity.apply(cell) instanceof Estimate.Unknown unknown) {
        places.computeIfAbsent(unknown.reason(), r -> new ArrayList<>()).add(cell.cell());
      }
    }
    List<String> sentences = new ArrayList<>();
    places.forEach(
        (reason, those) ->
            sentences.add(
                (those.size() == cells.size()
                        ? VerdictWords.capital(reason)
                        : VerdictWords.capital(VerdictWords.cells(those)) + ": " + reason)
                    + "."));
    return sentences;
  }

  /** Whether what hides the string's capacity is a cell that the same test is asked for anyway. */
  private static boolean isOfOpenCell(Estimate.Unknown unknown, List<CellEstimates> cells) {
    return cells.stream()
        .filter(cell -> cell.capacityRelative() instanceof Estimate.Unknown)
        .map(cell -> WORDS.say("unknown.empty-first", Integer.toString(cell.cell())))
        .anyMatch(unknown.reason()::equals);
  }

  /** Whether the advice on logging says the same of the current. */
  private static boolean isSaid(Estimate.Unknown unknown, List<String> loggingAdvice) {
    return unknown.reason().equals(WORDS.say("unknown.no-current.capacity"))
        && loggingAdvice.contains(WORDS.say("logging.current"));
  }
}
