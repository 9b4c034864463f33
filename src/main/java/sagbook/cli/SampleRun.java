package sagbook.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import sagbook.issue.InputProblem;
import sagbook.logfile.ReadRequest;
import sagbook.model.PackDescription;
import sagbook.packfile.PackFile;
import sagbook.pipeline.Check;
import sagbook.record.BankResult;
import sagbook.record.CheckResult;
import sagbook.record.KeptMonth;
import sagbook.report.ReportFolder;
import sagbook.report.SeasonPages;
import sagbook.season.Season;
import sagbook.season.SeasonResult;
import sagbook.wording.Words;

/**
 * The main job on the sample logs, month by month, for a first look after the build. Ends with
 * success though the samples need attention.
 */
public final class SampleRun {
  private static final Words WORDS = Words.english();
  private static final Path SAMPLES = Path.of("sample-logs");
  private static final Path REPORTS = Path.of("target", "sample-report");

  private SampleRun() {}

  public static void main(String[] args) throws IOException, InputProblem {
    System.setProperty("java.awt.headless", "true");
    run(new PrintWriter(System.out, true, StandardCharsets.UTF_8));
  }

  static void run(PrintWriter out) throws IOException, InputProblem {
    Path packFile = SAMPLES.resolve("pack.toml");
    if (!Files.exists(packFile)) {
      throw InputProblem.input("problem.samples");
    }
    PackDescription pack = PackFile.read(packFile);
    out.println(WORDS.say("samples.months"));
    Path newest = REPORTS;
    List<KeptMonth> kept = new ArrayList<>();
    for (Path month : months()) {
      String name = month.getFileName().toString().replaceFirst("\\.csv.*$", "");
      ReadRequest request =
          new ReadRequest(
              pack,
              List.of(month.toString()),
              Optional.empty(),
              Optional.empty(),
              Optional.empty());
      CheckResult result = Check.run(request, Version.current(), words -> {});
      newest = REPORTS.resolve(name);
      ReportFolder.write(result, newest);
      kept.addAll(KeptMonth.of(result, ""));
      for (BankResult bank : result.banks()) {
        out.println("  " + name + "  " + bank.verdict().headline());
      }
    }
    out.println(WORDS.say("samples.newest", newest.resolve("report.html").toString()));
    SeasonResult season = Season.of(kept, List.of());
    Path together = REPORTS.resolve("season");
    SeasonPages.write(season, List.of(), Version.current(), together);
    out.println(WORDS.say("samples.together"));
    season.banks().forEach(bank -> out.println("  " + bank.headline()));
    out.println(WORDS.say("samples.season", together.resolve("season.html").toString()));
  }

  private static List<Path> months() throws IOException {
    try (Stream<Path> files = Files.list(SAMPLES.resolve("logs"))) {
      return files.sorted().toList();
    }
  }
}
