package sagbook.packfile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sagbook.issue.InputProblem;
import sagbook.model.LogMapping;

class MappingFileTest {
  @Property(tries = 300, seed = "20260314")
  void whatIsWrittenIsReadBack(
      @ForAll("columns") Map<String, String> columns, @ForAll("delimiters") char delimiter)
      throws InputProblem {
    LogMapping mapping =
        new LogMapping(
            "bank-*.csv",
            Optional.of(delimiter),
            Optional.of(delimiter == ';'),
            Optional.of(3),
            Optional.of("local day-first"),
            Optional.of("2026-01-01T00:00:00+01:00"),
            Optional.of(900.0),
            columns);
    List<LogMapping> both = List.of(mapping, mapping);
    assertEquals(both, MappingFile.parse("columns.toml", MappingFile.text(both)));
  }

  /** Column names as hostile as a logger's header may be. */
  @Provide
  Arbitrary<Map<String, String>> columns() {
    Arbitrary<String> names =
        Arbitraries.strings()
            .withChars("ab\"\\'\n\t\r#=[]{}.\u0001\u007f\u00e9\u4e2d ")
            .ofMaxLength(12);
    return Arbitraries.maps(names, Arbitraries.of("cell 1 voltage, mV", "ignore", "time"))
        .ofMaxSize(6)
        .map(LinkedHashMap::new);
  }

  @Provide
  Arbitrary<Character> delimiters() {
    return Arbitraries.of(',', ';', '\t', '|');
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource(
      delimiter = '!',
      textBlock =
          """
          delimiter = "ab"      ! delimiter
          decimal = "'"         ! decimal
          header_line = -1      ! header_line
          hold_s = "long"       ! hold_s
          columns = 5           ! columns
          colums = 5            ! colums
          """)
  void nonsenseIsAnsweredByOneSentenceThatNamesTheEntry(String line, String part) {
    InputProblem problem =
        assertThrows(
            InputProblem.class, () -> MappingFile.parse("columns.toml", "[[log]]\n" + line + "\n"));
    assertTrue(problem.sentence().contains("columns.toml"), problem.sentence());
    assertTrue(problem.sentence().contains(part), problem.sentence());
    assertEquals(1, problem.sentence().lines().count(), problem.sentence());
  }
}
