package sagbook.wording;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import sagbook.model.Finding;
import sagbook.record.Quantity;

final class WordsTest {
  private static final Words WORDS = Words.english();

  /** What the season's own lookup puts before its keys. */
  private static final String SEASON = "drift.";

  /** Thrown where the program itself is wrong, or defined by a schema. */
  private static final Set<String> FOR_PROGRAMMERS =
      Set.of("a tree of plain nodes has always a text");

  private static final Sources SOURCES = Sources.of("src/main");

  private static Set<String> keys() {
    return WORDS.keys();
  }

  @ParameterizedTest
  @MethodSource("keys")
  void everyWordingCanBeFilledIn(String key) {
    String said = assertDoesNotThrow(() -> WORDS.say(key, "a", "b", "c", "d", "e"));
    assertFalse(said.isBlank(), key);
    assertFalse(said.contains("{"), key);
    assertFalse(said.contains("'"), key);
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

  /** What is left in the sources is for programs and programmers. */
  @Test
  void noSentenceStandsInTheSourcesOfTheSeason() {
    Set<String> sentences = new TreeSet<>(Sources.of("src/main/java/sagbook/season").sentences());
    sentences.removeAll(FOR_PROGRAMMERS);
    assertEquals(Set.of(), sentences);
  }
}
