package sagbook.verdict;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import sagbook.model.CapacitySource;
import sagbook.model.Chemistry;
import sagbook.model.Estimate;
import sagbook.model.Finding;
import sagbook.model.PackDescription;
import sagbook.model.Threshold;

/** The decisions of {@code situations.txt}, and what holds for every decision. */
class DecisionTableTest {
  private static final PackDescription PACK =
      PackDescription.of(
          "Six", Chemistry.LFP, Situation.CELLS, Situation.NOMINAL_AH, ZoneId.of("Etc/UTC"));

  /** One line of the table. */
  record Line(String name, String differences, String cells, String battery, Severity severity) {
    @Override
    public String toString() {
      return name;
    }
  }

  static List<Line> lines() throws IOException {
    try (InputStream in =
        Objects.requireNonNull(DecisionTableTest.class.getResourceAsStream("situations.txt"))) {
      List<Line> lines = new ArrayList<>();
      for (String text : new String(in.readAllBytes(), StandardCharsets.UTF_8).lines().toList()) {
        if (!text.isBlank() && !text.startsWith("#")) {
          String[] parts = text.split("\\|", -1);
          lines.add(
              new Line(
                  parts[0].trim(),
                  parts[1],
                  parts[2].trim(),
                  parts[3].trim(),
                  Severity.valueOf(parts[4].trim())));
        }
      }
      return lines;
    }
  }

  private static BankVerdict judged(String differences, PackDescription pack) {
    Situation situation = new Situation(differences);
    return new Judge(pack)
        .judge(situation.estimates(), situation.prospect(), situation.stress(), List.of());
  }

  @ParameterizedTest
  @MethodSource("lines")
  void eachSituationLeadsToItsDecision(Line line) {
    BankVerdict verdict = judged(line.differences(), PACK);
    List<String> troubled = new ArrayList<>();
    for (CellVerdict cell : verdict.cells()) {
      boolean quiet = cell.finding() == Finding.HEALTHY && cell.advice().action() == Action.NOTHING;
      if (!quiet) {
        troubled.add(
            cell.cell() + ": " + cell.finding().words() + ", " + cell.advice().action().words());
      }
    }
    assertEquals(line.cells(), String.join("; ", troubled));
    assertEquals(line.battery(), verdict.advice().action().words());
    assertEquals(line.severity(), verdict.severity());
  }

  @Test
  void theTableIsNotEmptied() throws IOException {
    assertTrue(lines().size() >= 40, "" + lines().size());
  }

  @ParameterizedTest
  @MethodSource("lines")
  void everyDecisionSaysWhatWouldChangeItAndWhatToLookAt(Line line) {
    BankVerdict verdict = judged(line.differences(), PACK);
    Stream.concat(Stream.of(verdict.advice()), verdict.cells().stream().map(CellVerdict::advice))
        .forEach(
            advice -> {
              assertFalse(advice.sentence().contains("{"), advice.sentence());
              assertTrue(advice.mindChanger().length() > 10);
              assertTrue(advice.nextObservation().length() > 10);
            });
    boolean asks = verdict.severity() != Severity.WELL;
    assertEquals(asks, !verdict.todo().isEmpty());
  }

  @ParameterizedTest
  @EnumSource(DecisionRule.class)
  void everyRuleHasItsReasonWithASource(DecisionRule rule) {
    assertTrue(
        rule.reason().matches("(?s).*\\((common practice, no source|arithmetic|makers .*)\\)"));
  }

  @ParameterizedTest
  @EnumSource(Threshold.class)
  void everyThresholdHasItsReasonAndSpan(Threshold threshold) {
    assertTrue(threshold.least() < threshold.usual() && threshold.usual() < threshold.most());
    assertTrue(
        threshold.reason().matches("(?s).*(common practice, no source|arithmetic|makers ).*"));
  }

  /** A leaking cell in an invented log without current: five sound cells of sixteen were named. */
  @Test
  void withoutCurrentManyCellsApartAreNotBelieved() {
    String many = "1: capacity 0.85 0.01; 2: offset 9 1; 3: offset 6 1; 4: offset -5 1";
    BankVerdict doubted = judged(many + "; all: uncounted", PACK);
    assertTrue(doubted.todo().isEmpty(), doubted.toString());
    assertTrue(doubted.headline().startsWith("Something may be wrong with"), doubted.headline());
    assertTrue(
        doubted.cells().get(0).evidence().stream().anyMatch(w -> w.startsWith("So many cells")),
        doubted.toString());
    assertEquals(Finding.LOW_CAPACITY, judged(many, PACK).cells().get(0).finding());
    assertEquals(
        Finding.LOW_CAPACITY,
        judged("1: capacity 0.85 0.01; 2: offset 9 1; all: uncounted", PACK)
            .cells()
            .get(0)
            .finding());
  }

