package sagbook.verdict;

import java.util.List;

/**
 * What is the matter with a bank.
 *
 * @param severity how soon somebody has to do something
 * @param advice the one thing to do first
 * @param headline the one sentence that comes first in the report
 * @param todo what to do now, most urgent first, plain sentences; empty when nothing
 * @param nextMonth what to measure or change in the logging, plain sentences
 * @param cells one a cell, cell 1 first
 */
public record BankVerdict(
    Severity severity,
    Advice advice,
    String headline,
    List<String> todo,
    List<String> nextMonth,
    List<CellVerdict> cells) {
  public BankVerdict {
    todo = List.copyOf(todo);
    nextMonth = List.copyOf(nextMonth);
    cells = List.copyOf(cells);
  }
}
