package sagbook.record;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.InputFormat;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import com.networknt.schema.ValidationMessage;
import java.io.IOException;
import java.io.InputStream;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import sagbook.model.Estimate;
import tech.tablesaw.api.Table;

final class ResultsJsonTest {
  private static Stream<CheckResult> results() {
    return Stream.of(
        InventedResult.month(),
        InventedResult.withoutCurrent(),
        InventedResult.twoBanks(),
        InventedResult.nothing(),
        InventedResult.leakingUnseen(4),
        InventedResult.named("a \"name\" </script>\u202e", "=cmd", "x\ny.csv"));
  }

  @ParameterizedTest
  @MethodSource("results")
  void followsItsSchema(CheckResult result) throws IOException {
    assertEquals(Set.of(), schema().validate(ResultsJson.text(result), InputFormat.JSON));
  }

  @Test
  void schemaRefusesAFieldThatItDoesNotDescribe() throws IOException {
    String text = ResultsJson.text(InventedResult.month()).replaceFirst("\"rank\"", "\"place\"");
    Set<ValidationMessage> messages = schema().validate(text, InputFormat.JSON);
    assertFalse(messages.isEmpty());
  }

  @Test
  void describesEveryFieldOfTheSchema() throws IOException {
    try (InputStream in = schemaFile()) {
      described(new ObjectMapper().readTree(in), "$");
    }
  }

  private static void described(JsonNode node, String path) {
    JsonNode properties = node.path("properties");
    properties
        .properties()
        .forEach(
            field -> {
              String name = path + "." + field.getKey();
              assertTrue(field.getValue().path("description").asText().length() > 10, name);
              described(field.getValue(), name);
            });
    node.path("$defs").properties().forEach(def -> described(def.getValue(), "$" + def.getKey()));
  }

  @Test
  void holdsTheContractsFieldsOfACell() throws IOException {
    JsonNode cell = tree(InventedResult.month()).at("/banks/0/cells/11");
    assertEquals(12, cell.get("cell").asInt());
    assertEquals(1, cell.get("rank").asInt());
    assertEquals("low capacity", cell.get("finding").asText());
    assertEquals(243, cell.at("/capacity_ah/value").asDouble());
    assertEquals(238.9, cell.at("/capacity_ah/low").asDouble(), 0.05);
    assertEquals(10, cell.get("resistance_pulse_s").asDouble());
    assertTrue(cell.get("temperature_fault").isNull());
  }

  @Test
  void writesAnEstimateThatCannotBeHadAsNullWithItsReason() throws IOException {
    JsonNode cell = tree(InventedResult.withoutCurrent()).at("/banks/0/cells/0");
    assertTrue(cell.get("capacity_ah").isNull());
    assertTrue(cell.get("capacity_ah_note").asText().startsWith("Pack current is not logged"));
    assertFalse(cell.has("capacity_relative_note"));
    assertTrue(tree(InventedResult.withoutCurrent()).at("/banks/0/charged_ah").isNull());
  }

  @Test
  void writesALeakBesideUnloggedBleedingAsTheLeastThatItMayBe() throws IOException {
    JsonNode cell = tree(InventedResult.leakingUnseen(4)).at("/banks/0/cells/3");
    assertEquals(0.4, cell.at("/self_discharge_ma/value").asDouble(), 1e-9);
    assertTrue(cell.at("/self_discharge_ma/low").isNumber());
    assertTrue(cell.at("/self_discharge_ma/high").isNull());
    assertTrue(
        cell.get("self_discharge_ma_note").asText().startsWith("The least that it may be"),
        cell.toString());
    JsonNode other = tree(InventedResult.leakingUnseen(4)).at("/banks/0/cells/4");
    assertTrue(other.at("/self_discharge_ma/high").isNumber());
    assertFalse(other.has("self_discharge_ma_note"));
  }

  @Test
  void writesTheSameIntoTheTables() {
    Table estimates =
        ResultTables.estimates(InventedResult.leakingUnseen(4))
            .where(t -> t.intColumn("cell").isEqualTo(4))
            .where(t -> t.stringColumn("quantity").isEqualTo("self_discharge_ma"));
    assertEquals(0.4, estimates.doubleColumn("value").get(0), 1e-9);
    assertTrue(estimates.doubleColumn("high").isMissing(0));
    assertTrue(estimates.stringColumn("note").get(0).startsWith("The least that it may be"));
    Table cells = ResultTables.cells(InventedResult.leakingUnseen(4));
    assertTrue(cells.doubleColumn("self_discharge_ma_high").isMissing(3));
    assertFalse(cells.doubleColumn("self_discharge_ma_low").isMissing(3));
  }

  @Test
  void anOpenEndIsReadBackAsOne() {
    Estimate.Known leak =
        (Estimate.Known)
            KeptCheck.parse(ResultsJson.text(InventedResult.leakingUnseen(4)))
                .banks()
                .get(0)
                .cells()
                .get(3)
                .estimate(Quantity.SELF_DISCHARGE_MA);
    assertTrue(leak.isOpen());
  }

  @ParameterizedTest
  @CsvSource({
    "271.3333333, 270.1, 272.5, 271.33",
    "0.000123456, 0.0001, 0.0002, 0.0001235",
    "123456.789, 123000.1, 124000.2, 123457",
    "5, 5, 5, 5",
    "0, -0.5, 0.5, 0",
    "0, 0, 0, 0"
  })
  void keepsFourDigitsAndWhatTheIntervalSupports(
      double value, double low, double high, String expected) {
    Estimate.Known known = new Estimate.Known(value, low, high);
    assertEquals(expected, Rounded.of(value, known).toPlainString());
    assertTrue(Rounded.of(low, known).compareTo(Rounded.of(value, known)) <= 0);
    assertTrue(Rounded.of(high, known).compareTo(Rounded.of(value, known)) >= 0);
  }

  @Test
  void givesTheSameBytesInAnyLocale() {
    Locale before = Locale.getDefault();
    String text = ResultsJson.text(InventedResult.month());
    try {
      Locale.setDefault(Locale.forLanguageTag("ar-EG-u-nu-arab"));
      assertEquals(text, ResultsJson.text(InventedResult.month()));
    } finally {
      Locale.setDefault(before);
    }
    assertFalse(text.contains("\r"));
    assertTrue(text.endsWith("}\n"));
  }

  private static JsonNode tree(CheckResult result) throws IOException {
    return new ObjectMapper().readTree(ResultsJson.text(result));
  }

  private static JsonSchema schema() throws IOException {
    try (InputStream in = schemaFile()) {
      return JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012).getSchema(in);
    }
  }

  private static InputStream schemaFile() {
    InputStream in = ResultsJson.class.getResourceAsStream("/sagbook/results.schema.json");
    assertNotNull(in);
    return in;
  }
}
