package sagbook.verdict;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import sagbook.evidence.Evidence;
import sagbook.evidence.EvidenceCollector;
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
    Evidence none =
        new EvidenceCollector(
                new Channels(Situation.CELLS, true, true, false),
                Limits.of(Chemistry.LFP),
                Situation.NOMINAL_AH,
                3.3)
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
        none.thinned(),
        none.basis(),
        none.steps(),
        none.edges(),
        turns,
        new Situation("").stress(),
        none.temperatureStuckHours());
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

  /** By hand: 9.8 % from four discharges is 9.8 · sqrt(4/5) = 8.77 % from five. */
  @Test
  void oneMoreDischargeNarrowsByTheSquareRoot() {
    TestPlan plan = plan("2: capacity 0.9 0.05", evidence(4, 7, 5));
    assertEquals(2, plan.cell());
    assertEquals(9.8, plan.steps().get(0).halfWidthPercent().find().orElseThrow(), 0.01);
    assertEquals(8.77, predicted(plan, 0), 0.01);
  }

  @Test
  void whatIsNotKnownOfThisCellIsPredictedFromTheOthers() {
    TestPlan plan = plan("5: capacity ?", evidence(2, 0, 5));
    assertEquals(5, plan.cell());
    assertTrue(plan.steps().get(0).halfWidthPercent() instanceof Estimate.Unknown);
    assertEquals(100 * 1.959964 * 0.003, predicted(plan, 0), 0.01);
  }

  @Test
  void nothingIsPredictedFromNothing() {
    TestPlan plan = plan("all: capacity ?", evidence(0, 3, 5));
    assertTrue(plan.steps().get(0).predictedPercent() instanceof Estimate.Unknown);
    assertTrue(plan.steps().get(1).predictedPercent() instanceof Estimate.Unknown);
  }

  @Test
  void asksForFasterLoggingOnlyWhereItIsSlowAndForNoMoreCurrentThanWasSeen() {
    assertTrue(
        plan("", evidence(1, 0, 60)).steps().get(1).doing().contains("6 times as often as now"));
    assertFalse(plan("", evidence(1, 0, 5)).steps().get(1).doing().contains("as often as now"));
    assertTrue(plan("", evidence(1, 0, 5)).steps().get(1).doing().contains("about 56 A"));
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
