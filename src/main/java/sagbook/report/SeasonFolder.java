package sagbook.report;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.YearMonth;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.SortedMap;
import sagbook.issue.InputProblem;
import sagbook.record.CheckResult;
import sagbook.record.DiaryEvent;
import sagbook.record.KeptMonth;
import sagbook.report.season.DataDictionary;
import sagbook.report.season.RecordTables;
import sagbook.report.season.SeasonTables;
import sagbook.report.table.CsvFile;
import tech.tablesaw.api.Table;

/**
 * The folder that notebooks read: a season's tables, their dictionary, a notebook to begin with.
 */
public final class SeasonFolder {
  private static final String NOTEBOOK = "/sagbook/season.ipynb";

  private SeasonFolder() {}

  /**
   * Writes the folder.
   *
   * @param months results by calendar month, at least one
   * @param outDir made where there is none; other files in it are left alone
   */
  public static void write(SortedMap<YearMonth, CheckResult> months, Path outDir)
      throws InputProblem {
    write(files(months), outDir);
  }

  /** Writes the same of a record's months, oldest first, with its diary. */
  public static void write(List<KeptMonth> months, List<DiaryEvent> diary, Path outDir)
      throws InputProblem {
    write(files(RecordTables.of(months, diary)), outDir);
  }

  /** Writes files that are made already, all or nothing. */
  public static void write(Map<String, byte[]> files, Path outDir) throws InputProblem {
    try {
      WholeFolder.write(outDir, files);
    } catch (IOException e) {
      throw InputProblem.output(e, "problem.write.tables", InputProblem.quoted(outDir.toString()));
    }
  }

  /** The folder's files by name. */
  static Map<String, byte[]> files(SortedMap<YearMonth, CheckResult> months) {
    return files(SeasonTables.of(months));
  }

  private static Map<String, byte[]> files(Map<String, Table> tables) {
    Map<String, byte[]> files = new LinkedHashMap<>();
    tables.forEach((name, table) -> files.put(name, bytes(table)));
    files.put("dictionary.csv", bytes(DataDictionary.of(tables)));
    try (InputStream in =
        Objects.requireNonNull(SeasonFolder.class.getResourceAsStream(NOTEBOOK), NOTEBOOK)) {
      files.put("season.ipynb", in.readAllBytes());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return files;
  }

  private static byte[] bytes(Table table) {
    return CsvFile.text(table).getBytes(StandardCharsets.UTF_8);
  }
}
