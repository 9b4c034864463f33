package sagbook.record;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import sagbook.model.Estimate;
import sagbook.model.Finding;
import sagbook.verdict.Severity;

final class KeptCheckTest {
  @Test
  void readsBackWhatWasWritten() {
    CheckResult result = InventedResult.month();
    KeptCheck kept = KeptCheck.parse(ResultsJson.text(result));
    assertEquals("Boathouse battery", kept.pack());
    assertEquals(Severity.ATTENTION, kept.severity());
    KeptCheck.Bank bank = kept.find("main").orElseThrow();
    assertEquals(result.banks().get(0).from(), bank.from());
    KeptCheck.Cell weak = bank.cells().get(11);
    assertEquals(Finding.LOW_CAPACITY, weak.finding());
    assertEquals(1, weak.rank());
    assertEquals(243, weak.estimate(Quantity.CAPACITY_AH).find().orElseThrow(), 0.05);
    assertEquals(
        Estimate.unknown("Cell 3 was never seen near empty."),
        bank.cells().get(2).estimate(Quantity.CAPACITY_AH));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "no JSON",
        "[]",
        "{}",
        "{\"schema_version\":2,\"banks\":[{}]}",
        "{\"schema_version\":1,\"banks\":[{}],\"pack\":\"p\",\"severity\":\"well\"}"
      })
  void refusesWhatIsNoResult(String text) {
    IllegalArgumentException refused =
        assertThrows(IllegalArgumentException.class, () -> KeptCheck.parse(text));
    assertTrue(String.valueOf(refused.getMessage()).startsWith("it "), refused.getMessage());
  }
}
