package sagbook.bench;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Which spare goes to which place.
 *
 * @param cell the place, 1 for the first
 * @param spare the spare's name
 * @param gainAh what it buys there by itself, Ah
 */
public record SpareMatch(int cell, String spare, double gainAh) {
  /** Gains closer than this are alike; then the spare that matches the string's resistance goes. */
  private static final double ALIKE_AH = 0.1;

  /**
   * What a spare would buy in a place.
   *
   * @param cell the place
   * @param spare its name
   * @param gainAh more charge for the string, Ah
   * @param mismatch how far its resistance lies from the string's median, as a share; 0 if unknown
   */
  public record Offer(int cell, String spare, double gainAh, double mismatch) {}

  /**
   * Gives each place in turn the spare that buys most there, and of those that buy alike the one
   * whose resistance matches best; a spare is used once, and a place gets none that buys nothing.
   *
   * @param places in the order of their need
   */
  public static List<SpareMatch> of(List<Integer> places, List<Offer> offers) {
    List<SpareMatch> matches = new ArrayList<>();
    List<String> used = new ArrayList<>();
    for (int place : places) {
      List<Offer> open =
          offers.stream()
              .filter(o -> o.cell() == place && o.gainAh() > ALIKE_AH && !used.contains(o.spare()))
              .toList();
      double most = open.stream().mapToDouble(Offer::gainAh).max().orElse(0);
      open.stream()
          .filter(o -> o.gainAh() > most - ALIKE_AH)
          .min(Comparator.comparingDouble(Offer::mismatch).thenComparing(Offer::spare))
          .ifPresent(
              o -> {
                used.add(o.spare());
                matches.add(new SpareMatch(place, o.spare(), o.gainAh()));
              });
    }
    return matches;
  }
}
