package sagbook.season;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import sagbook.model.Estimate;
import sagbook.record.DiaryEvent;

/** The season's sentences. */
final class SeasonWords {
  private static final String MINUS = "\u2212";

  private SeasonWords() {}

  /** Such as "−14.0 % a year (−15.1 to −12.9)". */
  static String rate(Estimate.Known rate) {
    return number(rate.value(), "%+.1f")
        + " % a year ("
        + number(rate.low(), "%+.1f")
        + " to "
        + number(rate.high(), "%+.1f")
        + ")";
  }

  static String number(double value, String format) {
    return String.format(Locale.ROOT, format, value).replace("-", MINUS);
  }

  /** Such as "cell replaced on 2026-03-14, cell 9 (B17): swelling". */
  static String event(DiaryEvent event) {
    StringBuilder words = new StringBuilder(event.kind().words());
    words.append(" on ").append(event.day());
    if (event.cell() > 0) {
      words.append(", cell ").append(event.cell());
    }
    if (!event.mark().isEmpty()) {
      words.append(" (").append(event.mark()).append(')');
    }
    if (!event.text().isEmpty()) {
      words.append(": ").append(event.text());
    }
    return words.toString();
  }

  static String newHistory(DiaryEvent event, String mark) {
    return event.kind() == DiaryEvent.Kind.CELL_REPLACED
        ? "Another cell sits here since "
            + event.day()
            + " ("
            + mark
            + "); its history starts there."
        : "The cell that sits here since " + event.day() + " (" + mark + ") kept its history.";
  }

  static String drifts(boolean fades, boolean stiffens) {
    return fades && stiffens
        ? "It drifts: it loses capacity and gains resistance faster than the others."
        : fades
            ? "It drifts: it loses capacity faster than the others."
            : "It drifts: its resistance rises faster than the others’.";
  }

  static List<String> cell(
      Line.Result share,
      Estimate capacity,
      Estimate capacityAgainst,
      Common common,
      Line.Result resistance,
      Estimate resistanceAgainst,
      int cells) {
    List<String> evidence = new ArrayList<>();
    if (share instanceof Line.Result.Drawn drawn
        && capacityAgainst instanceof Estimate.Known against
        && capacity instanceof Estimate.Known own) {
      evidence.add(
          "Against the string’s middle cell its capacity changed by "
              + rate(against)
              + " over "
              + months(drawn.line())
              + "; "
              + trendTest(drawn.line())
              + ".");
      evidence.add(string(common) + ", which together gives " + rate(own) + ".");
    }
    if (resistance instanceof Line.Result.Drawn drawn) {
      evidence.add(
          "Its resistance at 25 °C changed by " + rate(drawn.line().percentPerYear()) + ".");
    }
    if (resistanceAgainst instanceof Estimate.Known against) {
      evidence.add("Against the string its resistance changed by " + rate(against) + ".");
    }
    evidence.add(
        "It would count as drifting from "
            + number(CellSeasons.CAPACITY_FLOOR, "%.1f")
            + " % of capacity or "
            + number(CellSeasons.RESISTANCE_FLOOR, "%.0f")
            + " % of resistance a year worse than the string, beyond what chance does among "
            + cells
            + " cells.");
    return evidence;
  }

  private static String string(Common common) {
    String taken = rate(common.capacityRate());
    String field = "published field measurements of home storage (Figgener et al. 2024)";
    return switch (common.source()) {
      case MEASURED -> "The middle cell itself changed by " + taken;
      case WEIGHED ->
          "What the middle cell itself lost is known only roughly; weighed with "
              + field
              + " it is "
              + taken;
      case PUBLISHED ->
          "What the middle cell itself lost the record can’t tell; "
              + taken
              + " is taken from "
              + field;
    };
  }

  private static String months(Line line) {
    return line.months()
        + " months"
        + (line.seasonal() ? ", like months of the years compared" : "");
  }

  private static String trendTest(Line line) {
    double p = line.test().p();
    String chance = p < 0.001 ? "less than 0.1 %" : String.format(Locale.ROOT, "%.1f %%", 100 * p);
    return "by chance alone it would rise or fall so steadily in "
        + chance
        + " of cases (Mann–Kendall)";
  }

  /** The one sentence of a bank. */
  static String headline(List<SeasonResult.Cell> cells, Common common) {
    List<SeasonResult.Cell> drifting =
        cells.stream().filter(SeasonResult.Cell::isDrifting).toList();
    String string =
        !(Common.rate(common.capacity()) instanceof Estimate.Known measured)
            ? "what the whole string loses can’t be told yet"
            : common.isAgeing()
                ? "the string as a whole changes by " + rate(measured)
                : "the string as a whole shows no loss that the ranges bear out";
    boolean none = cells.stream().noneMatch(c -> c.capacityTrend() instanceof Estimate.Known);
    if (drifting.isEmpty()) {
      return none
          ? "The record is too short or tells too little for trends yet."
          : "No cell drifts against the others; " + string + ".";
    }
    if (drifting.size() == 1
        && drifting.get(0).capacityTrend() instanceof Estimate.Known own
        && drifting.get(0).capacityAgainstString() instanceof Estimate.Known against
        && against.isBelow(0)) {
      return "Cell "
          + drifting.get(0).cell()
          + " drifts: its capacity changes by "
          + rate(own)
          + "; "
          + string
          + ".";
    }
    return (drifting.size() == 1 ? "Cell " : "Cells ")
        + drifting.stream().map(c -> Integer.toString(c.cell())).collect(Collectors.joining(", "))
        + (drifting.size() == 1 ? " drifts" : " drift")
        + " against the others; "
        + string
        + ".";
  }
}
