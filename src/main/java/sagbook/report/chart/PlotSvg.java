package sagbook.report.chart;

import java.io.StringWriter;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;

/**
 * A plot as SVG that stands inside the page: XChart's lines and marks in a frame with real words.
 * Shapes carry class names and {@code data-cell}; colours, line styles and fonts come from the
 * page's style sheet.
 */
final class PlotSvg {
  private static final int WIDTH = 640;
  private static final int LEFT = 58;
  private static final int RIGHT = 94;
  private static final int TOP = 32;
  private static final int BOTTOM = 50;
  private static final int TICK = 5;
  private static final int LINE_HEIGHT = 15;
  private static final int NOTE_WIDTH = 50;

  private final Plot plot;
  private final int height;
  private final List<double[]> above = new ArrayList<>();
  private final StringWriter text = new StringWriter();
  private final XMLStreamWriter out;

  private PlotSvg(Plot plot, int height) throws XMLStreamException {
    this.plot = plot;
    this.height = height;
    this.out = XMLOutputFactory.newDefaultFactory().createXMLStreamWriter(text);
  }

  /**
   * The markup.
   *
   * @param plot what to draw
   * @param height of the whole, on a width of 640
   * @param label what somebody hears who can't see it
   */
  static String of(Plot plot, int height, String label) {
    try {
      PlotSvg svg = new PlotSvg(plot, height);
      svg.write(label);
      return svg.text.toString();
    } catch (XMLStreamException e) {
      throw new IllegalStateException("a string writer does not fail", e);
    }
  }

  /** Width of the inside of the frame, for thinning. */
  static int plotWidth() {
    return WIDTH - LEFT - RIGHT;
  }

  private int plotHeight() {
    return height - TOP - BOTTOM;
  }

  private void write(String label) throws XMLStreamException {
    out.writeStartElement("svg");
    out.writeDefaultNamespace("http://www.w3.org/2000/svg");
    out.writeAttribute("class", "plot");
    out.writeAttribute("viewBox", "0 0 " + WIDTH + " " + height);
    out.writeAttribute("role", "img");
    out.writeAttribute("aria-label", label);
    out.writeAttribute("font-family", "sans-serif");
    out.writeAttribute("data-frame", LEFT + " " + TOP + " " + plotWidth() + " " + plotHeight());
    axis("x", plot.x());
    axis("y", plot.y());
    frame();
    shapes();
    notes();
    out.writeEndElement();
    out.flush();
  }

  /** What the page's script needs to read a value off a place. */
  private void axis(String name, Axis axis) throws XMLStreamException {
    out.writeAttribute("data-" + name, axis.low() + " " + axis.high());
    out.writeAttribute("data-" + name + "-title", axis.title());
    if (!axis.signed()) {
      out.writeAttribute("data-" + name + "-sign", "none");
    }
  }

  private void frame() throws XMLStreamException {
    StringBuilder grid = new StringBuilder();
    StringBuilder ticks = new StringBuilder();
    for (Axis.Tick tick : plot.y().ticks()) {
      String y = number(y(tick.at()));
      grid.append("M" + LEFT + " " + y + "h" + plotWidth());
      ticks.append("M" + LEFT + " " + y + "h-" + TICK);
    }
    int floor = TOP + plotHeight();
    for (Axis.Tick tick : plot.x().ticks()) {
      ticks.append("M" + number(x(tick.at())) + " " + floor + "v" + TICK);
    }
    path("grid", grid.toString());
    path("axis", "M" + LEFT + " " + TOP + "V" + floor + "H" + (LEFT + plotWidth()) + ticks);
    for (Axis.Tick tick : plot.y().ticks()) {
      words("tick", LEFT - TICK - 4.0, y(tick.at()) + 4.5, "end", tick.label());
    }
    for (Axis.Tick tick : plot.x().ticks()) {
      words("tick", x(tick.at()), floor + TICK + 14.0, "middle", tick.label());
    }
    words("title", LEFT - 48.0, TOP - 15.0, "start", plot.y().title());
    words("title", LEFT + plotWidth() / 2.0, height - 8.0, "middle", plot.x().title());
  }

