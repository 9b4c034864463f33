package sagbook.report.season;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Map;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import sagbook.record.CellReading;
import sagbook.record.Quantity;
import sagbook.wording.Words;
import tech.tablesaw.api.StringColumn;
import tech.tablesaw.api.Table;

/**
 * Says what every column and every quantity of the season's tables means and its unit. The words
 * are those of the schema of results.json, so that the two can't differ.
 */
public final class DataDictionary {
  private static final String SCHEMA = "/sagbook/results.schema.json";
  private static final Pattern UNIT =
      Pattern.compile(", (Ah|kWh|kJ/mol|mΩ|mA|mV|V|A|W|h|min|s|°C)\\.");
  private static final Words WORDS = Words.english();

  /** What a column has in the wording because the schema has it not. */
  private static final String OWN = "dictionary.";

  private final JsonNode definitions;
  private final StringColumn file = StringColumn.create("file");
  private final StringColumn name = StringColumn.create("name");
  private final StringColumn kind = StringColumn.create("kind");
  private final StringColumn unit = StringColumn.create("unit");
  private final StringColumn meaning = StringColumn.create("meaning");

  private DataDictionary(JsonNode definitions) {
    this.definitions = definitions;
  }

  /** One row a column of every table, and one a quantity of estimates.csv. */
  public static Table of(Map<String, Table> tables) {
    DataDictionary dictionary = new DataDictionary(schema().path("$defs"));
    tables.forEach(
        (fileName, table) ->
            table.columnNames().forEach(column -> dictionary.addColumn(fileName, column)));
    for (Quantity quantity : Quantity.values()) {
      dictionary.add(
          "estimates.csv",
          quantity.key(),
          "quantity",
          quantity.unit(),
          dictionary.described(quantity.key(), "cell"));
    }
    return Table.create(
        "dictionary",
        dictionary.file,
        dictionary.name,
        dictionary.kind,
        dictionary.unit,
        dictionary.meaning);
  }

  private void addColumn(String fileName, String column) {
    if (WORDS.has(OWN + column)) {
      add(fileName, column, "column", "", WORDS.say(OWN + column));
      return;
    }
    String end = column.endsWith("_low") ? "low.of" : column.endsWith("_high") ? "high.of" : "";
    String owner = fileName.equals("banks.csv") ? "bank" : "cell";
    if (!end.isEmpty()) {
      String whole = column.substring(0, column.lastIndexOf('_'));
      String text = WORDS.say(OWN + end, whole);
      add(fileName, column, "column", unit(whole, described(whole, owner)), text);
      return;
    }
    String text = described(column, owner);
    add(fileName, column, "column", unit(column, text), text);
  }

  private void add(String in, String called, String of, String measuredIn, String means) {
    file.append(in);
    name.append(called);
    kind.append(of);
    unit.append(measuredIn);
    meaning.append(means);
  }

  /** The schema's words without what holds for JSON only. */
  private String described(String key, String owner) {
    JsonNode text = definitions.path(owner).path("properties").path(key).path("description");
    if (text.isMissingNode()) {
      text = definitions.path("bank").path("properties").path(key).path("description");
    }
    if (text.isMissingNode()) {
      throw new IllegalStateException("the schema of results.json doesn't describe " + key);
    }
    return text.asText().replaceFirst(" Null when .*", "");
  }

  private static String unit(String key, String text) {
    for (CellReading reading : CellReading.values()) {
      if (reading.key().equals(key)) {
        return reading.unit();
      }
    }
    Matcher found = UNIT.matcher(text);
    return found.find() ? found.group(1) : "";
  }

  private static JsonNode schema() {
    try (InputStream in =
        Objects.requireNonNull(DataDictionary.class.getResourceAsStream(SCHEMA), SCHEMA)) {
      return new ObjectMapper().readTree(in);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
