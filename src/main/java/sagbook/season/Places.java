package sagbook.season;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import sagbook.model.Estimate;
import sagbook.record.DiaryEvent;
import sagbook.record.KeptMonth;
import sagbook.record.Quantity;

/**
 * Which cell sat where when, from a bank's diary. A cell that was replaced starts a new history,
 * one that was moved keeps its own.
 */
final class Places {
  private static final double PULSE_TOLERANCE = 0.1;

  private final List<KeptMonth> months;
  private final List<DiaryEvent> events;
  private final ZoneId zone;

  /**
   * Those of a bank.
   *
   * @param months of one bank, oldest first, at least one
   * @param diary of the battery, oldest first
   */
  Places(List<KeptMonth> months, List<DiaryEvent> diary) {
    this.months = List.copyOf(months);
    this.zone = months.get(0).battery().zone();
    String bank = months.get(0).bank().bank();
    this.events =
        diary.stream()
            .filter(e -> e.bank().isEmpty() || e.bank().equals(bank))
            .sorted(Comparator.comparing(DiaryEvent::day))
            .toList();
  }

  List<DiaryEvent> events() {
    return events;
  }

  /** Serial or mark of the cell that sits at a place on a day. */
  String mark(int place, LocalDate day) {
    String mark = firstMark(place);
    for (DiaryEvent event : events) {
      if (event.cell() == place && !event.day().isAfter(day)) {
        mark =
            switch (event.kind()) {
              case CELL_REPLACED ->
                  event.mark().isEmpty()
                      ? SeasonWords.say(
                          "place.since", Integer.toString(place), event.day().toString())
                      : event.mark();
              case CELL_MOVED, CELL_MARKED -> event.mark().isEmpty() ? mark : event.mark();
              default -> mark;
            };
      }
    }
    return mark;
  }

  /** A cell that is named later had that name all along. */
  private String firstMark(int place) {
    for (DiaryEvent event : events) {
      if (event.cell() == place) {
        if (event.kind() == DiaryEvent.Kind.CELL_MARKED && !event.mark().isEmpty()) {
          return event.mark();
        }
        if (changesCell(event)) {
          break;
        }
      }
    }
    return SeasonWords.say("place", Integer.toString(place));
  }

  private static boolean changesCell(DiaryEvent event) {
    return event.kind() == DiaryEvent.Kind.CELL_REPLACED
        || event.kind() == DiaryEvent.Kind.CELL_MOVED;
  }

  /** Serial or mark of the cell that sits at a place in the newest month. */
  String markNow(int place) {
    return mark(place, lastDay(months.get(months.size() - 1)));
  }

  /** The newest event at the place that put another cell there. */
  Optional<DiaryEvent> replacement(int place) {
    return events.stream()
        .filter(e -> e.cell() == place && changesCell(e))
        .reduce((first, second) -> second);
  }

  /**
   * The history of the cell that sits at a place now, wherever it sat before.
   *
   * @param breaks events at its place after which values can't be compared with those before
   */
  List<Point> history(int place, Quantity quantity, Predicate<DiaryEvent.Kind> breaks) {
    List<Point> points = new ArrayList<>();
    String mark = markNow(place);
    for (KeptMonth month : months) {
      int seat = seat(month, mark);
      if (seat == 0) {
        continue;
      }
      if (isBroken(month, seat, breaks)) {
        points.clear();
        continue;
      }
      if (isComparable(month, quantity)
          && month.bank().cells().get(seat - 1).estimate(quantity)
              instanceof Estimate.Known known) {
        points.add(new Point(month.middle(), known));
      }
      if (breaksAfter(month, seat, breaks)) {
        points.clear();
      }
    }
    return points;
  }

  /** Where a cell sat all through a month; 0 when nowhere. */
  private int seat(KeptMonth month, String mark) {
    for (int place = 1; place <= month.cells().size(); place++) {
      if (mark(place, firstDay(month)).equals(mark) && mark(place, lastDay(month)).equals(mark)) {
        return place;
      }
    }
    return 0;
  }

  private boolean isBroken(KeptMonth month, int place, Predicate<DiaryEvent.Kind> breaks) {
    return events.stream()
        .anyMatch(
            e ->
                breaks.test(e.kind())
                    && concerns(e, place)
                    && e.day().isAfter(firstDay(month))
                    && e.day().isBefore(lastDay(month)));
  }

  /** Whether a break lies between this month and the next one. */
  private boolean breaksAfter(KeptMonth month, int place, Predicate<DiaryEvent.Kind> breaks) {
    int next = months.indexOf(month) + 1;
    LocalDate until = next < months.size() ? firstDay(months.get(next)) : LocalDate.MAX;
    return events.stream()
        .anyMatch(
            e ->
                breaks.test(e.kind())
                    && concerns(e, place)
                    && next < months.size()
                    && !e.day().isBefore(lastDay(month))
                    && !e.day().isAfter(until));
  }

  /** A cell that moves takes its history along, whatever else its place saw. */
  private static boolean concerns(DiaryEvent event, int place) {
    return event.cell() == 0 || event.cell() == place;
  }

  /** Resistances compare only after the same pulse time. */
  private boolean isComparable(KeptMonth month, Quantity quantity) {
    if (quantity != Quantity.RESISTANCE_MOHM && quantity != Quantity.RESISTANCE_RELATIVE) {
      return true;
    }
    double now = months.get(months.size() - 1).conditions().resistancePulseS();
    double then = month.conditions().resistancePulseS();
    return Math.abs(then - now) <= PULSE_TOLERANCE * now;
  }

  LocalDate firstDay(KeptMonth month) {
    return day(month.bank().from());
  }

  LocalDate lastDay(KeptMonth month) {
    return day(month.bank().to());
  }

  private LocalDate day(Instant time) {
    return LocalDate.ofInstant(time, zone);
  }
}
