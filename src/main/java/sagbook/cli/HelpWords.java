package sagbook.cli;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Enumeration;
import java.util.List;
import java.util.Map;
import java.util.ResourceBundle;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import sagbook.wording.Words;

/** The wording of the help, under the keys by which picocli looks for it. */
final class HelpWords extends ResourceBundle {
  private static final Words WORDS = Words.english();

  /** Filled in by picocli: what an option may be. */
  private static final String[] OF_OPTION = {"${COMPLETION-CANDIDATES}"};

  private final Map<String, String> texts = new TreeMap<>();

  /** The help of a command and of those below it. */
  HelpWords(CommandLine line) {
    texts.put("usage.synopsisHeading", said("help.usage"));
    texts.put("usage.commandListHeading", said("help.commands") + "%n");
    texts.put("mixinStandardHelpOptions.help", said("help.option.help"));
    texts.put("mixinStandardHelpOptions.version", said("help.option.version"));
    add(line.getCommandSpec());
    line.getSubcommands().values().forEach(sub -> add(sub.getCommandSpec()));
  }

  private void add(CommandSpec command) {
    String key = "help." + command.name();
    String there = command.qualifiedName(".") + ".";
    put(there + "usage.description.", about(key));
    put(there + "usage.footer.", footer(key));
    for (OptionSpec option : command.options()) {
      if (!option.usageHelp() && !option.versionHelp()) {
        String name = option.longestName().substring("--".length());
        texts.put(there + name, said(key + ".option." + name));
      }
    }
    for (PositionalParamSpec parameter : command.positionalParameters()) {
      String name = parameter.paramLabel() + "[" + parameter.index() + "]";
      texts.put(there + name, said(key + ".parameter"));
    }
  }

  private void put(String key, List<String> lines) {
    for (int i = 0; i < lines.size(); i++) {
      texts.put(key + i, lines.get(i));
    }
  }

  private static List<String> about(String key) {
    List<String> lines = new ArrayList<>();
    for (String paragraph : WORDS.list(key + ".about")) {
      lines.add(plain(paragraph));
      lines.add("");
    }
    return lines;
  }

  private static List<String> footer(String key) {
    List<String> lines = new ArrayList<>();
    if (WORDS.has(key + ".list")) {
      lines.add("");
      lines.add(said(key + ".list"));
      WORDS.list(key + ".list").forEach(one -> lines.add("  " + plain(one)));
    }
    lines.add("");
    lines.add(said("help.examples"));
    WORDS.list(key + ".example").forEach(one -> lines.add("  " + plain(one)));
    lines.add("");
    lines.add(said(key + ".end"));
    return lines;
  }

  private static String said(String key) {
    return plain(WORDS.say(key, OF_OPTION));
  }

  /** Picocli takes each text for a format. */
  private static String plain(String text) {
    return text.replace("%", "%%");
  }

  @Override
  protected @Nullable Object handleGetObject(String key) {
    return texts.get(key);
  }

  @Override
  public Enumeration<String> getKeys() {
    return Collections.enumeration(texts.keySet());
  }
}
