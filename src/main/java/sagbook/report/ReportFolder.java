package sagbook.report;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;
import sagbook.issue.InputProblem;
import sagbook.record.BankResult;
import sagbook.record.CheckResult;
import sagbook.record.ResultTables;
import sagbook.record.ResultsJson;
import sagbook.report.html.ReportPage;
import sagbook.report.pdf.PdfFile;
import sagbook.report.table.CsvFile;
import sagbook.wording.Words;

/** The folder with everything a check has to say. */
public final class ReportFolder {
  private static final String PDF = "report.pdf";

  private ReportFolder() {}

  /**
   * Writes results.json, report.html and the tables. All texts are made before the first is written
   * and all are written before the first is shown, so that an earlier report stays whole when
   * something fails.
   *
   * @param outDir the folder; made where there is none; other files in it are left alone
   */
  public static void write(CheckResult result, Path outDir) throws InputProblem {
    Map<String, byte[]> files = new LinkedHashMap<>();
    if (Files.exists(outDir.resolve(PDF))) {
      files.put(PDF, pdf(result));
    }
    write(result, outDir, files);
  }

  /**
   * As {@link #write}, with the report as PDF too. Once it is in a folder it is replaced with the
   * rest, so that it never tells another month than the page beside it.
   */
  public static void writeWithPdf(CheckResult result, Path outDir) throws InputProblem {
    Map<String, byte[]> files = new LinkedHashMap<>();
    files.put(PDF, pdf(result));
    write(result, outDir, files);
  }

  private static byte[] pdf(CheckResult result) {
    Instant end = result.banks().stream().map(BankResult::to).max(Instant::compareTo).orElseThrow();
    return PdfFile.of(ReportPage.printed(result, Words.english()), end);
  }

  private static void write(CheckResult result, Path outDir, Map<String, byte[]> files)
      throws InputProblem {
    put(files, "tables/cells.csv", CsvFile.text(ResultTables.cells(result)));
    put(files, "tables/estimates.csv", CsvFile.text(ResultTables.estimates(result)));
    put(files, "tables/banks.csv", CsvFile.text(ResultTables.banks(result)));
    put(files, "tables/what_if.csv", CsvFile.text(ResultTables.whatIf(result)));
    put(files, "tables/inputs.csv", CsvFile.text(ResultTables.inputs(result)));
    put(files, "report.html", ReportPage.html(result, Words.english()));
    put(files, "results.json", ResultsJson.text(result));
    try {
      WholeFolder.write(outDir, files);
    } catch (IOException e) {
      throw InputProblem.output(
          e, "problem.write.report", InputProblem.quoted(outDir.toString()), reason(e));
    }
  }

  private static void put(Map<String, byte[]> files, String name, String text) {
    files.put(name, text.getBytes(StandardCharsets.UTF_8));
  }

  private static String reason(IOException e) {
    return e instanceof java.nio.file.AccessDeniedException
        ? Words.english().say("problem.access")
        : e instanceof java.nio.file.FileSystemException f && f.getReason() != null
            ? f.getReason()
            : String.valueOf(e.getMessage());
  }
}
