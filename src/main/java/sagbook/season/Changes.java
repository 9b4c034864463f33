package sagbook.season;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import sagbook.numeric.Pettitt;
import sagbook.numeric.Robust;
import sagbook.numeric.TheilSen;
import sagbook.record.DiaryEvent;
import sagbook.record.Quantity;

/**
 * Finds steps in what a cell does against the string: Pettitt's test, where two levels also explain
 * the months better than a straight line does. Below {@value #FEWEST} months the test can't show
 * anything at 5 %. A step that the diary explains needs 5 %; one that it doesn't needs that for all
 * cells and quantities together (Bonferroni).
 */
final class Changes {
  private static final List<Quantity> QUANTITIES =
      List.of(Quantity.CAPACITY_RELATIVE, Quantity.RESISTANCE_RELATIVE);

  private static final int FEWEST = 11;
  private static final double CHANCE = 0.05;
  private static final int NEAR_DAYS = 31;

  private final Places places;
  private final ZoneId zone;
  private final int cells;

  Changes(Places places, ZoneId zone, int cells) {
    this.places = places;
    this.zone = zone;
    this.cells = cells;
  }

  List<SeasonResult.Change> all() {
    List<SeasonResult.Change> changes = new ArrayList<>();
    for (int place = 1; place <= cells; place++) {
      for (Quantity quantity : QUANTITIES) {
        change(place, quantity).ifPresent(changes::add);
      }
    }
    return changes;
  }

  private Optional<SeasonResult.Change> change(int place, Quantity quantity) {
    List<Point> points = places.history(place, quantity, kind -> false);
    if (points.size() < FEWEST) {
      return Optional.empty();
    }
    double[] y = points.stream().mapToDouble(p -> p.value().value()).toArray();
    double[] t = points.stream().mapToDouble(p -> p.yearsSince(points.get(0).time())).toArray();
    Pettitt test = Pettitt.of(y);
    if (test.before() == 0 || !stepsRatherThanSlopes(t, y, test.before())) {
      return Optional.empty();
    }
    LocalDate after = day(points.get(test.before() - 1));
    LocalDate before = day(points.get(test.before()));
    Optional<DiaryEvent> match = match(place, after, before);
    if (!(test.p() < (match.isPresent() ? CHANCE : CHANCE / (QUANTITIES.size() * cells)))) {
      return Optional.empty();
    }
    double old = Robust.median(Arrays.copyOf(y, test.before()));
    double now = Robust.median(Arrays.copyOfRange(y, test.before(), y.length));
    return Optional.of(
        new SeasonResult.Change(
            place,
            quantity,
            after,
            before,
            now - old,
            test.p(),
            words(place, quantity, after, before, now - old, match)));
  }

  private static boolean stepsRatherThanSlopes(double[] t, double[] y, int before) {
    TheilSen line = TheilSen.of(t, y, 0.95);
    double old = Robust.median(Arrays.copyOf(y, before));
    double now = Robust.median(Arrays.copyOfRange(y, before, y.length));
    double fromLine = 0;
    double fromLevels = 0;
    for (int i = 0; i < y.length; i++) {
      fromLine += Math.abs(y[i] - line.intercept() - line.slope() * t[i]);
      fromLevels += Math.abs(y[i] - (i < before ? old : now));
    }
    return fromLevels < fromLine;
  }

  private Optional<DiaryEvent> match(int place, LocalDate after, LocalDate before) {
    return places.events().stream()
        .filter(e -> e.cell() == 0 || e.cell() == place)
        .filter(
            e ->
                !e.day().isBefore(after.minusDays(NEAR_DAYS))
                    && !e.day().isAfter(before.plusDays(NEAR_DAYS)))
        .findFirst();
  }

  private static String words(
      int place,
      Quantity quantity,
      LocalDate after,
      LocalDate before,
      double change,
      Optional<DiaryEvent> match) {
    String known =
        match
            .map(event -> SeasonWords.say("diary", SeasonWords.event(event)))
            .orElse(SeasonWords.say("diary.nothing"));
    return SeasonWords.say(
        quantity == Quantity.CAPACITY_RELATIVE ? "step.capacity" : "step.resistance",
        Integer.toString(place),
        SeasonWords.number(100 * change, "%+.1f"),
        after.toString(),
        before.toString(),
        known);
  }

  private LocalDate day(Point point) {
    return LocalDate.ofInstant(point.time(), zone);
  }
}
