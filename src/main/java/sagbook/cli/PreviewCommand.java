package sagbook.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import sagbook.issue.InputProblem;
import sagbook.logfile.LogFolder;
import sagbook.logfile.OpenedLogs;
import sagbook.logfile.ReadReport;
import sagbook.model.ChannelQuality;
import sagbook.model.LogMapping;
import sagbook.packfile.MappingFile;
import sagbook.wording.Words;

/** Shows how logs will be read, before anything is estimated. */
@Command(name = "preview", mixinStandardHelpOptions = true, versionProvider = Version.class)
public final class PreviewCommand implements Callable<Integer> {
  private static final Words WORDS = Words.english();

  @Spec private CommandSpec spec;

  @Mixin private LogOptions logs;

  @Option(names = "--write", paramLabel = "FILE")
  private @Nullable Path write;

  @Override
  public Integer call() throws InputProblem {
    PrintWriter out = spec.commandLine().getOut();
    OpenedLogs opened = LogFolder.open(logs.all());
    List<LogMapping> mappings = new ArrayList<>();
    for (String bank : opened.banks()) {
      show(opened, bank, out);
      mappings.addAll(opened.mappings(bank));
    }
    if (write != null) {
      replace(write, MappingFile.text(mappings));
      out.println(WORDS.say("preview.mapping", write.toString()));
    }
    out.flush();
    return ExitCode.WELL;
  }

  private static void show(OpenedLogs opened, String bank, PrintWriter out) throws InputProblem {
    ReadReport report = opened.read(bank, block -> {});
    out.println(WORDS.say("preview.bank", bank));
    for (ReadReport.Input input : report.inputs()) {
      out.println(
          "  "
              + WORDS.say(
                  "preview.file",
                  InputProblem.quoted(input.file()),
                  Words.whole(input.rows()),
                  input.first().toString(),
                  input.last().toString()));
    }
    for (String sentence : report.sentences()) {
      out.println("  " + sentence);
    }
    table(report.channels(), out);
    for (String sentence : report.advice()) {
      out.println("  " + WORDS.say("preview.next", sentence));
    }
  }

  private static void table(List<ChannelQuality> channels, PrintWriter out) {
    String row = "  %-18s %9s %14s %12s %9s %9s%n";
    out.printf(
        Locale.ROOT,
        row,
        WORDS.say("preview.channel"),
        WORDS.say("preview.valid"),
        WORDS.say("preview.step"),
        WORDS.say("preview.noise"),
        WORDS.say("preview.stuck"),
        WORDS.say("preview.late"));
    for (ChannelQuality channel : channels) {
      out.printf(
          Locale.ROOT,
          row,
          channel.name(),
          String.format(Locale.ROOT, "%.1f %%", 100 * channel.validShare()),
          number("%.4f " + channel.unit(), channel.resolution()),
          number("%.4f " + channel.unit(), channel.noise()),
          number("%.1f h", channel.stuckHours()),
          number("%.1f s", channel.delayS()));
    }
  }

  private static String number(String format, double value) {
    return Double.isNaN(value) ? "-" : String.format(Locale.ROOT, format, value);
  }

  /** Writes beside the file and moves it into place, so that it is whole or not there. */
  private static void replace(Path file, String text) throws InputProblem {
    Path beside = file.resolveSibling(file.getFileName() + ".part");
    try {
      Files.writeString(beside, text, StandardCharsets.UTF_8);
      Files.move(beside, file, StandardCopyOption.REPLACE_EXISTING);
    } catch (IOException e) {
      throw InputProblem.output(e, "problem.write.mapping", InputProblem.quoted(file.toString()));
    }
  }
}
