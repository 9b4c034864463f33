package sagbook.report.chart;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Where words stand in a drawing. */
final class PlotSvgTest {
  private static final int HEIGHT = 320;

  private static Element svg(Plot plot, String which) {
    return Jsoup.parse(PlotSvg.of(plot, HEIGHT, "label")).expectFirst("svg." + which);
  }

  private static double at(Element text, String attribute) {
    return Double.parseDouble(text.attr(attribute));
  }

  /** A mark with its interval in every cell; the one in question carries its name. */
  private static Plot cells(int cells, int named, double namedAt) {
    Plot.Sketch sketch = new Plot.Sketch();
    for (int cell = 1; cell <= cells; cell++) {
      double value = cell == named ? namedAt : 100;
      sketch.span(new Ink(Role.SPAN, cell, 0), cell, value - 1, value + 1, "");
      sketch.point(new Ink(Role.MARK, cell, 0), cell, value, "");
    }
    sketch.note(Plot.Place.ABOVE, named, namedAt + 1, "cell " + named, true);
    return sketch.on(Axis.cells("Cell", cells), Axis.between("Capacity, %", 90, 110, 5));
  }

  @ParameterizedTest
  @CsvSource({"4, wide", "16, wide", "32, wide", "4, narrow", "16, narrow", "32, narrow"})
  void labelsOfCellsNeverRunIntoEachOther(int cells, String which) {
    List<Element> labels = svg(cells(cells, 2, 100), which).select("text.tick[text-anchor=middle]");
    assertEquals("1", labels.get(0).text());
    for (int i = 1; i < labels.size(); i++) {
      double apart = at(labels.get(i), "x") - at(labels.get(i - 1), "x");
      assertTrue(apart > Frame.length(labels.get(i).text()), cells + ": " + apart);
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"wide", "narrow"})
  void aNameStandsOverItsMarkWhereThatIsFree(String which) {
    Plot plot = cells(16, 7, 95);
    Frame frame = which.equals("wide") ? Frame.wide(plot, HEIGHT) : Frame.narrow(plot, HEIGHT);
    double baseline = at(svg(plot, which).expectFirst("text.strong"), "y");
    assertTrue(frame.y(99) < baseline - 10 && baseline < frame.y(96), "at " + baseline);
  }

  @Test
  void aNameStandsUnderItsMarkWhereNeighboursAreInTheWay() {
    Plot plot = cells(16, 7, 98.5);
    double baseline = at(svg(plot, "narrow").expectFirst("text.strong"), "y");
    assertTrue(baseline > Frame.narrow(plot, HEIGHT).y(97.5) + 8, "at " + baseline);
  }

  @ParameterizedTest
  @CsvSource({"16, 7, wide", "32, 7, wide", "16, 7, narrow", "32, 7, narrow", "32, 31, narrow"})
  void aNameNeverStandsWhereItWouldNameAnotherCell(int cells, int named, String which) {
    Plot plot = cells(cells, named, 100);
    Frame frame = which.equals("wide") ? Frame.wide(plot, HEIGHT) : Frame.narrow(plot, HEIGHT);
    Element name = svg(plot, which).expectFirst("text.strong");
    double aside = Math.abs(at(name, "x") - frame.x(named));
    assertTrue(aside < 1 || Math.abs(at(name, "y") - frame.y(100)) < 60, "aside by " + aside);
    assertTrue(aside <= Frame.length(name.text()) / 2 + 1, "aside by " + aside);
  }

  @Test
  void wordsBesideAnUprightLineStayInsideThePaper() {
    for (double x : new double[] {1, 8, 15.9}) {
      Plot.Sketch sketch = new Plot.Sketch();
      sketch.line(new Ink(Role.RULE, 0, 0), new double[] {x, x}, new double[] {0, 1}, "");
      sketch.note(Plot.Place.FOOT, x, 0, "cell replaced, 9", false);
      Plot plot = sketch.on(Axis.cells("Cell", 16), Axis.between("V", 0, 1, 5));
      Element words = svg(plot, "narrow").expectFirst("text.note");
      double length = Frame.length(words.text());
      boolean toTheRight = words.attr("text-anchor").equals("start");
      double end = at(words, "x") + (toTheRight ? length : -length);
      assertTrue(0 < end && end < 328, "ends at " + end);
    }
  }

  @Test
  void barsAreSlimWhereCellsAreCloseAndBroadWhereTheyAreFew() {
    for (String expected : List.of("32 narrow slim", "16 wide ", "4 wide broad")) {
      String[] parts = expected.split(" ", -1);
      int cells = Integer.parseInt(parts[0]);
      Plot.Sketch sketch = new Plot.Sketch();
      sketch.span(new Ink(Role.BAR, 1, 0), 1, 0, 1, "");
      Plot plot = sketch.on(Axis.cells("Cell", cells), Axis.between("Ah", 0, 1, 5));
      String classes = svg(plot, parts[1]).expectFirst("path.bar").className();
      assertEquals(("bar " + parts[2]).strip(), classes);
    }
  }
}
