package sagbook.logfile;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import sagbook.issue.InputProblem;

/** The cases of the registry package csv-spectrum 2.0.0, see the README beside them. */
class CsvConformanceTest {
  private static final Path CASES = Path.of("src/test/resources/csv-spectrum");

  @ParameterizedTest
  @ValueSource(
      strings = {
        "comma_in_quotes",
        "empty",
        "empty_crlf",
        "escaped_quotes",
        "json",
        "newlines",
        "newlines_crlf",
        "quotes_and_newlines",
        "simple",
        "simple_crlf",
        "utf8"
      })
  void splitsLikeThePublishedCase(String name) throws IOException, InputProblem {
    assertEquals(expected(name), read(name));
  }

  @Test
  void splitsTheCaseWhosePublishedResultNamesAnotherNumberByItsOtherFields()
      throws IOException, InputProblem {
    Map<String, String> published = expected("location_coordinates").get(0);
    Map<String, String> row = read("location_coordinates").get(0);
    assertEquals(1, read("location_coordinates").size());
    assertEquals("2095257564", row.get("Contact Phone Number"));
    assertEquals(published.get("Location Coordinates"), row.get("Location Coordinates"));
    assertEquals(published.get("Cities"), row.get("Cities"));
    assertEquals("Stanislaus", row.get("Counties"));
  }

  private static List<Map<String, String>> read(String name) throws IOException, InputProblem {
    List<Map<String, String>> rows = new ArrayList<>();
    try (InputStream in = Files.newInputStream(CASES.resolve(name + ".csv"));
        LineReader lines = Head.open(in, StandardCharsets.UTF_8, name)) {
      Fields fields = new Fields(',');
      lines.next();
      fields.split(lines);
      String[] names = fields.all();
      while (lines.next()) {
        fields.split(lines);
        Map<String, String> row = new LinkedHashMap<>();
        for (int i = 0; i < fields.count(); i++) {
          row.put(names[i], fields.field(i));
        }
        rows.add(row);
      }
    }
    return rows;
  }

  private static List<Map<String, String>> expected(String name) throws IOException {
    JsonNode tree = new ObjectMapper().readTree(CASES.resolve(name + ".json").toFile());
    List<Map<String, String>> rows = new ArrayList<>();
    for (JsonNode object : tree.isArray() ? tree : List.of(tree)) {
      Map<String, String> row = new LinkedHashMap<>();
      object.properties().forEach(field -> row.put(field.getKey(), field.getValue().asText()));
      rows.add(row);
    }
    return rows;
  }
}
