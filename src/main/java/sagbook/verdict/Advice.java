package sagbook.verdict;

import java.util.List;

/**
 * One decision.
 *
 * @param action what kind of thing to do
 * @param cells the cells it is about, 1 for the first; empty for none in particular
 * @param sentence what to do, plain words
 * @param why what it rests on, plain sentences
 * @param mindChanger what would change the mind
 * @param nextObservation the cheapest thing to look at next
 */
public record Advice(
    Action action,
    List<Integer> cells,
    String sentence,
    List<String> why,
    String mindChanger,
    String nextObservation) {
  public Advice {
    cells = List.copyOf(cells);
    why = List.copyOf(why);
  }
}