  /** It was said not to be charged again, and two lines on to be levelled. */
  @Test
  void aCellThatIsNotToBeChargedAgainIsNotToBeLevelledEither() {
    for (String cause : List.of("5: drain 46 2; ", "5: offset -9 1; ", "")) {
      BankVerdict verdict = judged(cause + "5: under 5; 5: drained 0.5", PACK);
      String todo = String.join(" ", verdict.todo());
      assertTrue(todo.contains("do not charge it again"), todo);
      assertTrue(todo.contains("find out what drained it"), todo);
      assertFalse(todo.contains("level") || todo.contains("charge it alone"), todo);
    }
  }

  @Test
  void theKeepersThresholdsCount() {
    String worn = "2: capacity 0.94 0.005";
    assertEquals(Action.WATCH, judged(worn, PACK).advice().action());
    assertEquals(
        Action.PLAN_REPLACEMENT,
        judged(worn, with(Map.of(Threshold.REPLACE_CAPACITY, 5.0))).advice().action());
    assertEquals(Severity.WELL, judged(worn, with(Map.of(Threshold.CAPACITY, 8.0))).severity());
  }

  /** A nominal capacity that was not told is a guess, so nothing is said against it. */
  @Test
  void nothingIsCalledOldAgainstACapacityThatNobodyTold() {
    PackDescription p = PACK;
    PackDescription untold =
        new PackDescription(
            p.name(),
            p.chemistry(),
            p.seriesCells(),
            p.nominalCapacityAh(),
            CapacitySource.ASSUMED,
            p.timezone(),
            p.bleedResistorOhm(),
            p.currentSign(),
            p.limits(),
            p.rules(),
            p.spareCapacityAh(),
            p.spareResistanceMilliohm(),
            p.openCircuit(),
            p.banks(),
            p.logs());
    assertEquals(Severity.ATTENTION, judged("pack: median 200 3", PACK).severity());
    assertEquals(Severity.WELL, judged("pack: median 200 3", untold).severity());
  }

  /** Sixteen silent joints are one thing to do, not sixteen alarms. */
  @Test
  void aLogWithoutLoadStepsIsToldOnce() {
    BankVerdict verdict = judged("all: resistance ?; all: slow ?", PACK);
    assertEquals(
        "Nothing wrong was seen, but without clear load steps the joints can't be judged.",
        verdict.headline());
    assertEquals(List.of(), verdict.todo());
    assertTrue(verdict.advice().nextObservation().contains("kettle"));
  }

  /** Without current the slow part of a cell's answer is not known. */
  @Test
  void whereJointAndCellCantBeToldApartNeitherIsAccused() {
    BankVerdict verdict = judged("5: resistance 1.6 0.04; 5: slow ?", PACK);
    assertEquals(
        "Cell 5 has too much resistance, in a joint or in the cell itself; the others are fine.",
        verdict.headline());
    String asked = verdict.cells().get(4).advice().sentence();
    assertTrue(asked.contains("in the joint or in the cell; look at the joint first"), asked);
    assertTrue(verdict.cells().get(4).advice().why().stream().anyMatch(w -> w.contains("told: ")));
  }

  /** "Nothing wrong was seen" beside a cell of which something is suspected reads as all clear. */
  @Test
  void whatIsSuspectedIsNamedFirst() {
    assertEquals(
        "Something may be wrong with cell 2, but the logs can't tell for sure.",
        judged("2: capacity 0.90 0.05", PACK).headline());
    assertEquals(
        "Something may be wrong with cell 2, but the logs can't tell for sure; of cell 4 they don't"
            + " tell enough.",
        judged("2: capacity 0.90 0.05; 4: capacity ?", PACK).headline());
    assertEquals(
        "Something may be wrong with cells 2 and 5, but the logs can't tell for sure.",
        judged("2: capacity 0.967 0.015; 5: capacity ?; 5: offset ?", PACK).headline());
    assertEquals(
        "Nothing wrong was seen; of cell 4 the logs don't tell enough.",
        judged("4: capacity ?", PACK).headline());
  }

  @Test
  void whatCouldNotBeJudgedIsNamedBesideWhatWasFound() {
    assertEquals(
        "Cell 5 seems to have a bad joint; something may be wrong with cell 2.",
        judged("5: resistance 1.6 0.04; 5: slow 1 0.05; 2: capacity 0.90 0.05", PACK).headline());
    assertEquals(
        "Cell 5 seems to have a bad joint; of the others the logs don't tell enough.",
        judged("all: capacity ?; 5: resistance 1.6 0.04; 5: slow 1 0.05", PACK).headline());
  }

  @Test
  void whyACellIsOpenIsSaidWithItsNumberUnlessItHoldsForAll() {
    assertEquals(List.of("Cell 4: not seen."), judged("4: capacity ?", PACK).nextMonth());
    assertEquals(List.of("Not seen."), judged("all: capacity ?", PACK).nextMonth());
  }

