package sagbook.season;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.InputFormat;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import sagbook.record.DiaryEvent;
import sagbook.record.InventedResult;
import sagbook.record.KeptMonth;

class SeasonJsonTest {
  private static String json(List<KeptMonth> months, DiaryEvent... diary) {
    return SeasonJson.text(Season.of(months, List.of(diary)), "0.1.0");
  }

  private static Stream<String> texts() {
    InventedSeason noCurrent = new InventedSeason(2);
    noCurrent.current = false;
    InventedSeason stepped = new InventedSeason(9);
    stepped.months = 24;
    stepped.jointFailsIn = 13;
    return Stream.of(
        json(new InventedSeason(1).make()),
        json(noCurrent.make()),
        json(stepped.make()),
        json(
            new InventedSeason(3).make(),
            new DiaryEvent(
                InventedSeason.day(4), DiaryEvent.Kind.CELL_REPLACED, "", 3, "\u202e", "\"=1")),
        json(KeptMonth.of(InventedResult.twoBanks(), "c".repeat(64))),
        json(KeptMonth.of(InventedResult.nothing(), "c".repeat(64))));
  }

  @ParameterizedTest
  @MethodSource("texts")
  void followsItsSchema(String text) throws IOException {
    try (InputStream in =
        Objects.requireNonNull(
            SeasonJsonTest.class.getResourceAsStream("/sagbook/season.schema.json"))) {
      JsonSchema schema =
          JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012).getSchema(in);
      assertEquals(Set.of(), schema.validate(text, InputFormat.JSON));
    }
  }

  @Test
  void givesEachCellItsTrendsOrTheReasonWhyNot() throws IOException {
    InventedSeason season = new InventedSeason(2);
    season.current = false;
    JsonNode cell = new ObjectMapper().readTree(json(season.make())).at("/banks/0/cells/2");
    assertEquals(3, cell.path("cell").asInt());
    assertTrue(cell.path("drifting").asBoolean());
    assertEquals(-16.5, cell.path("capacity_trend_percent_per_year").path("value").asDouble(), 2);
    assertTrue(cell.path("resistance_trend_percent_per_year").isNull());
    assertTrue(cell.path("resistance_trend_percent_per_year_note").asText().length() > 20);
    assertTrue(cell.path("evidence").size() >= 3);
  }

  @Test
  void isTheSameEveryTime() {
    assertEquals(json(new InventedSeason(1).make()), json(new InventedSeason(1).make()));
  }
}
