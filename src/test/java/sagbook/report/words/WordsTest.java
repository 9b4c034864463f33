package sagbook.report.words;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import sagbook.model.Finding;
import sagbook.record.Quantity;

final class WordsTest {
  private static final Words WORDS = Words.english();

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

  @ParameterizedTest
  @CsvSource({
    "'plain Grüße 电池', 'plain Grüße 电池'",
    "'a\u202eb', 'a<U+202E>b'",
    "'a\u0000\tb', 'a<U+0000><U+0009>b'",
    "'\ud83d\udd0b\u200d\u26a1', '\ud83d\udd0b\u200d\u26a1'"
  })
  void showsCharactersThatWouldAct(String text, String shown) {
    assertEquals(shown, OutsideText.shown(text));
  }
}
