package sagbook.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import sagbook.record.InventedResult;
import sagbook.record.ResultsJson;

class SparesCommandTest {
  @TempDir private Path folder;
  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();

  @BeforeEach
  void writePackAndResults() throws IOException {
    Files.writeString(
        folder.resolve("pack.toml"),
        """
        [pack]
        name = "Mill"
        chemistry = "lfp"
        series_cells = 16
        nominal_capacity_ah = 280
        """);
    Files.writeString(folder.resolve("results.json"), ResultsJson.text(InventedResult.month()));
  }

  /** A discharge at 56 A (0.2 It) that lasts as long as the capacity says. */
  private String test(String name, double ampereHours) throws IOException {
    StringBuilder text = new StringBuilder("time_s;voltage_mv;current_a\n0;3400;0\n");
    int minutes = (int) Math.round(ampereHours / 56 * 60);
    for (int m = 1; m <= minutes; m++) {
      text.append(
          String.format(Locale.ROOT, "%d;%d;-56%n", 60 * m, m < minutes ? 3300 - m / 2 : 2490));
    }
    Path file = folder.resolve(name + ".csv");
    Files.writeString(file, text.toString());
    return file.toString();
  }

  private int spares(String... args) {
    String[] all = new String[args.length + 3];
    all[0] = "spares";
    all[1] = "--pack";
    all[2] = folder.resolve("pack.toml").toString();
    System.arraycopy(args, 0, all, 3, args.length);
    return Main.run(new PrintWriter(out, true), new PrintWriter(err, true), all);
  }

  @Test
  void givesCapacitiesAndTheBestPlace() throws IOException {
    String strong = test("strong", 275);
    String weak = test("weak", 230);
    assertEquals(0, spares("--results", folder.toString(), weak, strong), err.toString());
    String text = out.toString().replace('\u00a0', ' ');
    assertTrue(text.contains("strong:"), text);
    assertTrue(
        text.contains("Best in the place of cell 12: strong.\nWith it the battery gives"), text);
    assertTrue(text.contains("at 0.20 It\n"), text);
  }

  @Test
  void whatIsNoBenchTestGetsOneSentence() throws IOException {
    Path file = folder.resolve("bad.csv");
    Files.writeString(file, "time_s,pressure\n0,1\n");
    assertEquals(3, spares(file.toString()));
    assertTrue(err.toString().contains("line 1: no column is called v or u"), err.toString());
    Files.writeString(file, "time_s,voltage_v,current_a\n0,1,2\n1,x,2\n");
    assertEquals(3, spares(file.toString()));
    assertTrue(err.toString().contains("line 3, column 2: found \"x\""), err.toString());
    assertEquals(3, spares(folder.resolve("absent.csv").toString()));
    assertEquals("", out.toString());
  }
}