  private void shapes() throws XMLStreamException {
    out.writeStartElement("g");
    out.writeAttribute("transform", "translate(" + LEFT + " " + TOP + ")");
    for (DrawnShapes.Shape shape : DrawnShapes.of(Drawing.of(plot, plotWidth(), plotHeight()))) {
      Plot.Series series = plot.series().get(shape.series());
      out.writeStartElement("path");
      out.writeAttribute("class", series.ink().classes());
      if (series.ink().cell() > 0) {
        out.writeAttribute("data-cell", Integer.toString(series.ink().cell()));
      }
      out.writeAttribute("d", shape.path());
      if (!series.tip().isEmpty()) {
        out.writeAttribute("data-tip", series.tip());
        out.writeStartElement("title");
        out.writeCharacters(series.tip());
        out.writeEndElement();
      }
      out.writeEndElement();
    }
    out.writeEndElement();
  }

  private void notes() throws XMLStreamException {
    List<Plot.Note> margin = new ArrayList<>();
    for (Plot.Note note : plot.notes()) {
      String style = note.strong() ? "note strong" : "note";
      switch (note.place()) {
        case MARGIN -> margin.add(note);
        case ABOVE -> {
          double[] at = free(x(note.x()), y(note.y()) - 9);
          words(style, at[0], at[1], "middle", note.text());
        }
        case START -> words(style, x(note.x()) + 4, y(note.y()) + 4, "start", note.text());
        case FLOOR -> words(style, x(note.x()), TOP + plotHeight() - 6.0, "middle", note.text());
      }
    }
    margin.sort(Comparator.comparingDouble(note -> -note.y()));
    double[] at = apart(margin);
    for (int i = 0; i < margin.size(); i++) {
      Plot.Note note = margin.get(i);
      double left = LEFT + plotWidth() + 6.0;
      words(note.strong() ? "note strong" : "note", left, at[i] + 4.5, "start", note.text());
    }
  }

  /** The place for a note above its point, lifted over those already there. */
  private double[] free(double x, double y) {
    double[] at = {x, y};
    boolean moved = true;
    while (moved) {
      moved = false;
      for (double[] other : above) {
        if (Math.abs(other[0] - x) < NOTE_WIDTH && Math.abs(other[1] - at[1]) < LINE_HEIGHT - 1) {
          at[1] = other[1] - LINE_HEIGHT;
          moved = true;
        }
      }
    }
    above.add(at);
    return at;
  }

  /** Heights for notes in the margin, at least a line apart, inside the frame. */
  private double[] apart(List<Plot.Note> notes) {
    double[] at = new double[notes.size()];
    double free = TOP;
    for (int i = 0; i < at.length; i++) {
      at[i] = Math.max(free, y(notes.get(i).y()));
      free = at[i] + LINE_HEIGHT;
    }
    double floor = TOP + plotHeight();
    for (int i = at.length - 1; i >= 0; i--) {
      at[i] = Math.min(at[i], floor);
      floor = at[i] - LINE_HEIGHT;
    }
    return at;
  }

  private void path(String className, String d) throws XMLStreamException {
    out.writeEmptyElement("path");
    out.writeAttribute("class", className);
    out.writeAttribute("d", d);
  }

  private void words(String className, double x, double y, String anchor, String words)
      throws XMLStreamException {
    out.writeStartElement("text");
    out.writeAttribute("class", className);
    out.writeAttribute("x", number(x));
    out.writeAttribute("y", number(y));
    out.writeAttribute("text-anchor", anchor);
    out.writeCharacters(words);
    out.writeEndElement();
  }

  private double x(double value) {
    return LEFT + (value - plot.x().low()) / (plot.x().high() - plot.x().low()) * plotWidth();
  }

  private double y(double value) {
    double share = (value - plot.y().low()) / (plot.y().high() - plot.y().low());
    return TOP + (1 - share) * plotHeight();
  }

  private static String number(double value) {
    return DrawnShapes.plain(BigDecimal.valueOf(value));
  }
}
