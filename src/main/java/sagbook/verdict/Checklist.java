package sagbook.verdict;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import sagbook.model.Finding;
import sagbook.wording.Words;

/**
 * What to go through before laying hands on the battery for an action. Common practice, no source;
 * the cell maker's sheet, local codes and licensed practice come before all of it.
 *
 * @param action what is to be done
 * @param points one sentence each, in the order to go through them
 */
public record Checklist(Action action, List<String> points) {
  private static final Words WORDS = Words.english();
  private static final String CODES = WORDS.say("before.codes");
  private static final String ALONE = WORDS.say("before.alone");
  private static final String BARE = WORDS.say("before.bare");
  private static final String TOOLS = WORDS.say("before.tools");
  private static final String ISOLATE = WORDS.say("before.isolate");
  private static final String SMELL = WORDS.say("before.smell");

  public Checklist {
    points = List.copyOf(points);
  }

  /** The list for an action; nothing for one that touches nothing. */
  public static Optional<Checklist> of(Action action) {
    return of(action, own(action));
  }

  private static List<String> own(Action action) {
    return switch (action) {
      case CHECK_SENSOR ->
          List.of(BARE, WORDS.say("before.sensor.probe"), WORDS.say("before.sensor.order"));
      case MEND_JOINT ->
          List.of(
              WORDS.say("before.joint.third"),
              ISOLATE,
              BARE,
              TOOLS,
              WORDS.say("before.joint.one"),
              WORDS.say("before.joint.torque"),
              WORDS.say("before.joint.compare"));
      case REBALANCE ->
          List.of(
              WORDS.say("before.level.boards"),
              ISOLATE,
              BARE,
              TOOLS,
              WORDS.say("before.level.charger"),
              WORDS.say("before.level.stop"));
      case PLAN_REPLACEMENT ->
          List.of(
              WORDS.say("before.spare.find"),
              WORDS.say("before.spare.measure"),
              WORDS.say("before.spare.level"),
              WORDS.say("before.spare.third"),
              ISOLATE,
              BARE,
              TOOLS,
              WORDS.say("before.spare.polarity"),
              WORDS.say("before.spare.press"),
              WORDS.say("before.spare.watch"));
      case STOP_AND_ISOLATE ->
          List.of(
              WORDS.say("before.isolate.open"),
              WORDS.say("before.isolate.look"),
              WORDS.say("before.isolate.fire"),
              BARE,
              TOOLS);
      case RUN_TEST -> List.of(WORDS.say("before.test.closed"), WORDS.say("before.test.limits"));
      case WATCH, NOTHING -> List.of();
    };
  }

  /** Finding a drain means unplugging a board, which no other test does. */
  private static Checklist ofDrain() {
    return new Checklist(
        Action.RUN_TEST,
        List.of(
            CODES,
            ALONE,
            SMELL,
            WORDS.say("before.drain.closed"),
            BARE,
            TOOLS,
            WORDS.say("before.sensor.order"),
            WORDS.say("before.drain.unwatched"),
            WORDS.say("before.test.limits")));
  }

  private static Optional<Checklist> of(Action action, List<String> own) {
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
    boolean drain = verdict.cells().stream().anyMatch(c -> c.finding() == Finding.SELF_DISCHARGE);
    return actions.stream()
        .distinct()
        .flatMap(a -> (drain && a == Action.RUN_TEST ? Optional.of(ofDrain()) : of(a)).stream())
        .toList();
  }
}
