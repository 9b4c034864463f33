package sagbook.logfile;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import sagbook.issue.InputProblem;
import sagbook.logfile.WrittenTable.Layout;
import sagbook.logfile.WrittenTable.Quotes;
import sagbook.logfile.WrittenTable.Style;
import sagbook.logfile.WrittenTable.TimeStyle;
import sagbook.model.PackDescription;
import sagbook.model.SampleBlock;

/** Whatever dialect, layout, unit and clock a table is written in, the same samples come back. */
class RoundTripPropertyTest {
  @Property(tries = 600, seed = "20260314")
  void anyTableInAnySupportedStyleReadsBackToTheSameSamples(
      @ForAll("tables") WrittenTable table,
      @ForAll("styles") Style style,
      @ForAll("codings") Coding coding)
      throws IOException, InputProblem {
    String text = table.text(style);
    Path file = Files.createTempFile("written", ".log");
    try {
      Files.write(file, coding.bytes(text));
      int[] rows = {0};
      LogFolder.open(request(table, file))
          .read("main", block -> rows[0] = compare(table, block, rows[0]));
      assertEquals(table.rows(), rows[0], "rows");
    } finally {
      Files.delete(file);
    }
  }

  private static ReadRequest request(WrittenTable table, Path file) throws InputProblem {
    PackDescription pack =
        sagbook.packfile.PackFile.parse(
            "pack.toml",
            """
            [pack]
            name = "written"
            chemistry = "lfp"
            series_cells = %d
            timezone = "%s"
            current_sign = "charge positive"
            """
                .formatted(table.cells(), WrittenTable.ZONE));
    return new ReadRequest(
        pack, List.of(file.toString()), Optional.empty(), Optional.empty(), Optional.empty());
  }

  private static int compare(WrittenTable table, SampleBlock block, int from) {
    for (int r = 0; r < block.rows(); r++) {
      int row = from + r;
      assertEquals(table.timeS(row), block.timeS()[r], 1e-4, "time of row " + row);
      for (int c = 0; c < table.cells(); c++) {
        String where = "row " + row + ", cell " + (c + 1);
        assertEquals(table.millivolts()[row][c] / 1000.0, block.voltageV()[c][r], 1e-9, where);
        assertEquals(table.tenthsCelsius()[row][c] / 10.0, block.temperatureC()[c][r], 1e-9, where);
      }
      assertEquals(table.tenthsAmpere()[row] / 10.0, block.currentA()[r], 1e-9, "row " + row);
    }
    return from + block.rows();
  }

  /** Tables without jumps that a reader may take for a sensor's fault. */
  @Provide
  Arbitrary<WrittenTable> tables() {
    Arbitrary<Long> starts =
        Combinators.combine(
                Arbitraries.integers().between(2006, 2037),
                Arbitraries.integers().between(1, 12),
                Arbitraries.integers().between(13, 27),
                Arbitraries.integers().between(4, 18),
                Arbitraries.integers().between(0, 3599))
            .as(WrittenTable::start);
    return Combinators.combine(
            starts,
            Arbitraries.of(500, 1000, 5000, 10_000, 20_000, 60_000),
            Arbitraries.integers().between(2, 9),
            Arbitraries.integers().between(4, 30),
            Arbitraries.longs())
        .as(RoundTripPropertyTest::table);
  }

  private static WrittenTable table(long startS, int stepMs, int cells, int rows, long seed) {
    Random random = new Random(seed);
    int[][] millivolts = new int[rows][cells];
    int[][] tenths = new int[rows][cells];
    int[] current = new int[rows];
    int base = 2600 + random.nextInt(1500);
    int warmth = -150 + random.nextInt(600);
    for (int r = 0; r < rows; r++) {
      base += random.nextInt(21) - 10;
      current[r] = random.nextInt(4001) - 2000;
      for (int c = 0; c < cells; c++) {
        millivolts[r][c] = base + random.nextInt(61) - 30;
        tenths[r][c] = warmth + random.nextInt(31) - 15;
      }
    }
    return new WrittenTable(startS, stepMs, millivolts, tenths, current);
  }

  @Provide
  Arbitrary<Style> styles() {
    Arbitrary<Object[]> numbers =
        Combinators.combine(
                Arbitraries.of(',', ';', '\t', '|'),
                Arbitraries.of(true, false),
                Arbitraries.of(true, false),
                Arbitraries.of(Quotes.class))
            .as((d, comma, grouped, quotes) -> new Object[] {d, comma, grouped, quotes});
    Arbitrary<Object[]> lines =
        Combinators.combine(
                Arbitraries.of("\n", "\r\n", "\r"),
                Arbitraries.of(true, false),
                Arbitraries.of(true, false),
                Arbitraries.of(true, false))
            .as((end, last, trailing, preamble) -> new Object[] {end, last, trailing, preamble});
    return Combinators.combine(
            Arbitraries.of(Layout.class),
            Arbitraries.of(TimeStyle.class),
            numbers,
            lines,
            Arbitraries.of(Unit.VOLT, Unit.MILLIVOLT),
            Arbitraries.of(Unit.CELSIUS, Unit.KELVIN, Unit.FAHRENHEIT),
            Arbitraries.of(Unit.AMPERE, Unit.MILLIAMPERE),
            Arbitraries.longs())
        .as(RoundTripPropertyTest::style)
        .filter(RoundTripPropertyTest::canBeTold);
  }

  private static Style style(
      Layout layout,
      TimeStyle time,
      Object[] n,
      Object[] l,
      Unit voltage,
      Unit temperature,
      Unit current,
      long order) {
    boolean json = layout == Layout.JSON_LINES;
    return new Style(
        layout,
        time,
        (char) n[0],
        (boolean) n[1] && !json,
        (boolean) n[2] && !json,
        json ? Quotes.NONE : (Quotes) n[3],
        (String) l[0],
        (boolean) l[1],
        (boolean) l[2] && !json,
        (boolean) l[3] && !json,
        voltage,
        temperature,
        current,
        order);
  }

  /** Leaves out what no reader could tell: commas that divide and belong to numbers at once. */
  private static boolean canBeTold(Style style) {
    boolean commas = style.delimiter() == ',' && (style.decimalComma() || style.grouped());
    boolean json = style.layout() == Layout.JSON_LINES;
    boolean jsonTime =
        style.time() == TimeStyle.ELAPSED_FROM_PREAMBLE
            || style.time() == TimeStyle.DATE_AND_TIME_APART;
    return json ? !jsonTime : !commas || style.quotes() == Quotes.ALL;
  }

  /** How text becomes bytes. */
  record Coding(Charset charset, boolean mark) {
    byte[] bytes(String text) {
      return ((mark ? "\ufeff" : "") + text).getBytes(charset);
    }
  }

  @Provide
  Arbitrary<Coding> codings() {
    return Arbitraries.of(
        new Coding(StandardCharsets.UTF_8, false),
        new Coding(StandardCharsets.UTF_8, true),
        new Coding(StandardCharsets.UTF_16LE, true),
        new Coding(StandardCharsets.UTF_16BE, true),
        new Coding(StandardCharsets.UTF_16LE, false),
        new Coding(StandardCharsets.ISO_8859_1, false));
  }
}
