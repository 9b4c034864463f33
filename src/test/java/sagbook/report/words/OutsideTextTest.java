package sagbook.report.words;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class OutsideTextTest {
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
