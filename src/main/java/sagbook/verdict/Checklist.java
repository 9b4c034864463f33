package sagbook.verdict;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What to go through before laying hands on the battery for an action. Common practice, no source;
 * the cell maker's sheet, local codes and licensed practice come before all of it.
 *
 * @param action what is to be done
 * @param points one sentence each, in the order to go through them
 */
public record Checklist(Action action, List<String> points) {
  private static final String CODES =
      "Local electrical and fire codes, the cell maker's sheet and a licensed electrician come"
          + " before this list; if any point is beyond you, stop and call one.";
  private static final String ALONE =
      "Don't work alone; have somebody near who knows where the main disconnect is, and a way out"
          + " that is clear.";
  private static final String BARE =
      "Take off rings, watches and chains; wear eye protection and insulating gloves.";
  private static final String TOOLS =
      "Use insulated tools, one at a time, and cover every terminal that you don't work on.";
  private static final String ISOLATE =
      "Switch off charger and loads, open the main disconnect, secure it against closing, and"
          + " check with a meter that no current flows.";
  private static final String SMELL =
      "Leave a cell alone that is swollen, leaks, smells or is hot; keep away and ask somebody"
          + " qualified.";

  public Checklist {
    points = List.copyOf(points);
  }

  /** The list for an action; nothing for one that touches nothing. */
  public static Optional<Checklist> of(Action action) {
    List<String> own =
        switch (action) {
          case CHECK_SENSOR ->
              List.of(
                  BARE,
                  "Measure with a meter whose probes are shrouded and fused, between the terminals"
                      + " of the one cell; the battery stays closed and connected.",
                  "Before unplugging a sense wire, ask the board maker in which order.");
          case MEND_JOINT ->
              List.of(
                  ISOLATE,
                  "Discharge to about a third first: a short then does the least harm, and no cell"
                      + " is near empty.",
                  BARE,
                  TOOLS,
                  "Undo one joint at a time; clean both faces bright, and put it back before you"
                      + " undo the next.",
                  "Tighten with a torque wrench to the cell maker's sheet, no more.",
                  "Close the disconnect, and compare the joint's millivolts with its neighbours' at"
                      + " a small load first.");
          case REBALANCE ->
              List.of(
                  "If the boards do it, nothing is opened: let them.",
                  ISOLATE,
                  BARE,
                  TOOLS,
                  "Charge a single cell only with a charger made for its chemistry, set below its"
                      + " upper limit, and stay with it.",
                  "Stop when its voltage reaches the limit or it grows warm.");
          case PLAN_REPLACEMENT ->
              List.of(
                  "Find a spare of the same chemistry, maker and size, of like age, capacity and"
                      + " resistance; one that is much stronger buys nothing, a weaker one takes.",
                  "Measure the spare's capacity and resistance before it goes in.",
                  "Bring the spare to the same charge as its neighbours: full, when they have just"
                      + " been charged full.",
                  "Discharge to about a third first, spare and battery alike, if the maker's sheet"
                      + " names no other level for work.",
                  ISOLATE,
                  BARE,
                  TOOLS,
                  "Mark the polarity; check it with a meter before each joint is closed.",
                  "Fix the cells under the same pressure as before, and tighten to the cell maker's"
                      + " torque.",
                  "Charge slowly to full once and watch the new cell's voltage against its"
                      + " neighbours'.");
          case STOP_AND_ISOLATE ->
              List.of(
                  "Open the main disconnect; charge and discharge nothing until the cause is found.",
                  "Look, smell and feel for warmth from outside before anything is opened.",
                  "If a cell grows warm by itself, leave, and call the fire brigade.",
                  BARE,
                  TOOLS);
          case RUN_TEST ->
              List.of(
                  "The test uses the battery as it is; nothing is opened.",
                  "Stay within the limits of the cell maker's sheet, and stop at the first cell that"
                      + " reaches one.");
          case WATCH, NOTHING -> List.of();
        };
    if (own.isEmpty()) {
      return Optional.empty();
    }
    List<String> points = new ArrayList<>(List.of(CODES));
    if (action != Action.RUN_TEST) {
      points.add(ALONE);
      points.add(SMELL);
    }
    points.addAll(own);
    return Optional.of(new Checklist(action, points));
  }

  /** The lists for what is asked of a bank: its first action, then those of its cells. */
  public static List<Checklist> of(BankVerdict verdict) {
    List<Action> actions = new ArrayList<>(List.of(verdict.advice().action()));
    verdict.cells().stream().map(c -> c.advice().action()).sorted().forEach(actions::add);
    return actions.stream().distinct().flatMap(a -> of(a).stream()).toList();
  }
}
