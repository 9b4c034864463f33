package sagbook.report.words;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sagbook.model.Estimate;

final class NumbersTest {
  /** The rule's own limits: 354 keeps two digits, 355 one, 950 counts as 1000. */
  @ParameterizedTest
  @CsvSource({
    "271.34, 3.54, 271.3",
    "271.34, 3.55, 271",
    "271.34, 9.49, 271",
    "271.34, 9.5, 271",
    "271.34, 11, 271",
    "271.34, 94, 270",
    "271.34, 98, 270",
    "12345.6, 0.12, 12\u202f345.60",
    "-0.0456, 0.0123, \u22120.046",
    "0.4, 2.2, 0.4",
    "3.14159, 0, 3.142",
    "0, 0, 0",
    "-0.04, 2.2, 0.0"
  })
  void keepTheDigitsThatTheIntervalSupports(double value, double half, String expected) {
    Estimate.Known known = new Estimate.Known(value, value - half, value + half);
    assertEquals(expected, Numbers.value(known));
  }

  @ParameterizedTest
  @CsvSource({
    "1, 100",
    "0, 0",
    "0.5, 50",
    "0.9996, 99.96",
    "0.99996, 99.996",
    "0.9999999, > 99.999",
    "0.004, 0.4",
    "0.0000001, < 0.001"
  })
  void percentNeverReadsAllOrNothingUnlessItIs(double share, String expected) {
    assertEquals(expected + "\u00a0%", Numbers.percent(share));
  }

  @ParameterizedTest
  @CsvSource({"535680, 535\u202f680", "9999, 9999", "1234567, 1\u202f234\u202f567", "0, 0"})
  void groupsLongNumbers(long number, String expected) {
    assertEquals(expected, Numbers.count(number));
  }
}
