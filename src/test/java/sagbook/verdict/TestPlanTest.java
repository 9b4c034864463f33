package sagbook.verdict;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import sagbook.evidence.Evidence;
import sagbook.evidence.EvidenceCollector;
import sagbook.evidence.StepWindow;
import sagbook.evidence.Turn;
import sagbook.model.Channels;
import sagbook.model.Chemistry;
import sagbook.model.Estimate;
import sagbook.model.Limits;
import sagbook.model.PackDescription;

class TestPlanTest {
  private static final PackDescription PACK =
      PackDescription.of(
          "Six", Chemistry.LFP, Situation.CELLS, Situation.NOMINAL_AH, ZoneId.of("Etc/UTC"));

  /** An empty log but for so many discharges, of which some were deep. */
  private static Evidence evidence(int deep, int shallow, double cadenceS) {
    return evidence(deep, shallow, cadenceS, 0);
  }

  /** With steps in the log whose squares sum to so many A². */
  private static Evidence evidence(int deep, int shallow, double cadenceS, double squares) {
    return evidence(
        new Channels(Situation.CELLS, true, true, false), deep, shallow, cadenceS, squares);
  }

  private static Evidence evidence(
      Channels channels, int deep, int shallow, double cadenceS, double squares) {
    Evidence none =
        new EvidenceCollector(channels, Limits.of(Chemistry.LFP), Situation.NOMINAL_AH, 3.3)
            .finish();
    List<Turn> turns = new ArrayList<>();
    for (int i = 0; i < deep + shallow; i++) {
      turns.add(new Turn(false, 0, 0, 3.2, i < deep ? 2.9 : 3.25, 1));
      turns.add(new Turn(true, 0, 0, 3.4, 3.5, 1));
    }
    return new Evidence(
        none.channels(),
        0,
        1,
        1,
        cadenceS,
        none.wanderAhInADay(),
        none.thinned(),
        none.basis(),
        squares == 0 ? List.of() : List.of(window(squares)),
        none.onsets(),
        none.toldLagS(),
        none.edges(),
        turns,
        new Situation("").stress(),
        none.temperatureStuckHours());
  }

  private static StepWindow window(double squares) {
    return new StepWindow(
        0,
        7200,
        100,
        new double[Situation.CELLS],
        0,
        0,
        3.3,
        new double[] {squares},
        new double[Situation.CELLS][1],
        new double[Situation.CELLS],
        new int[Situation.CELLS]);
  }

  private static TestPlan plan(String differences, Evidence evidence) {
    Situation situation = new Situation(differences);
    BankVerdict verdict =
        new Judge(PACK)
            .judge(situation.estimates(), situation.prospect(), situation.stress(), List.of());
    return TestPlan.of(verdict, situation.estimates(), evidence, PACK);
  }

  private static double predicted(TestPlan plan, int step) {
    return plan.steps().get(step).predictedPercent().find().orElseThrow();
  }

  @Test
  void whatIsSuspectedComesBeforeWhatWasNotSeenAndBeforeWhatMayTip() {
    assertEquals(5, plan("5: resistance 1.3 0.2", evidence(4, 7, 5)).cell());
    assertEquals(5, plan("1: capacity ?; 5: resistance 1.3 0.2", evidence(4, 7, 5)).cell());
    assertEquals(1, plan("1: capacity ?; 3: resistance 1.1 0.1", evidence(4, 7, 5)).cell());
    assertEquals(
        3, plan("2: capacity 0.99 0.015; 3: capacity 0.985 0.015", evidence(4, 7, 5)).cell());
  }

  @Test
  void whereNoRangeHoldsALimitNothingHasToBeMeasured() {
    TestPlan plan = plan("2: capacity 0.85 0.005; 5: offset -5 0.3", evidence(4, 7, 5));
    assertEquals(List.of(), plan.steps());
    assertTrue(plan.why().startsWith("No decision waits for a test"), plan.why());
  }

  /** Whether it is worn too is a decision that waits, but levelling comes before its test. */
  @Test
  void aCellThatIsOutOfBalanceIsTestedForWearOnceItIsLevel() {
    TestPlan plan = plan("5: offset -6 0.3; 5: capacity ?", evidence(4, 7, 5));
    assertEquals(
        "Whether cell 5 is also worn shows only once it is level with the others; level it first,"
            + " then make the test.",
        plan.why());
    assertEquals("capacity", plan.steps().get(0).quantity());
  }

