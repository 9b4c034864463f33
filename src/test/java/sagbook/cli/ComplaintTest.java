package sagbook.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.PrintWriter;
import java.io.StringWriter;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class ComplaintTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "check --out report | Missing: --pack=FILE, LOG.",
        "check --pack | Missing: --pack=FILE.",
        "chek | Not known here: \"chek\".",
        "check --pack a --out b --zz c | Not known here: \"--zz\".",
        "import --record a b c | Not known here: \"c\".",
        "swap --cell x | --cell is \"x\"; expected a whole number.",
        "swap --cell 1 --spare-ah x | --spare-ah is \"x\"; expected a number.",
        "simulate --scenario healthy --out a --from 3"
            + " | --from is \"3\"; expected a date such as 2026-03-14.",
        "check --json=3 --pack a --out b c | --json can't be \"3\".",
        "note --record a --record b | --record is given more than once; give it once."
      })
  void saysInOneSentenceWhatIsWrongWithACommand(String command, String sentence) {
    assertEquals(sentence, complaint(command).lines().findFirst().orElseThrow());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "chek | Did you mean check?",
        "check --out report | Usage: sagbook check [-hV] [--json] [--pdf] [--quiet] [--columns=FILE]"
      })
  void saysWhatWasMeantElseWhatIsKnown(String command, String line) {
    assertEquals(line, complaint(command).lines().skip(1).findFirst().orElseThrow());
  }

  private static String complaint(String command) {
    StringWriter err = new StringWriter();
    PrintWriter out = new PrintWriter(new StringWriter());
    assertEquals(2, Main.run(out, new PrintWriter(err, true), command.split(" ", -1)));
    return err.toString();
  }
}
