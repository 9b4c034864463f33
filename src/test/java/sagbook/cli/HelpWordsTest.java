package sagbook.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import sagbook.wording.Words;

/** The help has all of its words from the wording, and the wording none that no help says. */
final class HelpWordsTest {
  private static final List<String> COMMANDS =
      List.of(
          "sagbook",
          "check",
          "preview",
          "season",
          "note",
          "export",
          "import",
          "swap",
          "spares",
          "simulate");

  private static String help(String command) {
    StringWriter out = new StringWriter();
    String[] line =
        command.equals("sagbook") ? new String[] {"--help"} : new String[] {command, "--help"};
    assertEquals(0, Main.run(new PrintWriter(out, true), new PrintWriter(out, true), line));
    return unwrapped(out.toString());
  }

  /** Without blanks, as the help is wrapped to the terminal's width, even behind a full stop. */
  private static String unwrapped(String text) {
    return text.replaceAll("\\s+", "");
  }

  @Test
  void everyWordingOfTheHelpIsSaid() {
    Set<String> unsaid = new TreeSet<>();
    for (String command : COMMANDS) {
      String help = help(command);
      for (String key : Words.english().keys()) {
        if (key.startsWith("help." + command + ".")
            && !help.contains(unwrapped(Words.english().say(key, NoteCommand.KINDS)))) {
          unsaid.add(key);
        }
      }
    }
    assertEquals(Set.of(), unsaid);
  }

  @Test
  void noWordingIsOfACommandThatIsGone() {
    for (String key : Words.english().keys()) {
      if (key.matches("help\\.\\w+\\..*") && !key.startsWith("help.option.")) {
        assertTrue(COMMANDS.stream().anyMatch(c -> key.startsWith("help." + c + ".")), key);
      }
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"sagbook", "check", "swap", "note"})
  void noPlaceIsLeftOpen(String command) {
    assertFalse(help(command).contains("${"));
    assertFalse(help(command).contains("%%"));
  }
}
