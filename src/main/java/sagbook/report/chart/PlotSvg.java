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
 * page's style sheet. Each plot is drawn twice, for a desk and for a phone; the style sheet shows
 * one.
 */
final class PlotSvg {
  private static final int TICK = 5;
  private static final int LINE_HEIGHT = 15;

  /** Cells or days closer than this are drawn with slimmer bars, px. */
  private static final double CLOSE = 13;

  /** Those as close as this with the slimmest, px. */
  private static final double CLOSEST = 7;

  /** Cells further apart than this are drawn with broader bars, px. */
  private static final double FAR = 50;

  private static final int GAP = 5;

  private final Plot plot;
  private final Frame frame;
  private final StringWriter text = new StringWriter();
  private final XMLStreamWriter out;

  private PlotSvg(Plot plot, Frame frame) throws XMLStreamException {
    this.plot = plot;
    this.frame = frame;
    this.out = XMLOutputFactory.newDefaultFactory().createXMLStreamWriter(text);
  }

  /**
   * The markup of both drawings, the wide one first.
   *
   * @param plot what to draw
   * @param height of the whole, px
   * @param label what somebody hears who can't see it
   */
  static String of(Plot plot, int height, String label) {
    return drawn(plot, Frame.wide(plot, height), label)
        + drawn(plot, Frame.narrow(plot, height), label);
  }

  private static String drawn(Plot plot, Frame frame, String label) {
    try {
      PlotSvg svg = new PlotSvg(plot, frame);
      svg.write(label);
      return svg.text.toString();
    } catch (XMLStreamException e) {
      throw new IllegalStateException("a string writer does not fail", e);
    }
  }

  private void write(String label) throws XMLStreamException {
    out.writeStartElement("svg");
    out.writeDefaultNamespace("http://www.w3.org/2000/svg");
    out.writeAttribute("class", String.join(" ", "plot", frame.isWide() ? "wide" : "narrow"));
    out.writeAttribute("viewBox", "0 0 " + frame.width() + " " + frame.height());
    out.writeAttribute("role", "img");
    out.writeAttribute("aria-label", label);
    out.writeAttribute("font-family", "sans-serif");
    out.writeAttribute(
        "data-frame",
        frame.left() + " " + frame.top() + " " + frame.plotWidth() + " " + frame.plotHeight());
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
      String y = number(frame.y(tick.at()));
      grid.append("M" + frame.left() + " " + y + "h" + frame.plotWidth());
      ticks.append("M" + frame.left() + " " + y + "h-" + TICK);
    }
    int floor = frame.floor();
    for (Axis.Tick tick : plot.x().ticks()) {
      ticks.append("M" + number(frame.x(tick.at())) + " " + floor + "v" + TICK);
    }
    int right = frame.left() + frame.plotWidth();
    path("grid", grid.toString());
    path("axis", "M" + frame.left() + " " + frame.top() + "V" + floor + "H" + right + ticks);
    for (Axis.Tick tick : plot.y().ticks()) {
      words("tick", frame.left() - TICK - 4.0, frame.y(tick.at()) + 4.5, "end", tick.label());
    }
    int step = labelled();
    for (int i = 0; i < plot.x().ticks().size(); i += step) {
      Axis.Tick tick = plot.x().ticks().get(i);
      words("tick", frame.x(tick.at()), floor + TICK + 14.0, "middle", tick.label());
    }
    words("title", Math.max(0, frame.left() - 48.0), frame.top() - 15.0, "start", plot.y().title());
    double middle = frame.left() + frame.plotWidth() / 2.0;
    words("title", middle, frame.height() - 8.0, "middle", plot.x().title());
  }

  /** Each how manieth mark of the horizontal axis has room for its label. */
  private int labelled() {
    List<Axis.Tick> ticks = plot.x().ticks();
    double widest = 0;
    double closest = Double.POSITIVE_INFINITY;
    for (int i = 0; i < ticks.size(); i++) {
      widest = Math.max(widest, Frame.length(ticks.get(i).label()));
      if (i > 0) {
        closest = Math.min(closest, frame.x(ticks.get(i).at()) - frame.x(ticks.get(i - 1).at()));
      }
    }
    int step = 1;
    while (step < ticks.size() && closest * step < widest + GAP) {
      step++;
    }
    return step;
  }

  private void shapes() throws XMLStreamException {
    out.writeStartElement("g");
    out.writeAttribute("transform", "translate(" + frame.left() + " " + frame.top() + ")");
    byte[] drawing = Drawing.of(plot, frame.plotWidth(), frame.plotHeight());
    for (DrawnShapes.Shape shape : DrawnShapes.of(drawing)) {
      Plot.Series series = plot.series().get(shape.series());
      out.writeStartElement("path");
      out.writeAttribute("class", classes(series.ink()));
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

  private String classes(Ink ink) {
    boolean bar = ink.role() == Role.BAR || ink.role() == Role.DAY;
    double pitch = frame.pitch();
    String breadth =
        pitch < CLOSEST ? "slimmest" : pitch < CLOSE ? "slim" : pitch > FAR ? "broad" : "";
    return bar && !breadth.isEmpty() ? String.join(" ", ink.classes(), breadth) : ink.classes();
  }

  private void notes() throws XMLStreamException {
    List<Plot.Note> margin = new ArrayList<>();
    FreePlace free = new FreePlace(frame);
    for (Plot.Note note : plot.notes()) {
      String style = note.strong() ? "note strong" : "note";
      double x = frame.x(note.x());
      switch (note.place()) {
        case MARGIN -> margin.add(note);
        case ABOVE -> {
          FreePlace.Place at = free.near(note);
          words(style, at.x(), at.baseline(), "middle", note.text());
        }
        case START -> words(style, x + 4, frame.y(note.y()) + 4, "start", note.text());
        case FLOOR -> words(style, x, frame.floor() - 6.0, "middle", inPitch(note.text()));
        case FOOT -> foot(style, x, note.text());
      }
    }
    margin.sort(Comparator.comparingDouble(note -> -note.y()));
    double[] at = apart(margin);
    for (int i = 0; i < margin.size(); i++) {
      Plot.Note note = margin.get(i);
      double left = frame.left() + frame.plotWidth() + 6.0;
      words(note.strong() ? "note strong" : "note", left, at[i] + 4.5, "start", note.text());
    }
  }

  /** The words, or a dash where those of neighbours would run into each other. */
  private String inPitch(String words) {
    return Frame.length(words) > frame.pitch() ? "\u2013" : words;
  }

  /** Words beside an upright line, on the side that has room. */
  private void foot(String style, double x, String words) throws XMLStreamException {
    boolean right = x + Frame.length(words) < frame.width();
    words(style, right ? x + 4 : x - 4, frame.floor() - 6.0, right ? "start" : "end", words);
  }

  /** Heights for notes in the margin, at least a line apart, inside the frame. */
  private double[] apart(List<Plot.Note> notes) {
    double[] at = new double[notes.size()];
    double free = frame.top();
    for (int i = 0; i < at.length; i++) {
      at[i] = Math.max(free, frame.y(notes.get(i).y()));
      free = at[i] + LINE_HEIGHT;
    }
    double floor = frame.floor();
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

  private static String number(double value) {
    return DrawnShapes.plain(BigDecimal.valueOf(value));
  }
}
