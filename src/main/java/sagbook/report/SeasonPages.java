package sagbook.report;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import sagbook.issue.InputProblem;
import sagbook.record.DiaryEvent;
import sagbook.record.KeptCheck;
import sagbook.record.KeptMonth;
import sagbook.report.html.Dossier;
import sagbook.report.html.SeasonPage;
import sagbook.report.html.SeasonStory;
import sagbook.report.pdf.PdfFile;
import sagbook.season.SeasonJson;
import sagbook.season.SeasonResult;
import sagbook.verdict.Severity;
import sagbook.wording.Words;

/**
 * The folder that tells a season: season.html, season.json, index.html over all months; on demand a
 * dossier as HTML and PDF.
 */
public final class SeasonPages {
  private SeasonPages() {}

  /**
   * Writes the folder, all or nothing.
   *
   * @param software version that makes it
   * @param outDir made where there is none; other files in it are left alone
   */
  public static void write(
      SeasonResult season, List<DiaryEvent> diary, String software, Path outDir)
      throws InputProblem {
    write(season, diary, software, outDir, new LinkedHashMap<>());
  }

  /**
   * Writes the folder with a dossier.
   *
   * @param made day that the dossier shall show; empty for none, so that it is the same every day
   */
  public static void writeWithDossier(
      SeasonResult season,
      List<DiaryEvent> diary,
      String software,
      Optional<LocalDate> made,
      Path outDir)
      throws InputProblem {
    Map<String, byte[]> files = new LinkedHashMap<>();
    String html = Dossier.html(season, diary, software, made, Words.english());
    Instant newest =
        season.banks().stream().map(SeasonResult.Bank::to).max(Instant::compareTo).orElseThrow();
    put(files, "dossier.html", html);
    files.put("dossier.pdf", PdfFile.of(html, newest));
    write(season, diary, software, outDir, files);
  }

  private static void write(
      SeasonResult season,
      List<DiaryEvent> diary,
      String software,
      Path outDir,
      Map<String, byte[]> files)
      throws InputProblem {
    Words words = Words.english();
    put(files, "index.html", SeasonPage.html(checks(season, outDir), words));
    put(files, "season.html", SeasonStory.html(season, diary, words));
    put(files, "season.json", SeasonJson.text(season, software));
    try {
      WholeFolder.write(outDir, files);
    } catch (IOException e) {
      throw InputProblem.output(e, "problem.write.season", InputProblem.quoted(outDir.toString()));
    }
  }

  private static void put(Map<String, byte[]> files, String name, String text) {
    files.put(name, text.getBytes(StandardCharsets.UTF_8));
  }

  /**
   * Banks of one period as one check, under the folder of its report if that lies in the folder.
   */
  private static Map<String, KeptCheck> checks(SeasonResult season, Path outDir) {
    Map<Instant, List<KeptCheck.Bank>> banks = new TreeMap<>();
    for (SeasonResult.Bank bank : season.banks()) {
      for (KeptMonth month : bank.months()) {
        banks.computeIfAbsent(month.bank().from(), from -> new ArrayList<>()).add(month.bank());
      }
    }
    Map<String, KeptCheck> checks = new LinkedHashMap<>();
    banks.forEach(
        (from, own) -> {
          KeptCheck check =
              new KeptCheck(season.battery().pack(), season.battery().zone(), severity(own), own);
          String month = YearMonth.from(from.atZone(check.zone())).toString();
          boolean reported = Files.isRegularFile(outDir.resolve(month).resolve("report.html"));
          checks.put(
              reported && !checks.containsKey("./" + month)
                  ? "./" + month
                  : SeasonPage.NOWHERE + from,
              check);
        });
    return checks;
  }

  private static Severity severity(List<KeptCheck.Bank> banks) {
    Severity most = Severity.WELL;
    for (KeptCheck.Bank bank : banks) {
      most = bank.severity().compareTo(most) > 0 ? bank.severity() : most;
    }
    return most;
  }
}
