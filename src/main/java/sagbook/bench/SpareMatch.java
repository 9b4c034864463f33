package sagbook.bench;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;

/**
 * Which spares go to which places together: the string gives what its weakest cell gives, so of two
 * cells that are weak alike neither gains anything alone, and places can't be filled one by one.
 * All ways of filling them are tried; there are few.
 *
 * @param spares the spare's name by place, 1 for the first cell; places that get none are left out
 * @param gainAh what they buy together, Ah
 */
public record SpareMatch(Map<Integer, String> spares, double gainAh) {
  /** Gains closer than this are alike: then fewer cells are touched, and the better match goes. */
  private static final double ALIKE_AH = 0.1;

  /** More places or spares than this are not tried against each other: 13,327 ways at most. */
  public static final int MOST = 6;

  public SpareMatch {
    spares = Map.copyOf(spares);
  }

  /**
   * The way of filling places that buys most, with the fewest spares that buy as much.
   *
   * @param places at most {@value #MOST}
   * @param spares names, at most {@value #MOST}
   * @param gainAh what a way of filling places buys, Ah
   * @param mismatch how far a spare's resistance lies from the string's median, as a share
   */
  public static SpareMatch of(
      List<Integer> places,
      List<String> spares,
      ToDoubleFunction<Map<Integer, String>> gainAh,
      ToDoubleFunction<String> mismatch) {
    if (places.size() > MOST || spares.size() > MOST) {
      throw new IllegalArgumentException("at most " + MOST + " places and spares");
    }
    List<SpareMatch> ways = new ArrayList<>();
    fill(places, 0, spares, new TreeMap<>(), way -> ways.add(match(way, gainAh)));
    double most = ways.stream().mapToDouble(SpareMatch::gainAh).max().orElse(0);
    return ways.stream()
        .filter(way -> way.gainAh() > most - ALIKE_AH)
        .min(
            Comparator.comparingInt((SpareMatch way) -> way.spares().size())
                .thenComparingDouble(
                    way -> way.spares().values().stream().mapToDouble(mismatch).sum())
                .thenComparing(way -> new TreeMap<>(way.spares()).toString()))
        .orElseThrow();
  }

  private static SpareMatch match(
      Map<Integer, String> way, ToDoubleFunction<Map<Integer, String>> gainAh) {
    return new SpareMatch(way, way.isEmpty() ? 0 : gainAh.applyAsDouble(way));
  }

  private interface Sink {
    void take(Map<Integer, String> way);
  }

  private static void fill(
      List<Integer> places, int next, List<String> spares, Map<Integer, String> way, Sink sink) {
    if (next == places.size()) {
      sink.take(way);
      return;
    }
    fill(places, next + 1, spares, way, sink);
    for (String spare : spares) {
      if (!way.containsValue(spare)) {
        way.put(places.get(next), spare);
        fill(places, next + 1, spares, way, sink);
        way.remove(places.get(next));
      }
    }
  }
}