  @Test
  void whereChargeIsInDoubtAndCapacityUnseenTheTestOfCapacityTellsBoth() {
    TestPlan plan = plan("5: offset 2.3 0.7; 5: capacity ?", evidence(4, 7, 5));
    assertEquals("capacity", plan.steps().get(0).quantity());
    assertEquals("Cell 5 is the one in question: its capacity is not known.", plan.why());
  }

  @Test
  void ofSeveralInQuestionAllAreNamedAndTheNearestToALimitIsTold() {
    String why = plan("1: capacity 0.953 0.019; 5: capacity 0.967 0.015", evidence(4, 7, 5)).why();
    assertTrue(
        why.startsWith(
            "Of cells 1 and 5, which can't be judged, cell 5 is nearest to a limit: its"),
        why);
    assertTrue(why.contains("below 97 % it would count as worn."), why);
  }

  /** A leaking cell without current: nothing could be read of it, and sound ones were suspected. */
  @Test
  void aCellThatDoesNotFollowTheOthersCurveComesFirst() {
    TestPlan plan = plan("5: capacity ?; 5: offset ?; 2: capacity 0.967 0.015", evidence(4, 7, 5));
    assertEquals(5, plan.cell());
    assertEquals("capacity", plan.steps().get(0).quantity());
  }

  @Test
  void withoutCurrentTheNextThingToLogIsTheCurrent() {
    Evidence blind = evidence(new Channels(Situation.CELLS, true, false, false), 4, 7, 5, 0);
    String why = plan("5: capacity 0.967 0.015", blind).why();
    assertTrue(why.endsWith("Without the pack current no test would narrow that much."), why);
  }

  @Test
  void aDeeperDischargeTellsAsMuchAsOfTheOthersWhoWereSeen() {
    TestPlan plan = plan("5: capacity ?", evidence(2, 0, 5));
    assertEquals(5, plan.cell());
    assertTrue(plan.steps().get(0).halfWidthPercent() instanceof Estimate.Unknown);
    assertEquals(100 * 1.959964 * 0.003, predicted(plan, 0), 0.01);
    TestPlan shallow = plan("2: capacity 0.965 0.01", evidence(0, 7, 5));
    assertEquals(1.96, shallow.steps().get(0).halfWidthPercent().find().orElseThrow(), 0.01);
    assertEquals(0.59, predicted(shallow, 0), 0.01);
  }

  @Test
  void whatWasDischargedDeepIsNotAskedToBeOnceMore() {
    TestPlan plan = plan("2: capacity 0.965 0.01", evidence(4, 7, 5));
    assertEquals(List.of(), plan.steps());
    assertTrue(plan.why().contains("once more would not narrow that"), plan.why());
  }

  /** No deep discharge is asked of a battery that was to be stopped. */
  @Test
  void aBatteryThatPassedALimitIsNotTested() {
    TestPlan plan = plan("2: under 1; 5: capacity ?", evidence(0, 7, 5));
    assertEquals(List.of(), plan.steps());
    assertTrue(plan.why().startsWith("No test before the cause is found"), plan.why());
  }

  @Test
  void nothingIsPredictedFromNothing() {
    TestPlan plan = plan("all: capacity ?", evidence(0, 3, 5));
    assertTrue(plan.steps().get(0).predictedPercent() instanceof Estimate.Unknown);
  }

  /**
   * By hand: twenty edges of 56 A in four pairs of rows each, beside a log that holds as much,
   * halve the squared half-width above that of the best-told cell: sqrt(1.96² + (39.2² - 1.96²)/2)
   * = 27.8.
   */
  @Test
  void edgesNarrowWhatRepetitionShows() {
    TestPlan plan = plan("5: resistance 1.3 0.2", evidence(1, 0, 5, 20 * 56 * 56 * 4));
    assertEquals(27.75, predicted(plan, 0), 0.01);
    assertTrue(plan.steps().get(0).doing().contains("about 56 A"));
    assertEquals(1.96, predicted(plan("5: resistance 1.3 0.2", evidence(1, 0, 5)), 0), 0.01);
  }

  @Test
  void switchingIsNotAskedForWhereTheLogIsFullOfEdges() {
    TestPlan plan = plan("5: resistance 1.3 0.2", evidence(1, 0, 5, 1e9));
    assertEquals(List.of(), plan.steps());
    assertTrue(plan.why().contains("measure the joints"), plan.why());
  }

  @Test
  void fasterLoggingIsAskedForOnlyWhereItIsSlow() {
    TestPlan plan = plan("5: resistance 1.3 0.2", evidence(1, 0, 60, 1e9));
    assertEquals(1, plan.steps().size());
    assertTrue(plan.steps().get(0).doing().contains("6 times as often as now"));
    assertEquals(39.2 / 1.3, predicted(plan, 0), 0.01);
  }