  @Test
  void whereBleedingIsNotLoggedALeakIsTheLeastThatItMayBe() {
    CellVerdict unseen = judged("6: drain 46 2; all: unbled", PACK).cells().get(5);
    List<String> why = unseen.advice().why();
    assertTrue(((Estimate.Known) unseen.estimates().selfDischargeMilliamp()).isOpen());
    assertTrue(why.stream().anyMatch(w -> w.startsWith("It loses at least 46 mA more")), "" + why);
    CellVerdict seen = judged("6: drain 46 2", PACK).cells().get(5);
    List<String> bled = seen.advice().why();
    assertFalse(((Estimate.Known) seen.estimates().selfDischargeMilliamp()).isOpen());
    assertTrue(bled.stream().anyMatch(w -> w.startsWith("It loses 46 mA more")), "" + bled);
  }

  @Test
  void aVoltageErrorThatMayBeNoneIsNoEvidence() {
    List<String> why = judged("2: volt -9 15", PACK).cells().get(1).advice().why();
    assertTrue(why.stream().noneMatch(w -> w.contains("mV")), "" + why);
  }

  @Test
  void aJointThatMayBeTheCellIsCalledThatEverywhere() {
    assertEquals(
        "connection.open",
        judged("5: resistance 1.6 0.04; 5: slow ?", PACK).cells().get(4).findingKey());
    assertEquals(
        "connection",
        judged("5: resistance 1.6 0.04; 5: slow 1 0.05", PACK).cells().get(4).findingKey());
  }

  /** A slow part between the two, by less than a standard deviation. */
  @Test
  void aSlowPartThatLiesBetweenAccusesNeither() {
    for (String slow : List.of("5: slow 1.28 0.05", "5: slow 1.32 0.05")) {
      CellVerdict open = judged("5: resistance 1.6 0.04; " + slow, PACK).cells().get(4);
      assertEquals("connection.open", open.findingKey());
      assertTrue(open.advice().why().stream().anyMatch(w -> w.contains("not clear enough")));
    }
    assertEquals(
        Finding.HIGH_RESISTANCE,
        judged("5: resistance 1.6 0.04; 5: slow 1.34 0.05", PACK).cells().get(4).finding());
    assertEquals(
        "connection",
        judged("5: resistance 1.6 0.04; 5: slow 1.26 0.05", PACK).cells().get(4).findingKey());
  }

  @Test
  void lessIsSaidWithoutASignAndFromItsNearEnd() {
    BankVerdict verdict = judged("4: offset -6 0.5; 2: offset -0.6 0.5", PACK);
    List<String> why = verdict.cells().get(3).advice().why();
    assertTrue(why.stream().anyMatch(w -> w.contains("6.0 % less charge")), why.toString());
    assertTrue(why.stream().anyMatch(w -> w.contains("(95 % range 5.0 to 7.0 % less")));
    List<String> open = verdict.cells().get(1).advice().why();
    assertTrue(open.stream().anyMatch(w -> w.contains("(95 % range 0.4 % more to 1.6 % less")));
  }

  @Test
  void whatIsLevelledFirstIsNotCalledSound() {
    BankVerdict verdict = judged("4: offset -6 0.3; 4: capacity 0.94 0.005", PACK);
    assertEquals("Cell 4 is out of balance; the others are fine.", verdict.headline());
    assertTrue(verdict.advice().sentence().contains("can only be told after that"));
  }

  @Test
  void aLimitThatManyCellsPassedIsSaidOnce() {
    List<String> todo = judged("all: over 1.5", PACK).todo();
    assertEquals(1, todo.stream().filter(t -> t.contains("stop charging")).count(), "" + todo);
    assertTrue(todo.get(0).startsWith("Cells 1, 2, 3, 4, 5 and 6 were charged to up to 3.72 V"));
    assertEquals(2, judged("1: over 1.5; 2: over 1.5", PACK).todo().size());
  }

  /** Charged again it may short inside; that comes before what was charged too high. */
  @Test
  void aCellThatWasDrainedForGoodIsNotToBeChargedAgain() {
    List<String> todo = judged("1: over 1; 2: drained 0.4; 2: under 100", PACK).todo();
    assertTrue(todo.get(0).startsWith("Cell 2 was drained to 0.40 V, far below"), "" + todo);
    assertTrue(todo.get(0).contains("do not charge it again"), "" + todo);
    assertTrue(judged("2: under 1", PACK).todo().get(0).contains("recharge slowly"));
  }

  @Test
  void aTieIsShownAsATie() {
    BankVerdict verdict = judged("3: capacity 0.88 0.005; 6: capacity 0.885 0.005", PACK);
    assertEquals(List.of(6), verdict.cells().get(2).tiedWith());
    assertEquals(1, verdict.cells().get(2).rank());
    assertEquals(2, verdict.cells().get(5).rank());
    assertTrue(verdict.headline().contains("replacing both would add about 3"), verdict.headline());
  }

  private static PackDescription with(Map<Threshold, Double> rules) {
    PackDescription p = PACK;
    return new PackDescription(
        p.name(),
        p.chemistry(),
        p.seriesCells(),
        p.nominalCapacityAh(),
        CapacitySource.TOLD,
        p.timezone(),
        p.bleedResistorOhm(),
        p.currentSign(),
        p.limits(),
        rules,
        p.spareCapacityAh(),
        p.spareResistanceMilliohm(),
        p.openCircuit(),
        p.banks(),
        p.logs());
  }
}
