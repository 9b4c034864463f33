package sagbook.report.words;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** ~ stands for a no-break space, _ for a thin one. */
final class TypesettingTest {

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "It loses 12 mA (9.1 to 14.0 mA).|It loses 12~mA (9.1~to~14.0~mA).",
        "from 2.5 V to 3.65 V at 25 °C|from 2.5~V~to~3.65~V at 25~°C",
        "about 10 to 15 % left|about 10~to~15~% left",
        "(-8.0 to -4.3 %)|(−8.0~to~−4.3~%)",
        "Cell 7, cells 1 and 5|Cell~7, cells~1 and 5",
        "259,200 rows from 2 files, 1,234 of them (2,592,000 s)|259_200 rows from 2 files, 1234 of them (2_592_000~s)",
        "its neighbours' charge can't be told|its neighbours’ charge can’t be told",
      })
  void holdsTogetherWhatIsReadAsOne(String written, String set) {
    assertEquals(set.replace('~', '\u00a0').replace('_', '\u202f'), Typesetting.of(written));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "1 June 2026 to 30 June 2026",
        "2026-05-31T23:00:00Z",
        "\"cell01_mv\" to \"cell16_mv\"",
        "5 hands, 3 animals, 2 minutes",
        "file 'a-1.csv'",
        "columns \"1,234\" to \"1,240\"",
      })
  void leavesDatesNamesAndOtherWordsAlone(String written) {
    assertEquals(written, Typesetting.of(written));
  }
}