  @Test
  void whereNoCellWasSwitchedTheLoadIsTheTest() {
    TestPlan plan = plan("all: resistance ?; all: slow ?", evidence(4, 7, 5));
    assertEquals("No cell's resistance is known.", plan.why());
    assertTrue(plan.steps().get(0).doing().contains("kettle"));
    assertTrue(plan.steps().get(0).predictedPercent() instanceof Estimate.Unknown);
  }

  @Test
  void aHealthyCellWhoseRangeReachesOverALimitIsStillCalledHealthy() {
    String why = plan("3: resistance 1.11 0.06", evidence(4, 7, 5)).why();
    assertTrue(why.startsWith("Cell 3 counts as healthy, but its range reaches over"), why);
  }

  @Test
  void aDoubtfulOffsetAsksForAFullCharge() {
    TestPlan plan = plan("4: offset -3 1.5", evidence(4, 7, 5));
    assertEquals("charge", plan.steps().get(0).quantity());
    assertEquals(0.196, predicted(plan, 0), 0.001);
  }

  @ParameterizedTest
  @EnumSource(Action.class)
  void whateverTouchesTheBatteryDefersToCodesAndLicensedPractice(Action action) {
    boolean quiet = action == Action.WATCH || action == Action.NOTHING;
    assertEquals(quiet, Checklist.of(action).isEmpty());
    Checklist.of(action)
        .ifPresent(list -> assertTrue(list.points().get(0).contains("licensed electrician")));
  }

  @ParameterizedTest
  @EnumSource(
      value = Action.class,
      names = {"MEND_JOINT", "REBALANCE", "PLAN_REPLACEMENT"})
  void whatOpensTheBatteryIsolatesItFirst(Action action) {
    String all = String.join(" ", Checklist.of(action).orElseThrow().points());
    for (String word : List.of("main disconnect", "insulated tools", "rings")) {
      assertTrue(all.contains(word), action + " lacks " + word);
    }
  }

  @Test
  void aReplacementMatchesTheSpareAndLevelsItFirst() {
    String all = String.join(" ", Checklist.of(Action.PLAN_REPLACEMENT).orElseThrow().points());
    for (String word : List.of("same chemistry", "age", "capacity", "same charge", "torque")) {
      assertTrue(all.contains(word), word);
    }
  }

  /** What has to be discharged can't be once the disconnect is open. */
  @ParameterizedTest
  @EnumSource(
      value = Action.class,
      names = {"MEND_JOINT", "PLAN_REPLACEMENT"})
  void theLevelForWorkIsReachedBeforeTheBatteryIsIsolated(Action action) {
    String all = String.join(" ", Checklist.of(action).orElseThrow().points());
    assertTrue(
        all.contains("about a third, if the maker's sheet names no other level")
            || all.contains("about a third first, if the maker's sheet names no other level"),
        all);
    assertTrue(all.indexOf("about a third") < all.indexOf("open the main disconnect"), all);
  }

  /** Its list once said that nothing is touched, beside the advice to unplug a board. */
  @Test
  void findingADrainHasAListForUnpluggingABoard() {
    Situation situation = new Situation("5: drain 46 2");
    BankVerdict verdict =
        new Judge(PACK)
            .judge(situation.estimates(), situation.prospect(), situation.stress(), List.of());
    List<Checklist> lists = Checklist.of(verdict);
    assertEquals(List.of(Action.RUN_TEST), lists.stream().map(Checklist::action).toList());
    String all = String.join(" ", lists.get(0).points());
    for (String word : List.of("licensed electrician", "rings", "insulated tools", "plug")) {
      assertTrue(all.contains(word), word);
    }
    assertTrue(all.contains("charge and discharge nothing until it is plugged in again"), all);
    assertTrue(all.contains("in which order"), all);
  }

  @Test
  void everyActionThatIsAskedForHasItsListOnce() {
    Situation situation =
        new Situation("1: capacity 0.85 0.005; 2: offset -5 0.3; 3: offset 5 0.3");
    BankVerdict verdict =
        new Judge(PACK)
            .judge(situation.estimates(), situation.prospect(), situation.stress(), List.of());
    List<Action> actions = Checklist.of(verdict).stream().map(Checklist::action).toList();
    assertEquals(List.of(Action.REBALANCE, Action.PLAN_REPLACEMENT), actions);
  }
}
