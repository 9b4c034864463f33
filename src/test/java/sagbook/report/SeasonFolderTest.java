package sagbook.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import sagbook.record.CheckResult;
import sagbook.record.InventedResult;

class SeasonFolderTest {
  private static final CSVFormat WITH_HEADER =
      CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get();
  private static final Pattern QUOTED = Pattern.compile("\"([^\"]*)\"");
  private static Map<String, byte[]> files;

  @BeforeAll
  static void export() throws IOException {
    TreeMap<YearMonth, CheckResult> months = new TreeMap<>();
    months.put(YearMonth.of(2026, 5), InventedResult.month());
    months.put(YearMonth.of(2026, 4), InventedResult.withoutCurrent());
    files = SeasonFolder.files(months);
  }

  private static String text(String name) {
    return new String(files.get(name), StandardCharsets.UTF_8);
  }

  private static CSVParser table(String name) throws IOException {
    return CSVParser.parse(text(name), WITH_HEADER);
  }

  @Test
  void holdsTablesDictionaryAndNotebook() {
    assertEquals(
        Set.of("estimates.csv", "cells.csv", "banks.csv", "dictionary.csv", "season.ipynb"),
        files.keySet());
  }

  @Test
  void putsTheMonthsBelowOneAnotherInOrder() throws IOException {
    List<String> months = table("banks.csv").stream().map(r -> r.get("month")).toList();
    assertEquals(List.of("2026-04", "2026-05"), months);
    table("banks.csv").forEach(row -> assertEquals("16", row.get("series_cells")));
    List<CSVRecord> estimates = table("estimates.csv").getRecords();
    assertEquals("2026-04", estimates.get(0).get("month"));
    assertEquals("2026-05", estimates.get(estimates.size() - 1).get("month"));
  }

  @Test
  void givesEveryEstimateAValueWithUnitOrAReason() throws IOException {
    for (CSVRecord row : table("estimates.csv")) {
      boolean known = !row.get("value").isEmpty();
      assertEquals(known, row.get("note").isEmpty(), row::toString);
      assertEquals(known, !row.get("low").isEmpty() && !row.get("high").isEmpty(), row::toString);
      assertFalse(row.get("unit").isEmpty());
    }
  }

  @Test
  void describesEveryColumnAndQuantity() throws IOException {
    Set<String> described = new HashSet<>();
    for (CSVRecord row : table("dictionary.csv")) {
      assertFalse(row.get("meaning").isBlank(), row::toString);
      described.add(row.get("file") + " " + row.get("kind") + " " + row.get("name"));
    }
    for (String name : List.of("estimates.csv", "cells.csv", "banks.csv")) {
      for (String column : table(name).getHeaderNames()) {
        assertTrue(described.contains(name + " column " + column), name + " " + column);
      }
    }
    for (CSVRecord row : table("estimates.csv")) {
      assertTrue(described.contains("estimates.csv quantity " + row.get("quantity")));
    }
  }

  @Test
  void givesTheUnitOfWhatHasOne() throws IOException {
    for (CSVRecord row : table("dictionary.csv")) {
      String name = row.get("name").replaceFirst("_(low|high)$", "");
      String unit =
          name.endsWith("_ah")
              ? "Ah"
              : name.endsWith("_kwh") ? "kWh" : name.endsWith("_v") ? "V" : "";
      if (!unit.isEmpty()) {
        assertEquals(unit, row.get("unit"), row::toString);
      }
    }
  }

  @Test
  void namesOnlyColumnsAndQuantitiesThatExistInTheNotebook() throws IOException {
    JsonNode notebook = new ObjectMapper().readTree(text("season.ipynb"));
    assertEquals(4, notebook.path("nbformat").asInt());
    Set<String> known = new TreeSet<>();
    for (CSVRecord row : table("dictionary.csv")) {
      known.add(row.get("name"));
      known.add(row.get("file"));
    }
    known.addAll(table("dictionary.csv").getHeaderNames());
    known.add("dictionary.csv");
    List<String> unknown = new ArrayList<>();
    for (JsonNode cell : notebook.path("cells")) {
      assertTrue(cell.hasNonNull("id") && cell.path("metadata").isObject());
      if (cell.path("cell_type").asText().equals("code")) {
        assertEquals(0, cell.path("outputs").size());
        unknown.addAll(foreign(cell.path("source"), known));
      }
    }
    assertEquals(List.of(), unknown);
  }

  /** The notebook's double-quoted words, which are names; other strings have single quotes. */
  private static List<String> foreign(JsonNode source, Set<String> known) {
    List<String> unknown = new ArrayList<>();
    for (JsonNode line : source) {
      var matcher = QUOTED.matcher(line.asText());
      while (matcher.find()) {
        if (!known.contains(matcher.group(1))) {
          unknown.add(matcher.group(1));
        }
      }
    }
    return unknown;
  }
}
