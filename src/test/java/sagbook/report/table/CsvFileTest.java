package sagbook.report.table;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.StringReader;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import sagbook.record.InventedResult;
import sagbook.record.ResultTables;

final class CsvFileTest {
  @ParameterizedTest
  @CsvSource({
    "=1+1, '''=1+1'",
    "' =1+1', ''' =1+1'",
    "+49, '''+49'",
    "-2, '''-2'",
    "@SUM(A1), '''@SUM(A1)'",
    "cell 3 = weak, cell 3 = weak",
    "'\u202e=1', '<U+202E>=1'"
  })
  void keepsTextFromActingAsAFormula(String text, String expected) {
    assertEquals(expected, CsvFile.harmless(text));
  }

  @Test
  void writesOneRowACellWithEmptyFieldsForWhatIsUnknown() throws IOException {
    List<CSVRecord> rows = rows(CsvFile.text(ResultTables.cells(InventedResult.month())));
    assertEquals(16, rows.size());
    CSVRecord weak = rows.get(11);
    assertEquals("12", weak.get("cell"));
    assertEquals("low capacity", weak.get("finding"));
    assertEquals("243", weak.get("capacity_ah"));
    assertEquals("", rows.get(2).get("capacity_ah"));
    assertEquals("1.25", rows.get(4).get("hours_above_max_voltage"));
  }

  @Test
  void estimatesCarryTheReasonWhereThereIsNoValue() throws IOException {
    List<CSVRecord> rows = rows(CsvFile.text(ResultTables.estimates(InventedResult.month())));
    CSVRecord unknown =
        rows.stream()
            .filter(r -> r.get("cell").equals("3") && r.get("quantity").equals("capacity_ah"))
            .findFirst()
            .orElseThrow();
    assertEquals("Cell 3 was never seen near empty.", unknown.get("note"));
    assertEquals("", unknown.get("value"));
    assertTrue(rows.stream().noneMatch(r -> r.get("value").isEmpty() == r.get("note").isEmpty()));
  }

  private static List<CSVRecord> rows(String text) throws IOException {
    CSVFormat format = CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get();
    return format.parse(new StringReader(text)).getRecords();
  }
}
