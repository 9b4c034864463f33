package sagbook.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.PrintWriter;
import java.io.StringWriter;
import org.junit.jupiter.api.Test;

class ProgressTest {
  private long nowNs = 5;
  private final StringWriter err = new StringWriter();

  private void work(boolean shown, int milliseconds) {
    try (Progress progress = new Progress(new PrintWriter(err), shown, () -> nowNs)) {
      progress.at("Day 1 of 3");
      nowNs += milliseconds * 1_000_000L;
      progress.at("Day 2 of 3");
      progress.at("Day 3 of 3");
    }
  }

  @Test
  void isSilentOffATerminal() {
    work(false, 1_050);
    assertEquals("", err.toString());
  }

  @Test
  void isSilentInAShortJob() {
    work(true, 1);
    assertEquals("", err.toString());
  }

  @Test
  void showsALongJobAndClearsTheLine() {
    work(true, 1_050);
    assertTrue(err.toString().startsWith("\rDay 2 of 3\r"), err::toString);
    assertTrue(err.toString().endsWith("\r          \r"), err::toString);
  }
}
