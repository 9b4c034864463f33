package sagbook.wording;

import static java.nio.charset.StandardCharsets.UTF_8;
import static java.util.stream.Collectors.toSet;
import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.util.HashSet;
import java.util.Locale;
import java.util.Objects;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import sagbook.issue.RowIssue;
import sagbook.model.Finding;
import sagbook.model.Threshold;
import sagbook.record.DiaryEvent;
import sagbook.record.Quantity;
import sagbook.simulate.Scenario;
import sagbook.simulate.Scenarios;
import sagbook.verdict.DecisionRule;

final class WordsTest {
  private static final Words WORDS = Words.english();

  /** What the season's own lookup puts before its keys. */
  private static final String SEASON = "drift.";

  /** SQL, TOML, classes of a page, a pattern. */
  private static final Pattern FOR_PROGRAMS =
      Pattern.compile("^ ?[A-Z]{2,} |^[a-z_]+ = |^note strong$|^ pick pick$|\\.\\*$");

  /** Causes that stand behind a sentence which is said. */
  private static final Set<String> FOR_PROGRAMMERS =
      Set.of("shorter than before", "unpacks to more than 500 times its size");

  /** Codes that are typed, stored or looked up; people are told them in the wording's words. */
  private static final Set<String> CODES =
      Set.of(
          "low capacity",
          "high resistance",
          "out of balance",
          "voltage sensor",
          "temperature sensor",
          "insufficient evidence",
          "stop and isolate",
          "check the sensor",
          "tighten or clean the joint",
          "run a test",
          "plan a replacement",
          "mend joint",
          "a pulse from rest",
          "charge positive",
          "discharge positive",
          "year first",
          "day first",
          "month first",
          "cell voltage",
          "bleed level",
          "charge current",
          "discharge current",
          "pack voltage",
          "cell number",
          "channel name",
          "no data",
          "not available",
          "deg c",
          "deg f",
          "cell ",
          "column ",
          "sagbook ");

  private static final Sources SOURCES = Sources.of("src/main");

  private static Set<String> keys() {
    return WORDS.keys();
  }

  @ParameterizedTest
  @MethodSource("keys")
  void everyWordingCanBeFilledIn(String key) {
    String said = assertDoesNotThrow(() -> WORDS.say(key, "a", "b", "c", "d", "e", "f"));
    assertFalse(said.isBlank(), key);
    assertFalse(said.contains("{"), key);
  }

  /** The later of two would silently stand for both. */
  @Test
  void noKeyIsWrittenTwice() throws IOException {
    Set<Object> twice = new HashSet<>();
    Properties words =
        new Properties() {
          @Override
          public synchronized Object put(Object key, Object value) {
            Object before = super.put(key, value);
            if (before != null) {
              twice.add(key);
            }
            return before;
          }
        };
    try (InputStream in = Words.class.getResourceAsStream("/sagbook/words.properties")) {
      words.load(new InputStreamReader(Objects.requireNonNull(in), UTF_8));
    }
    assertFalse(words.isEmpty());
    assertEquals(Set.of(), twice);
  }

  @Test
  void hasAWordForEveryFindingAndQuantity() {
    for (Finding finding : Finding.values()) {
      assertTrue(WORDS.has("finding." + finding.words()), finding.words());
    }
    for (Quantity quantity : Quantity.values()) {
      assertTrue(WORDS.has("quantity." + quantity.key()), quantity.key());
    }
  }

  @ParameterizedTest
  @CsvSource({
    "0.5, 0.5 s",
    "10, 10 s",
    "119, 119 s",
    "120, 2 min",
    "300, 5 min",
    "5400, 90 min",
    "9000, 2.5 h",
    "86400, 24 h",
    "172800, 2 days",
    "2592000, 30 days"
  })
  void lengthsOfTimeAreSaidAsPeopleSayThem(double seconds, String said) {
    assertEquals(said, WORDS.span(seconds));
  }

  @Test
  void refusesAKeyThatIsNotThere() {
    assertThrows(IllegalArgumentException.class, () -> WORDS.say("no such key"));
  }

  /** A key that is put together from parts counts as used where its first part is. */
  @ParameterizedTest
  @MethodSource("keys")
  void everyWordingIsUsed(String key) {
    assertTrue(
        SOURCES.isUsed(key)
            || (key.startsWith(SEASON) && SOURCES.isUsed(key.substring(SEASON.length()))),
        key);
  }

  @Test
  void everyKeyThatIsWrittenOutHasAWording() {
    assertFalse(SOURCES.saidKeys().isEmpty());
    for (String key : SOURCES.saidKeys()) {
      assertTrue(WORDS.has(key) || WORDS.has(SEASON + key), key);
    }
  }

  @Test
  void anApostropheIsSaidAsItIsWritten() {
    assertEquals("Next month's check.", WORDS.say("advice.none.next"));
    assertTrue(WORDS.say("plan.instead.charge", "x").contains("Next month's value"));
  }

  @ParameterizedTest
  @EnumSource(Threshold.class)
  void everyThresholdHasItsMeaningAndReason(Threshold threshold) {
    assertFalse(threshold.meaning().isBlank());
    assertFalse(threshold.reason().isBlank());
  }

  /** Else a key of a rule or threshold that is gone would count as used by its beginning. */
  @Test
  void noWordingIsLeftOfARuleOrThresholdThatIsGone() {
    Set<String> owners = new TreeSet<>(Set.of("rule.not-worn", "rule.perhaps-worn"));
    for (DecisionRule rule : DecisionRule.values()) {
      owners.add("rule." + rule.name().toLowerCase(Locale.ROOT).replace('_', '-'));
    }
    for (Threshold threshold : Threshold.values()) {
      owners.add("threshold." + threshold.key().replace('_', '-'));
    }
    Set<String> named = new TreeSet<>();
    for (String key : keys()) {
      if (key.startsWith("rule.") || key.startsWith("threshold.")) {
        named.add(key.replaceAll("\\.(doing|mind|next|reason|meaning)$", ""));
      }
    }
    assertEquals(owners, named);
  }

  /** The same for what is counted, done and invented. */
  @Test
  void noWordingIsLeftOfAnIssueADiaryKindOrAScenarioThatIsGone() {
    assertEquals(
        Stream.of(RowIssue.values()).map(RowIssue::words).collect(toSet()), saidUnder("row."));
    assertEquals(
        Stream.of(DiaryEvent.Kind.values()).map(DiaryEvent.Kind::spoken).collect(toSet()),
        saidUnder("diary."));
    assertEquals(
        Scenarios.all().stream().map(Scenario::story).collect(toSet()),
        saidUnder("simulate.story."));
  }

  private static Set<String> saidUnder(String beginning) {
    return keys().stream().filter(k -> k.startsWith(beginning)).map(WORDS::say).collect(toSet());
  }

  /** What is left in the sources is for programs and programmers. */
  @Test
  void noSentenceStandsInTheSources() {
    Set<String> spoken = new TreeSet<>(Sources.of("src/main/java/sagbook").spoken());
    assertFalse(spoken.isEmpty());
    spoken.removeIf(text -> FOR_PROGRAMS.matcher(text).find());
    spoken.removeAll(FOR_PROGRAMMERS);
    spoken.removeAll(CODES);
    assertEquals(Set.of(), spoken);
  }
}
